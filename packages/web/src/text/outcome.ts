// What would a check have shown? Each of its answers in a line that can be read by itself.
import type { Finding, FindingRow } from "@half-order/core";
import { sayAnswer } from "./asked.ts";
import { QUESTION } from "./en.ts";
import { STEP } from "./en-mend.ts";

/** One answer of an outcome. */
export interface OutcomeLine {
  /** The question, where the answer alone would not tell what it is about: "yes", one of several answers. */
  readonly asked?: string;
  /** Begins with a capital letter. */
  readonly answer: string;
}

/** The answers that make an outcome, with their cylinder where there is more than one. */
export function outcomeLines(
  answers: readonly Finding[],
  rowOf: (id: string) => FindingRow | undefined,
): readonly OutcomeLine[] {
  if (answers.length === 0) return [{ answer: STEP.anythingElse }];
  const places = new Set(answers.map(({ cylinder }) => cylinder));
  const hasOneQuestion = new Set(answers.map(({ finding }) => finding)).size === 1;
  return answers.map(({ finding, answer, cylinder }) => {
    const row = rowOf(finding);
    const isNothing = Array.isArray(answer) && answer.length === 0;
    const said = capital(isNothing ? QUESTION.none : sayAnswer(row, answer));
    const isPlaced = places.size > 1 && cylinder !== undefined;
    const words = isPlaced ? `${STEP.foundAt(1, String(cylinder))}: ${said}` : said;
    const isAlone = hasOneQuestion && row !== undefined && row.kind !== "presence" && !isNothing;
    return isAlone ? { answer: words } : { asked: row?.ask ?? finding, answer: words };
  });
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
