// A check at its place on this engine: cautions before the steps, what each result would mean before one starts,
// then one question after the other.
import type { CheckRow, CylinderName, Finding, FindingRow, NextCheck } from "@half-order/core";
import type { VNode } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { plan, putOffStep } from "../state/advice.ts";
import { answerOf, giveAnswer } from "../state/case.ts";
import { checkRow, findingRow, suits, targetKind } from "../state/catalogue.ts";
import { stepsOf } from "../state/prose.ts";
import { at, goTo } from "../state/route.ts";
import {
  checkAddress,
  keyAt,
  keyOfStep,
  type Look,
  looksOf,
  offInShort,
  toldOutcomes,
} from "../state/step.ts";
import { drawn, isDesk } from "../state/view.ts";
import { setOpen, spend } from "../state/work.ts";
import { sayAnswer } from "../text/answer.ts";
import { CHECK, list } from "../text/en.ts";
import { STEP, sayMinutes } from "../text/en-mend.ts";
import { Answerer } from "./answerer.tsx";
import { Cautions } from "./caution.tsx";
import { chanceText } from "./chance.tsx";
import { Heading } from "./heading.tsx";
import { Dashed } from "./option.tsx";
import { Ordered, Part } from "./repair-part.tsx";

interface StepCheckProps {
  /** Id of the check. */
  readonly id: string;
  readonly cylinders: readonly CylinderName[];
  /** On a screen of its own it has the heading that takes the focus. */
  readonly isScreen?: boolean;
}

export function StepCheck({ id, cylinders, isScreen = false }: StepCheckProps): VNode | null {
  const check = checkRow(id);
  if (!check) return null;
  const key = keyAt(id, cylinders);
  const planned = plan.value?.checks.find((each) => keyOfStep(each) === key);
  const depth = isScreen ? 1 : 2;
  return (
    <article class="check">
      <StepFacts
        step={planned ?? { check: id, cylinders, minutes: check.minutes }}
        label={STEP.check}
      />
      {isScreen ? (
        <Heading of={key} level={isDesk.value ? 2 : 1} class="act">
          {check.name}
        </Heading>
      ) : (
        <h3 class="act">{check.name}</h3>
      )}
      <Cautions ids={check.cautions} />
      {planned && planned.opens.length > 0 && <Opens of={planned} depth={depth} />}
      <Part title={STEP.steps} depth={depth}>
        <Ordered of={stepsOf(id)} />
      </Part>
      {planned && <Outcomes of={planned} depth={depth} />}
      <Results
        key={key}
        check={check}
        cylinders={cylinders}
        planned={planned}
        isScreen={isScreen}
      />
    </article>
  );
}

interface StepFactsProps {
  readonly step: Pick<NextCheck, "check" | "cylinders" | "minutes">;
  readonly label: string;
}

/** Where, how long, with what, by whom. */
export function StepFacts({ step, label }: StepFactsProps): VNode {
  const row = checkRow(step.check);
  const facts = [
    ...sayPlace(step),
    sayMinutes(step.minutes),
    ...(row ? [CHECK.tools[row.tool] ?? row.tool, CHECK.skills[row.skill]] : []),
  ];
  return (
    <p class="facts">
      <strong>{label}</strong> {facts.join(" · ")}
    </p>
  );
}

/** At which cylinders; nothing where it concerns the whole engine, as a connector that feeds all does. */
export function sayPlace({
  check,
  cylinders,
}: Pick<NextCheck, "check" | "cylinders">): readonly string[] {
  const engine = drawn.value;
  const kinds = (checkRow(check)?.yields ?? []).flatMap((id) => {
    const row = findingRow(id);
    return (row && targetKind(row)) ?? [];
  });
  const isConnector = kinds.length > 0 && kinds.every((kind) => kind === "connector");
  const served = engine?.connectors.find((connector) =>
    connector.cylinders.some((c) => engine.names[c] === cylinders[0]),
  );
  const names =
    isConnector && served ? served.cylinders.map((c) => engine?.names[c] ?? c) : cylinders;
  if (names.length === 0 || names.length === engine?.names.length) return [];
  return [STEP.cylinders(names.length, list(names))];
}

/** What must come off first; what is off already is said with a tap, and then costs nothing more. */
function Opens({ of, depth }: { of: NextCheck; depth: 1 | 2 }): VNode {
  return (
    <Part title={STEP.opens} depth={depth}>
      <ul class="given">
        {offInShort(of.opens).map(({ say, ids, minutes }) => (
          <li key={say}>
            <span>
              {STEP.off(say, ids.length)}
              <small>{STEP.openMinutes(sayMinutes(minutes))}</small>
            </span>
            <button type="button" class="quiet" onClick={() => setOpen(ids)}>
              {STEP.isOff}
              <span class="vh">: {say}</span>
            </button>
          </li>
        ))}
      </ul>
    </Part>
  );
}

/** Results that are told at once; the rarer ones behind a tap. */
const SHOWN = 4;

function Outcomes({ of, depth }: { of: NextCheck; depth: 1 | 2 }): VNode | null {
  const told = toldOutcomes(of.outcomes);
  const rarer = told.slice(SHOWN);
  if (told.length === 0) return null;
  const line = (outcome: NextCheck["outcomes"][number]): VNode => (
    <div key={sayOutcome(outcome.answers)} class="fact">
      <dt>
        {sayOutcome(outcome.answers)} <b>{chanceText(outcome.probability)}</b>
      </dt>
      {outcome.leader && (
        <dd>{STEP.thenFirst(outcome.leader.name, chanceText(outcome.leader.probability))}</dd>
      )}
    </div>
  );
  return (
    <Part title={STEP.outcomes} depth={depth}>
      <p class="help">{STEP.outcomesHelp}</p>
      <dl class="meaning">{told.slice(0, SHOWN).map(line)}</dl>
      {rarer.length > 0 && (
        <details>
          <summary>{STEP.rarer(rarer.length)}</summary>
          <dl class="meaning">{rarer.map(line)}</dl>
        </details>
      )}
    </Part>
  );
}

/** The answers that make a result, with their cylinder where there is more than one. */
function sayOutcome(answers: readonly Finding[]): string {
  if (answers.length === 0) return STEP.anythingElse;
  const at = new Set(answers.map(({ cylinder }) => cylinder));
  return answers
    .map(({ finding, answer, cylinder }) => {
      const words = sayWithName(findingRow(finding), answer);
      return at.size > 1 && cylinder !== undefined ? `${cylinder}: ${words}` : words;
    })
    .join("; ");
}

/** "Yes" and "none" say nothing without the thing that was looked for. */
function sayWithName(row: FindingRow | undefined, answer: Finding["answer"]): string {
  const words = sayAnswer(row, answer);
  return row?.kind === "presence" || (Array.isArray(answer) && answer.length === 0)
    ? `${row?.ask} ${words}`
    : words;
}

interface ResultsProps {
  readonly check: CheckRow;
  readonly cylinders: readonly CylinderName[];
  readonly planned: NextCheck | undefined;
  readonly isScreen: boolean;
}

/** One question after the other; what is noted can be changed until the screen is left. */
function Results({ check, cylinders, planned, isScreen }: ResultsProps): VNode | null {
  const engine = drawn.value;
  const [again, setAgain] = useState<string | undefined>(undefined);
  const [isBegun, setBegun] = useState(false);
  const looks = looksOf(rowsOf(check, engine?.ignition), cylinders);
  if (!engine || looks.length === 0) return null;
  const open = looks.filter((look) => !isNoted(look));
  const current = looks.find((look) => keyOfLook(look) === again) ?? open[0];
  const note = (look: Look, answer: Finding["answer"]): void => {
    if (planned && open.length === looks.length) begin(planned, look);
    giveAnswer(look.row.id, answer, look.cylinder);
    setAgain(undefined);
    setBegun(true);
    const left = open.filter((other) => other !== look).length;
    if (left === 0) goTo("ranking");
    // The plan is made anew with each answer: what was begun keeps the screen until it is done.
    else if (!isScreen) goTo(...checkAddress(check.id, cylinders));
  };
  return (
    <Part title={STEP.found} depth={isScreen ? 1 : 2}>
      <Noted
        of={looks.filter((look) => isNoted(look) && look !== current)}
        onChange={(key) => {
          setAgain(key);
          setBegun(true);
        }}
      />
      {current && (
        <Ask
          key={keyOfLook(current)}
          look={current}
          takesFocus={isBegun}
          onAnswer={(answer) => note(current, answer)}
        />
      )}
      <Dashed
        onClick={() => {
          putOffStep(keyAt(check.id, cylinders));
          goTo("ranking");
        }}
      >
        {open.length < looks.length ? STEP.done : STEP.notNow}
      </Dashed>
      {looks.some(({ row }) => row.scope === "cylinder") &&
        cylinders.length < engine.names.length && (
          <a class="act-link" href={at("check", check.id)}>
            {STEP.elsewhere}
          </a>
        )}
    </Part>
  );
}

function rowsOf(check: CheckRow, ignition: Parameters<typeof suits>[1]): readonly FindingRow[] {
  return check.yields.flatMap((id) => {
    const row = findingRow(id);
    return row && suits(row, ignition) ? [row] : [];
  });
}

/** With its first answer a check has cost its minutes, and what came off for it is off. */
function begin(step: NextCheck, { row, cylinder }: Look): void {
  const shownBy = { finding: row.id, ...(cylinder === undefined ? {} : { cylinder }) };
  spend({ step: keyOfStep(step), minutes: step.minutes, shownBy });
  setOpen(step.opens.map(({ id }) => id));
}

interface AskProps {
  readonly look: Look;
  /** After an answer the focus goes on to the next question; the first one leaves it to the heading. */
  readonly takesFocus: boolean;
  readonly onAnswer: (answer: Finding["answer"]) => void;
}

function Ask({ look: { row, cylinder }, takesFocus, onAnswer }: AskProps): VNode | null {
  const engine = drawn.value;
  const ref = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (takesFocus) ref.current?.focus();
  }, []);
  if (!engine) return null;
  return (
    <section class="result" aria-label={row.ask}>
      <p class="ask" ref={ref} tabIndex={-1}>
        {cylinder !== undefined && <b>{STEP.foundAt(String(cylinder))}: </b>}
        {row.ask}
      </p>
      {row.help && <p class="help">{row.help}</p>}
      <Answerer row={row} engine={engine} given={answerOf(row.id, cylinder)} onAnswer={onAnswer} />
    </section>
  );
}

interface NotedProps {
  readonly of: readonly Look[];
  readonly onChange: (key: string) => void;
}

function Noted({ of, onChange }: NotedProps): VNode | null {
  if (of.length === 0) return null;
  return (
    <ul class="given" aria-label={STEP.noted}>
      {of.map((look) => {
        const { row, cylinder } = look;
        const asked =
          cylinder === undefined ? row.ask : `${STEP.foundAt(String(cylinder))}: ${row.ask}`;
        return (
          <li key={keyOfLook(look)}>
            <span>
              <small>{asked}</small>
              {sayAnswer(row, answerOf(row.id, cylinder) ?? "")}
            </span>
            <button type="button" class="quiet" onClick={() => onChange(keyOfLook(look))}>
              {STEP.change}
              <span class="vh">: {asked}</span>
            </button>
          </li>
        );
      })}
    </ul>
  );
}

function isNoted({ row, cylinder }: Look): boolean {
  return answerOf(row.id, cylinder) !== undefined;
}

function keyOfLook({ row, cylinder }: Look): string {
  return `${row.id} ${cylinder}`;
}
