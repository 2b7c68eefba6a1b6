// How closely is a ranking looked at before it is shown, and which questions have the same one?
import type { Question } from "./thinker.ts";

/** What a look leaves out. */
export type Look = Pick<Question, "tolerance" | "most">;
/** First look: so that the answer comes soon. Three faults at once move nothing that is seen in it. */
export const SOON: Look = { tolerance: 0.02, most: 2 };
/** Second look, finer for engines and cases where the first cost little. */
export const FULL: Look = { tolerance: 0.02 };
export const FINE: Look = { tolerance: 1e-4 };

/** Two questions with the same key have the same ranking; when an answer was given is no part of it. */
export function rankingKey({ profile, findings, tolerance, most }: Question): string {
  const answers = findings.map(({ finding, answer, cylinder }) => [finding, answer, cylinder]);
  return JSON.stringify([profile, answers, tolerance, most]);
}
