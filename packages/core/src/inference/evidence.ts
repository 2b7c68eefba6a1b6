// What the observations say of one, two or three faults together, relative to the background (a fault
// without a say counts as 1):
//
//   seen      (1 − (1−leak)·Π(1−p)) / leak        not seen   Π(1−p)       choice   mean(q) / background
//
// Faults of which every observation says the same form one kind: worn plugs in six cylinders are one
// kind until a single cylinder is looked at. All that follows is worked out per kind, not per fault.
import { type DiagnosisModel, randomSet } from "../model/diagnosis-model.ts";

export interface Evidence {
  readonly kinds: number;
  readonly kindOf: Uint32Array;
  /** By kind: what the observations say of a single fault of that kind. */
  readonly solo: Float64Array;
  /** The same for two, or three, faults of these kinds. */
  readonly pair: (a: number, b: number) => number;
  readonly triple: (a: number, b: number, c: number) => number;
  /** By set: product of the misfire observations. */
  readonly bySet: Float64Array;
}

export function evidenceOf(model: DiagnosisModel): Evidence {
  const { kindOf, first } = kindsOf(model);
  const rows = rowsOf(model, first);
  return {
    kinds: first.length,
    kindOf,
    solo: Float64Array.from(first, (_, kind) => together(rows, kind, NONE, NONE)),
    pair: (a, b) => together(rows, a, b, NONE),
    triple: tripleTable(rows, first.length),
    bySet: setLikelihoods(model),
  };
}

/** What each observation says of a fault that is present by itself. */
export function likelihoodRow(model: DiagnosisModel, fault: number): readonly number[] {
  return model.observations.map(({ form, background, value }) => {
    const v = value[fault] as number;
    if (form === "seen") return (1 - (1 - background) * (1 - v)) / background;
    if (form === "not-seen") return 1 - v;
    return v < 0 ? 1 : v / background;
  });
}

/** What the misfire observations together say of a fault that is present by itself. */
export function expectedSetLikelihood(model: DiagnosisModel, fault: number): number {
  let sum = 0;
  for (let a = model.atomStart[fault] as number; a < (model.atomStart[fault + 1] as number); a++) {
    const set = model.atomSet[a] as number;
    const likelihood = model.misfireObservations.reduce((p, o) => p * o.likelihood(set), 1);
    sum += (model.atomChance[a] as number) * likelihood;
  }
  return sum;
}

function kindsOf({ faults, observations }: DiagnosisModel): {
  kindOf: Uint32Array;
  first: number[];
} {
  const numbers = new Map<string, number>();
  const first: number[] = [];
  const kindOf = new Uint32Array(faults);
  for (let f = 0; f < faults; f++) {
    const key = observations.map(({ value }) => value[f]).join(" ");
    const known = numbers.get(key);
    if (known === undefined) {
      numbers.set(key, first.length);
      first.push(f);
    }
    kindOf[f] = known ?? first.length - 1;
  }
  return { kindOf, first };
}

/** Above this many entries triples are worked out anew each time. */
const MOST_REMEMBERED = 4_000_000;

/** What the observations say of three kinds, remembered for kinds in ascending order. */
function tripleTable(rows: Rows, kinds: number): (a: number, b: number, c: number) => number {
  const length = (kinds * (kinds + 1) * (kinds + 2)) / 6;
  if (length > MOST_REMEMBERED) return (a, b, c) => together(rows, a, b, c);
  const known = new Float64Array(length).fill(-1);
  return (a, b, c) => {
    const low = Math.min(a, b, c);
    const high = Math.max(a, b, c);
    const middle = a + b + c - low - high;
    // position in the list of all low ≤ middle ≤ high
    const at = (high * (high + 1) * (high + 2)) / 6 + (middle * (middle + 1)) / 2 + low;
    const before = known[at] as number;
    if (before >= 0) return before;
    const said = together(rows, low, middle, high);
    known[at] = said;
    return said;
  };
}

/** No second or third member. */
const NONE = -1;

/** Observations by kind: `seen` rows, then `choice` rows; `not seen` rows are one product. */
interface Rows {
  readonly rows: number;
  readonly seen: number;
  readonly leak: Float64Array;
  /** [kind·rows + row]: 1−p for `seen`; q/background, or −1 when silent, for `choice`. */
  readonly cell: Float64Array;
  /** By kind: product of the `not seen` rows. */
  readonly plain: Float64Array;
}

function rowsOf(model: DiagnosisModel, first: readonly number[]): Rows {
  const seen = model.observations.filter((o) => o.form === "seen");
  const choices = model.observations.filter((o) => o.form === "choice");
  const absent = model.observations.filter((o) => o.form === "not-seen");
  const rows = seen.length + choices.length;
  const cell = new Float64Array(first.length * rows);
  const plain = new Float64Array(first.length).fill(1);
  first.forEach((fault, kind) => {
    const start = kind * rows;
    seen.forEach((o, row) => {
      cell[start + row] = 1 - (o.value[fault] as number);
    });
    choices.forEach((o, row) => {
      const value = o.value[fault] as number;
      cell[start + seen.length + row] = value < 0 ? -1 : value / o.background;
    });
    for (const o of absent)
      plain[kind] = (plain[kind] as number) * (1 - (o.value[fault] as number));
  });
  return {
    rows,
    seen: seen.length,
    leak: Float64Array.from(seen, (o) => o.background),
    cell,
    plain,
  };
}

function together(
  { rows, seen, leak, cell, plain }: Rows,
  a: number,
  b: number,
  c: number,
): number {
  const ia = a * rows;
  const ib = b * rows;
  const ic = c * rows;
  let product = plain[a] as number;
  if (b >= 0) product *= plain[b] as number;
  if (c >= 0) product *= plain[c] as number;
  for (let row = 0; row < seen; row++) {
    const l = leak[row] as number;
    let none = cell[ia + row] as number;
    if (b >= 0) none *= cell[ib + row] as number;
    if (c >= 0) none *= cell[ic + row] as number;
    product *= (1 - (1 - l) * none) / l;
  }
  for (let row = seen; row < rows; row++) {
    let sum = 0;
    let speakers = 0;
    const ra = cell[ia + row] as number;
    if (ra >= 0) {
      sum = ra;
      speakers = 1;
    }
    if (b >= 0) {
      const rb = cell[ib + row] as number;
      if (rb >= 0) {
        sum += rb;
        speakers++;
      }
    }
    if (c >= 0) {
      const rc = cell[ic + row] as number;
      if (rc >= 0) {
        sum += rc;
        speakers++;
      }
    }
    if (speakers > 0) product *= sum / speakers;
  }
  return product;
}

function setLikelihoods(model: DiagnosisModel): Float64Array {
  const size = randomSet(model.cylinders) + 1;
  const bySet = new Float64Array(size).fill(1);
  for (const { likelihood } of model.misfireObservations) {
    for (let set = 0; set < size; set++) bySet[set] = (bySet[set] as number) * likelihood(set);
  }
  return bySet;
}
