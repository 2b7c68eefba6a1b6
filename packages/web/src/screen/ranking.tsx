// The ranking: what is likely, why, what is wrong with the answers, what to put right as well.
import type { Ranking } from "@half-order/core";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { FAULT_DETAIL, ORDERS } from "../screens.ts";
import { findings } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import type { PartGroup } from "../state/group.ts";
import { breakdown, isWeighing, problems, ranking } from "../state/thinking.ts";
import { drawn, groups, isDesk, picked } from "../state/view.ts";
import { sayAnswer, sayAsked } from "../text/answer.ts";
import { ANSWERS, RANKING } from "../text/en.ts";
import { Cautions } from "../ui/caution.tsx";
import { Bar, Chance, chanceText } from "../ui/chance.tsx";
import { Apart, Conflict, PutRight } from "../ui/finding-of-ranking.tsx";
import { Heading } from "../ui/heading.tsx";
import { Lazy } from "../ui/lazy.tsx";
import { Problems } from "../ui/problems.tsx";
import { RankedRow } from "../ui/ranked-row.tsx";

/** Rows shown at first. */
const SHOWN = 6;
const WORTH_A_ROW = 0.002;

export function RankingPanel(): VNode {
  const now = ranking.value;
  const isBegun = findings.value.length > 0;
  const title = isBegun ? RANKING.title : RANKING.before;
  const words = isBegun ? title : `${title}: ${RANKING.beforeMore}`;
  return (
    <section class={isWeighing.value ? "ranking is-weighing" : "ranking"} aria-label={title}>
      <div class="ranking-head">
        {isDesk.value ? (
          <h1 class="minor">{words}</h1>
        ) : (
          <Heading of="ranking" class="minor">
            {words}
          </Heading>
        )}
        <p class="weighing" role="status">
          {isWeighing.value ? RANKING.weighing : ""}
        </p>
      </div>
      {breakdown.value && <p role="alert">{breakdown.value}</p>}
      {problems.value.length > 0 && <Problems title={RANKING.cannot} of={problems.value} />}
      {now && problems.value.length === 0 && <Ranked now={now} />}
    </section>
  );
}

function Ranked({ now }: { now: Ranking }): VNode {
  const [isLong, setLong] = useState(false);
  const engine = drawn.value;
  const known = groups.value.filter(({ probability }) => probability > WORTH_A_ROW);
  const shown = isLong ? known : known.slice(0, SHOWN);
  const rest = known.length - SHOWN;
  const place = shown.filter(({ probability }) => probability > now.somethingElse).length;
  return (
    <>
      <Cautions ids={now.cautions} />
      <Conflict now={now} />
      <ol class="ranked">
        {engine && shown.slice(0, place).map(row)}
        <Else probability={now.somethingElse} />
        {engine && shown.slice(place).map(row)}
      </ol>
      {rest > 0 && (
        <button type="button" class="quiet" onClick={() => setLong(!isLong)}>
          {isLong ? RANKING.fewer : RANKING.more(rest)}
        </button>
      )}
      {isDesk.value && picked.value && <Lazy entry={FAULT_DETAIL} />}
    </>
  );

  function row(group: PartGroup): VNode {
    return <RankedRow key={group.key} of={group} isLeader={group === known[0]} />;
  }
}

/** What goes with the ranking; on a phone it stands below the hand's next move. */
export function RankingNotes(): VNode | null {
  const now = ranking.value;
  if (!now || problems.value.length > 0) return null;
  return (
    <div class="notes">
      <PutRight now={now} />
      <Apart now={now} />
      {now.orders && <Lazy entry={ORDERS} />}
      <section class="print-only">
        <h2 class="minor">{ANSWERS.title}</h2>
        <ul class="group">
          {findings.value.map((given) => {
            const row = findingRow(given.finding);
            const asked = sayAsked(row, given);
            return (
              <li key={asked}>
                {asked} <b>{sayAnswer(row, given.answer)}</b>
              </li>
            );
          })}
        </ul>
      </section>
      <p class="fine">
        {RANKING.searched(now.instances)}, {RANKING.unsearched(chanceText(now.unsearched))}.{" "}
        {RANKING.estimates}
      </p>
    </div>
  );
}

function Else({ probability }: { probability: number }): VNode {
  return (
    <li class="ranked-row is-else">
      <span class="name-of">
        {RANKING.somethingElse}
        <small>{RANKING.somethingElseAbout}</small>
      </span>
      <Chance of={probability} />
      <Bar of={probability} isLeader={false} />
    </li>
  );
}
