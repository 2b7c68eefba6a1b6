// The diagnosis model: everything that inference needs, as flat arrays. No engine is left in it.
//
// A fault reaches a set of misfiring cylinders; each set it can reach, with its chance, is an atom. A set is a
// bit mask over the cylinders (bit c = cylinder c misses steadily); the number 2^cylinders stands for
// "cylinders miss at random". A union with random is random.

/** Two faults that breed one another: odds multiplier of the two together. */
export interface Link {
  readonly a: number;
  readonly b: number;
  readonly times: number;
}

/**
 * A finding that each fault explains on its own (causal independence).
 * - `seen` / `not-seen`: noisy-OR; `value` is the chance that the fault causes the sign, `background`
 *   the chance of the sign without a cause
 * - `choice`: `value` is the chance of the answer given the fault, −1 where the fault is silent about
 *   it, `background` the chance of the answer when no present fault speaks; several speakers count
 *   alike
 */
export interface Observation {
  readonly form: "seen" | "not-seen" | "choice";
  readonly background: number;
  /** By fault. */
  readonly value: Float64Array;
  /** Which answer of the caller it belongs to. */
  readonly answer: number;
}

/** A finding that looks only at which cylinders miss. */
export interface MisfireObservation {
  /** Chance of the answer given a set, in (0, 1]. */
  readonly likelihood: (set: number) => number;
  readonly answer: number;
}

export interface DiagnosisModel {
  readonly cylinders: number;
  readonly faults: number;
  /** Prior odds of each fault. */
  readonly odds: Float64Array;
  /** 1 where a fault can only be present by itself ("something else"). */
  readonly alone: Uint8Array;
  /** The part each fault belongs to, 0..components-1. */
  readonly component: Uint32Array;
  readonly components: number;
  /** Atoms of fault f are atomStart[f] to atomStart[f + 1] - 1; each fault has at least one. */
  readonly atomStart: Uint32Array;
  /** Chance of the atom given its fault; adds up to 1 over the atoms of a fault. */
  readonly atomChance: Float64Array;
  readonly atomSet: Uint32Array;
  readonly links: readonly Link[];
  readonly observations: readonly Observation[];
  readonly misfireObservations: readonly MisfireObservation[];
}

/** The set that stands for "cylinders miss at random". */
export function randomSet(cylinders: number): number {
  return 1 << cylinders;
}

/** Everything that misses when both sets do; a union with random is random. */
export function unionOf(cylinders: number, a: number, b: number): number {
  const random = randomSet(cylinders);
  return a === random || b === random ? random : a | b;
}
