// The answers disagree: which of them is to be looked at again?
import type { VNode } from "preact";
import { answerOf } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import { ranking } from "../state/thinking.ts";
import { drawn } from "../state/view.ts";
import { askFrom } from "../state/way.ts";
import { sayAnswer, sayAsked } from "../text/asked.ts";
import { NOTES } from "../text/en-ranking.ts";

function Conflict(): VNode | null {
  const { conflictDb = 0, suspect } = ranking.value?.fit ?? {};
  // The library names a suspect only when the conflict is more than the noise of crude weights.
  if (!suspect) return null;
  const row = findingRow(suspect.finding);
  const answer = answerOf(suspect.finding, suspect.cylinder);
  return (
    <section class="caution" role="alert">
      <strong>{NOTES.conflict}</strong>
      <p>{NOTES.conflictBody(conflictDb.toFixed(1))}</p>
      <p>
        {sayAsked(row, suspect, drawn.value)}{" "}
        {answer !== undefined && <b>{sayAnswer(row, answer)}</b>}
      </p>
      <a class="act-link" href={askFrom("ranking", suspect.finding)}>
        {NOTES.lookAgain}
      </a>
    </section>
  );
}

export { Conflict as Screen };
