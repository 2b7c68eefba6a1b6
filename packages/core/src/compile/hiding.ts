// A look that is made cold or at idle may miss a fault that shows elsewhere: how much does it meet, and
// what do looks at several outputs have in common?
import { HIDING } from "../knowledge/hiding.ts";
import type { FindingRow } from "../knowledge/schema.ts";
import type { Answered } from "./answered.ts";

type Chances = Readonly<Record<string, number>>;

/**
 * How much likelier than without them a look meets the fault, once answers have said when the trouble is there.
 * The fault's row about the look is a total over the answers that the fault leads to, so each counts against
 * their mean. Of several answers the one that leaves least decides: they give one reason.
 */
export function metTimes(
  { made }: FindingRow,
  known: readonly Answered[],
  chancesOf: (when: FindingRow) => Chances | undefined,
): number {
  if (!made) return 1;
  const times = known.flatMap(({ row, options: [given = ""] }) => {
    const all = Object.entries(row.options);
    if (!all.some(([, { leaves }]) => leaves)) return [];
    const chances = chancesOf(row);
    const left = (option: string): number => row.options[option]?.leaves?.[made] ?? 1;
    return [left(given) / sum(all, ([o, { chance }]) => (chances?.[o] ?? chance) * left(o))];
  });
  return times.length > 0 ? Math.min(...times) : 1;
}

/** What is known besides of a look. */
export interface Told {
  /** See `metTimes`. */
  readonly met: number;
  /** What the same look showed at other outputs of the same fault. */
  readonly elsewhere: readonly string[];
}

/**
 * The chances of a look, given when the trouble is there and what looks at other outputs showed. A part of what
 * in a row looks like a sound engine is one hiding, that of all outputs (`HIDING`): seen at one, it is likely at
 * the next (Bayes). Without anything told: the chances as they are.
 */
export function tempered(
  chances: Chances,
  usual: (option: string) => number,
  { options }: FindingRow,
  { met, elsewhere }: Told,
): Chances {
  // What had to be brought about first is not missed by looking at another time.
  const looked = Object.keys(chances).filter((option) => !options[option]?.provoked);
  const total = sum(looked, (option) => chances[option] ?? 0);
  const usualTotal = sum(looked, usual);
  const own = (option: string): number => (chances[option] ?? 0) / total;
  const sound = (option: string): number => usual(option) / usualTotal;
  const hides = HIDING.together * Math.min(...looked.map((option) => own(option) / sound(option)));
  const shown = (option: string): number => (own(option) - hides * sound(option)) / (1 - hides);
  let meets = Math.min((1 - hides) * met, Math.max(1 - hides, HIDING.surest));
  let misses = 1 - meets;
  for (const option of elsewhere.filter((each) => looked.includes(each))) {
    meets *= shown(option);
    misses *= sound(option);
  }
  const part = meets / (meets + misses);
  const mixed = looked.map((option): [string, number] => [
    option,
    total * (part * shown(option) + (1 - part) * sound(option)),
  ]);
  return { ...chances, ...Object.fromEntries(mixed) };
}

function sum<T>(list: readonly T[], of: (each: T) => number): number {
  return list.reduce((total, each) => total + of(each), 0);
}
