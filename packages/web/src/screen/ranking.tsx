// The ranking: what is likely, why, what is wrong with the answers, what to put right as well.
import type { Ranking } from "@half-order/core";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { CASE_PROBLEMS } from "../parts.ts";
import { CONFLICT, FAULT_DETAIL } from "../screens.ts";
import { findings, repairs } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import { drafted } from "../state/draft.ts";
import { drive } from "../state/drive.ts";
import type { PartGroup } from "../state/group.ts";
import { seemsMended } from "../state/mended.ts";
import { breakdown, isWeighing, problems, ranking } from "../state/thinking.ts";
import { drawn, groups, isChosen, isDesk, picked } from "../state/view.ts";
import { askFrom } from "../state/way.ts";
import { RANKING } from "../text/en.ts";
import { Cautions } from "../ui/caution.tsx";
import { Bar, Chance } from "../ui/chance.tsx";
import { Heading } from "../ui/heading.tsx";
import { Lazy } from "../ui/lazy.tsx";
import { RankedRow } from "../ui/ranked-row.tsx";
import { useSigns } from "../ui/sign.tsx";

/** Rows shown at first. */
const SHOWN = 6;
const WORTH_A_ROW = 0.002;

export function RankingPanel(): VNode {
  const now = ranking.value;
  const isBegun = findings.value.length > 0;
  const told = seemsMended(repairs.value) ? RANKING.was : RANKING.title;
  const title = isBegun ? told : RANKING.before;
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
      {drafted.value[0] && (
        <p class="wrong">
          <a class="act-link" href={askFrom("ranking", drafted.value[0])}>
            {RANKING.unconfirmed(findingRow(drafted.value[0])?.ask ?? "")}
          </a>
        </p>
      )}
      {breakdown.value && <p role="alert">{breakdown.value}</p>}
      {problems.value.length > 0 && <Lazy entry={CASE_PROBLEMS} />}
      {now && problems.value.length === 0 && <Ranked now={now} />}
    </section>
  );
}

function Ranked({ now }: { now: Ranking }): VNode {
  const [isLong, setLong] = useState(false);
  const hasSigns = useSigns();
  const engine = drawn.value;
  const known = groups.value.filter(({ probability }) => probability > WORTH_A_ROW);
  const shown = known.filter((group, i) => isLong || i < SHOWN || isOfPicked(group));
  const rest = known.length - SHOWN;
  const place = shown.filter(({ probability }) => probability > now.somethingElse).length;
  return (
    <>
      <Cautions ids={now.cautions} isShort={drive.value?.level !== undefined} />
      {now.fit.suspect && <Lazy entry={CONFLICT} />}
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

  // Keyed by its place: a row that moves keeps the look of its old place in some browsers, so that two seem to lead.
  function row(group: PartGroup, place: number): VNode {
    const isLeader = group === known[0];
    return <RankedRow key={place} of={group} isLeader={isLeader} hasSign={hasSigns} />;
  }
}

/** What was picked on the picture is shown, however unlikely. */
function isOfPicked({ faults }: PartGroup): boolean {
  return isChosen.value && picked.value !== undefined && faults.includes(picked.value);
}

function Else({ probability }: { probability: number }): VNode {
  return (
    <li class="ranked-row is-else">
      <span class="name-of">
        {RANKING.somethingElse}
        <small>{RANKING.somethingElseAbout}</small>
      </span>
      <Chance of={probability} name={RANKING.somethingElse} />
      <Bar of={probability} isLeader={false} />
    </li>
  );
}
