// How firm is the first place: what it hangs on, how far off that may be, how often it holds when all is shaken.
import type { NamedFlip, Stability } from "@half-order/core";
import type { VNode } from "preact";
import { useEffect } from "preact/hooks";
import { answerOf, findings } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import { drawn, isDesk, keyOf } from "../state/view.ts";
import { askFrom } from "../state/way.ts";
import { decides, sayFlip, sayTimes, verdictOf } from "../sure/words.ts";
import {
  type Carrying,
  firstOf,
  followSureness,
  type Sureness,
  sureness,
} from "../sure/work-out.ts";
import { sayOrder } from "../text/answer.ts";
import { sayAnswer, sayAsked } from "../text/asked.ts";
import { PROBLEM } from "../text/en-problem.ts";
import { SURE } from "../text/en-sure.ts";
import { chanceText } from "../ui/chance.tsx";
import { sayDb } from "../ui/column.ts";
import { Heading } from "../ui/heading.tsx";
import { Problems } from "../ui/problems.tsx";
import { Part } from "../ui/repair-part.tsx";
import "../style/sure.css";

function Sure(): VNode {
  useEffect(followSureness, []);
  const now = sureness.value;
  return (
    <section class="column sure">
      <Heading of="sure" level={isDesk.value ? 2 : 1} class="act">
        {SURE.title}
      </Heading>
      {now.problems && <Problems title={PROBLEM.cannotRank} of={now.problems} />}
      {now.broke !== undefined && (
        <p role="alert" class="wrong">
          {SURE.broke}: {now.broke}
        </p>
      )}
      <p class="weighing" role="status">
        {now.done < 1 ? SURE.working : <span class="vh">{SURE.done}</span>}
      </p>
      {now.done < 1 && <progress aria-label={SURE.progress} value={now.done} />}
      {now.leading && <Told of={now} leading={now.leading} />}
    </section>
  );
}

/** Name of a fault, by `fault@place`. */
type Name = (key: string) => string;

function Told({ of, leading }: { of: Sureness; leading: readonly string[] }): VNode {
  const rows = new Map(of.ranking?.ranking.map((row) => [keyOf(row), row]));
  const [first = "", second = ""] = leading;
  const name: Name = (key) => rows.get(key)?.name ?? key;
  /** Of the fault, and of its part in whatever way where that reads as more. */
  const chances = (key: string): readonly [string, (string | undefined)?] => {
    const row = rows.get(key);
    const part = of.ranking?.components.find(({ component }) => component === row?.component);
    const [own, whole] = [row, part].map((each) => chanceText(each?.probability ?? 0));
    return own === whole ? [own ?? ""] : [own ?? "", whole];
  };
  const answers = of.answers ?? [];
  const idle = answers.filter((answer) => !decides(answer));
  return (
    <>
      <div>
        <p class="lead">
          <strong>{SURE.first(name(first), ...chances(first))}</strong>
        </p>
        {rows.has(second) && <p class="help">{SURE.second(name(second), ...chances(second))}</p>}
      </div>
      <About of={of} first={first} />
      {of.stability && <Shaken of={of.stability} />}
      {findings.value.length > 0 && (
        <Carriers of={answers.filter(decides)} name={name} isWhole={of.done === 1} />
      )}
      {of.done === 1 && idle.length > 0 && <Idle of={idle} />}
      <Part title={SURE.common}>
        <p class="help">{SURE.commonBody}</p>
        <Flips of={of.priors ?? []} name={name} />
      </Part>
      <p class="fine">{SURE.estimates}</p>
    </>
  );
}

/** What must be known before the rest is read. */
function About({ of, first }: { of: Sureness; first: string }): VNode | null {
  const { ranking, order } = of;
  if (!ranking) return null;
  const overAll = firstOf(ranking);
  const isOther =
    overAll?.component !== ranking.ranking.find((row) => keyOf(row) === first)?.component;
  const isElse = ranking.somethingElse > (ranking.components[0]?.probability ?? 1);
  return (
    <>
      {findings.value.length === 0 && <p>{SURE.nothingYet}</p>}
      {isElse && <p class="wrong">{SURE.nothingFits(chanceText(ranking.somethingElse))}</p>}
      {order && (
        <p>
          {SURE.order(sayOrder(order.firingOrder), chanceText(order.probability))}{" "}
          {overAll && isOther && SURE.overAll(overAll.name)}
        </p>
      )}
    </>
  );
}

function Shaken({ of }: { of: readonly Stability[] }): VNode | null {
  const [little] = of;
  if (!little) return null;
  const hasKin = of.some(({ first, firstFault }) => first !== firstFault);
  return (
    <Part title={SURE.shaken}>
      <p>
        <b>{SURE.verdict[verdictOf(little)]}</b>
      </p>
      <p class="help">
        {SURE.shakenBody(little.shakes)} {hasKin && SURE.shakenKin}
      </p>
      <ul class="shaken">
        {of.map(({ sigma, shakes, first, firstFault, firstThree }) => (
          <li key={sigma}>
            <p>
              {SURE.strength(sayTimes(Math.exp(sigma)))}:{" "}
              <b>{SURE.stays(Math.round(first * shakes), shakes)}</b>
              {hasKin && <small>{SURE.oneFault(Math.round(firstFault * shakes), shakes)}</small>}
              <small>{SURE.three(Math.round(firstThree * shakes), shakes)}</small>
            </p>
            <span class="bar is-leader" aria-hidden="true">
              <span style={{ width: `${first * 100}%` }} />
            </span>
          </li>
        ))}
      </ul>
    </Part>
  );
}

interface CarriersProps {
  readonly of: readonly Carrying[];
  readonly name: Name;
  /** While it is not, more may come. */
  readonly isWhole: boolean;
}

function Carriers({ of, name, isWhole }: CarriersProps): VNode {
  const heaviest = Math.max(...of.map(({ carriesDb = 0 }) => carriesDb));
  return (
    <Part title={SURE.carries}>
      <p class="help">{SURE.carriesBody}</p>
      <p class="help">{SURE.notTheColumn}</p>
      {of.length === 0 && isWhole && <p>{SURE.none}</p>}
      <ol class="carriers">
        {of.map((answer, i) => (
          <li key={`${answer.finding} ${answer.cylinder}`}>
            {i === 0 && answer.flip && <p class="facts">{SURE.weakest}</p>}
            {answer.carriesDb === heaviest && heaviest > 0 && <p class="facts">{SURE.most}</p>}
            <Answer of={answer} />
            {answer.flip && <p>{sayFlip(answer.flip, name)}</p>}
            {answer.without !== undefined && <p>{SURE.without(name(answer.without))}</p>}
            <a class="act-link" href={askFrom("sure", answer.finding)}>
              {SURE.lookAgain}
              <span class="vh">: {sayAsked(findingRow(answer.finding), answer, drawn.value)}</span>
            </a>
          </li>
        ))}
      </ol>
    </Part>
  );
}

function Idle({ of }: { of: readonly Carrying[] }): VNode {
  return (
    <details class="topic">
      <summary>{SURE.idle(of.length)}</summary>
      <p class="help">{SURE.idleBody}</p>
      <ul class="carriers">
        {of.map((answer) => (
          <li key={`${answer.finding} ${answer.cylinder}`}>
            <Answer of={answer} />
          </li>
        ))}
      </ul>
    </details>
  );
}

/** dB that fill half the width of the bars, as in the column of weights. */
const WIDEST_DB = 15;

/** Question, answer, and what the first place would lose without it, as a figure and as a length. */
function Answer({ of }: { of: Carrying }): VNode {
  const row = findingRow(of.finding);
  const given = answerOf(of.finding, of.cylinder);
  const { carriesDb } = of;
  const share = Math.min(1, Math.abs(carriesDb ?? 0) / WIDEST_DB) * 50;
  const isAgainst = (carriesDb ?? 0) < 0;
  return (
    <div class="carrier">
      <p>
        <small>{sayAsked(row, of, drawn.value)}</small>
        {given === undefined ? "" : sayAnswer(row, given)}
      </p>
      <p class="db">{carriesDb === undefined ? SURE.speaksNot : SURE.holds(sayDb(carriesDb))}</p>
      <span class="weight-bar" aria-hidden="true">
        <span
          class={isAgainst ? "against" : "for"}
          style={{ width: `${share}%`, left: `${isAgainst ? 50 - share : 50}%` }}
        />
      </span>
    </div>
  );
}

function Flips({ of, name }: { of: readonly NamedFlip[]; name: Name }): VNode {
  const near = of.filter((flip) => decides({ flip }));
  if (near.length === 0) return <p>{SURE.commonFirm}</p>;
  return (
    <ul class="group">
      {near.map((flip) => (
        <li key={flip.fault}>{sayFlip(flip, name)}</li>
      ))}
    </ul>
  );
}

export { Sure as Screen };
