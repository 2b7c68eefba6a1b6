// The foot of a phone's screen: the way back, and what is likely so far, within reach of a thumb.
import type { VNode } from "preact";
import { findings, isClosed, repairs } from "../state/case.ts";
import { provenBy, seemsMended } from "../state/mended.ts";
import { at } from "../state/route.ts";
import { ranking } from "../state/thinking.ts";
import { leader, soFar } from "../state/view.ts";
import { sayGroup } from "../text/answer.ts";
import { ADD, ANSWERS, PAGE, QUESTION, RANKING } from "../text/en.ts";
import { chanceText } from "./chance.tsx";

export function QuestionFoot({ back }: { back: string }): VNode {
  const first = soFar.value;
  const repaired = provenBy.value ? RANKING.proven : RANKING.unproven;
  const notYet = seemsMended(repairs.value) ? repaired : RANKING.notYet;
  const hasRanking = findings.value.length > 0 && leader.value && !isClosed.value;
  return (
    <nav class="foot" aria-label={QUESTION.nav}>
      <a href={back}>{QUESTION.back}</a>
      {hasRanking ? (
        <a class="so-far" href={at("ranking")}>
          <small>{first ? `${RANKING.so}, ${chanceText(first.probability)}` : notYet}</small>
          {first ? sayGroup(first) : RANKING.see}
        </a>
      ) : (
        <a href={at("ranking")}>{isClosed.value ? RANKING.mended : QUESTION.skip}</a>
      )}
    </nav>
  );
}

export function RankingFoot(): VNode {
  return (
    <nav class="foot" aria-label={ADD.title}>
      {ranking.value && !isClosed.value ? (
        <button type="button" class="quiet" onClick={showNext}>
          {PAGE.next}
        </button>
      ) : (
        <a href={at("answers")}>{ANSWERS.link(findings.value.length)}</a>
      )}
      {!isClosed.value && <a href={at("add")}>{ADD.title}</a>}
    </nav>
  );
}

/** The next step stands below the list, which may be long. */
function showNext(): void {
  const next = document.querySelector(".next");
  next?.scrollIntoView();
  next?.querySelector<HTMLElement>("a, button")?.focus({ preventScroll: true });
}

/** Says the leader to a screen reader whenever it changes. */
export function LeaderNews(): VNode {
  const first = soFar.value;
  return (
    <p class="vh" aria-live="polite">
      {first ? `${RANKING.so}: ${sayGroup(first)}, ${chanceText(first.probability)}` : ""}
    </p>
  );
}
