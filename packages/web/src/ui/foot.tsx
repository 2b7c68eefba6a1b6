// The foot of a phone's screen: the way back, and what is likely so far, within reach of a thumb.
import type { VNode } from "preact";
import { findings } from "../state/case.ts";
import { at } from "../state/route.ts";
import { leader } from "../state/view.ts";
import { ADD, ANSWERS, QUESTION, RANKING } from "../text/en.ts";
import { chanceText } from "./chance.tsx";

export function QuestionFoot({ back }: { back: string }): VNode {
  const first = findings.value.length > 0 ? leader.value : undefined;
  return (
    <nav class="foot" aria-label={RANKING.so}>
      <a href={back}>{QUESTION.back}</a>
      {first ? (
        <a class="so-far" href={at("ranking")}>
          <small>
            {RANKING.so}, {chanceText(first.probability)}
          </small>
          {first.name}
        </a>
      ) : (
        <a href={at("ranking")}>{QUESTION.skip}</a>
      )}
    </nav>
  );
}

export function RankingFoot(): VNode {
  return (
    <nav class="foot" aria-label={ADD.title}>
      <a href={at("answers")}>{ANSWERS.link(findings.value.length)}</a>
      <a href={at("add")}>{ADD.title}</a>
    </nav>
  );
}

/** Says the leader to a screen reader whenever it changes. */
export function LeaderNews(): VNode {
  const first = findings.value.length > 0 ? leader.value : undefined;
  return (
    <p class="vh" aria-live="polite">
      {first ? `${RANKING.so}: ${first.name}, ${chanceText(first.probability)}` : ""}
    </p>
  );
}
