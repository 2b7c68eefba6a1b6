// Probabilities as people say them.
import { InputError } from "../units/problem.ts";

/** The parts that are said, from the rarest up. */
const SAID: readonly (readonly [part: number, of: number])[] = [
  ...[100, 80, 60, 50, 40, 30, 25, 20, 15, 12, 10, 9, 8, 7, 6, 5, 4].map((of) => [1, of] as const),
  [3, 10],
  [1, 3],
  [4, 10],
  [1, 2],
  [6, 10],
  [2, 3],
  [7, 10],
  [3, 4],
  [8, 10],
  [9, 10],
  [19, 20],
];

/** Sums of probabilities come out beside 0 and 1 by so much. */
const ROUNDING = 1e-6;

/**
 * "about 6 in 10", "about 1 in 20", "less than 1 in 100", "almost certain": the nearest part that people
 * say, nearest in odds. Probabilities are first rounded as they are printed, to whole per cents (below 10
 * to tenths of one), so that what is printed alike is said alike. Throws an `InputError` for anything that
 * is no probability.
 */
export function sayProbability(probability: number): string {
  if (!(probability >= -ROUNDING && probability <= 1 + ROUNDING)) throw notOne(probability);
  const percent = probability * 100;
  const printed = (percent < 10 ? Math.round(percent * 10) / 10 : Math.round(percent)) / 100;
  if (printed >= 0.97) return "almost certain";
  if (printed < 0.005) return "less than 1 in 200";
  if (printed < 0.01) return "less than 1 in 100";
  const away = ([part, of]: readonly [number, number]): number =>
    Math.abs(Math.log(part / (of - part)) - Math.log(printed / (1 - printed)));
  const [part, of] = SAID.reduce((best, next) => (away(next) < away(best) ? next : best));
  return `about ${part} in ${of}`;
}

function notOne(value: number): InputError {
  const message = `${value} is no probability.`;
  const hint = "Give a number from 0 to 1.";
  return new InputError([{ code: "probability-wrong", path: "/probability", message, hint }]);
}
