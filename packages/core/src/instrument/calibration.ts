// Is the posterior right as often as it says? It foretells how often statements turn out true and how far
// that may stray by chance; what strays further shows that something is computed wrongly.
import type { Truth } from "./sampler.ts";

/** What a posterior said of a case, and what was true. */
export interface AnsweredCase {
  readonly truth: Truth;
  /** By fault: probability that it is present. */
  readonly fault: Float64Array;
  /** By set of misfiring cylinders; the last is random. */
  readonly set: Float64Array;
  /** By fault: id of its type. */
  readonly types: readonly string[];
}

export interface Deviation {
  /** What was looked at: `first place`, `0.2 to 0.35`, `fault plug.set-worn` … */
  readonly of: string;
  /** Expected and found number of true statements (of nats, for the set). */
  readonly expected: number;
  readonly found: number;
  /** (found − expected) / standard deviation; about standard normal where the posterior is right. */
  readonly z: number;
}

/** Edges of the bins; fine where most faults lie. */
export const BIN_EDGES: readonly number[] = [
  0, 0.001, 0.005, 0.02, 0.05, 0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 1,
];

/** With fewer expected hits than this the tails are not those of a normal. */
const ENOUGH = 20;

interface Sum {
  expected: number;
  found: number;
  variance: number;
}

/**
 * Deviations of: the first place; each bin of probabilities; each type of fault; the set that misses,
 * by its log score. z = Σ(y − p) / √Σp(1 − p): exact where a case makes one statement; where it makes
 * several, one fault explains another away, the true deviation is smaller and false alarms are rarer.
 * What has under twenty expected hits is left out.
 */
export function deviations(cases: readonly AnsweredCase[]): readonly Deviation[] {
  const sums = new Map<string, Sum>();
  const add = (of: string, expected: number, found: number, variance: number): void => {
    const sum = sums.get(of) ?? { expected: 0, found: 0, variance: 0 };
    sum.expected += expected;
    sum.found += found;
    sum.variance += variance;
    sums.set(of, sum);
  };
  for (const each of cases) {
    addFaults(each, (of, p, found) => add(of, p, found, p * (1 - p)));
    addSet(each, add);
  }
  return [...sums]
    .filter(([, { expected }]) => expected >= ENOUGH)
    .map(([of, { expected, found, variance }]) => {
      return { of, expected, found, z: (found - expected) / Math.sqrt(variance) };
    });
}

function addFaults(
  { truth, fault, types }: AnsweredCase,
  add: (of: string, probability: number, found: number) => void,
): void {
  const present = new Set(truth.faults);
  const first = fault.indexOf(Math.max(...fault));
  add("first place", fault[first] as number, Number(present.has(first)));
  fault.forEach((probability, f) => {
    const found = Number(present.has(f));
    add(binOf(probability), probability, found);
    add(`fault ${types[f]}`, probability, found);
  });
}

function binOf(probability: number): string {
  const found = BIN_EDGES.findIndex((edge, i) => i > 0 && probability <= edge);
  const top = found < 0 ? BIN_EDGES.length - 1 : found;
  return `${BIN_EDGES[top - 1]} to ${BIN_EDGES[top]}`;
}

/** −ln of the true set's probability has the entropy as its mean, and a variance that is known too. */
function addSet(
  { truth, set }: AnsweredCase,
  add: (of: string, expected: number, found: number, variance: number) => void,
): void {
  const logs = Array.from(set, (p) => (p > 0 ? Math.log(p) : 0));
  const entropy = set.reduce((sum, p, t) => sum - p * (logs[t] as number), 0);
  const squares = set.reduce((sum, p, t) => sum + p * (logs[t] as number) ** 2, 0);
  const score = -Math.log(Math.max(Number.MIN_VALUE, set[truth.set] as number));
  add("set that misses, nats", entropy, score, squares - entropy * entropy);
}
