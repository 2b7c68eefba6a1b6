// Unions of sets become products. For every set T the chance that a fault's set lies inside T is worked
// out once; the chance that the union of several lies inside T is then the plain product, and what lies
// exactly at T follows by Möbius inversion over subsets. The last place of each vector stands for
// "anything, random too".
import { type DiagnosisModel, randomSet } from "../model/diagnosis-model.ts";

/** Length of a vector over sets: every set and, last, anything. */
export function latticeSize(cylinders: number): number {
  return randomSet(cylinders) + 1;
}

/**
 * By fault, [fault·size + T]: odds times the chance that the fault's set lies inside T; in the last
 * place the odds alone.
 */
export function insideOf(model: DiagnosisModel): Float64Array {
  const size = latticeSize(model.cylinders);
  const random = size - 1;
  const inside = new Float64Array(model.faults * size);
  for (let f = 0; f < model.faults; f++) {
    const odds = model.odds[f] as number;
    const vector = inside.subarray(f * size, (f + 1) * size);
    const end = model.atomStart[f + 1] as number;
    for (let a = model.atomStart[f] as number; a < end; a++) {
      const set = model.atomSet[a] as number;
      if (set === random) continue;
      vector[set] = (vector[set] as number) + odds * (model.atomChance[a] as number);
    }
    sumOverSubsets(vector);
    vector[random] = odds;
  }
  return inside;
}

/** From "exactly T" to "inside T", in place; the last place is left as it is. */
export function sumOverSubsets(vector: Float64Array): void {
  const random = vector.length - 1;
  for (let bit = 1; bit < random; bit *= 2) {
    for (let set = 0; set < random; set++) {
      if (set & bit) vector[set] = (vector[set] as number) + (vector[set ^ bit] as number);
    }
  }
}

/** From "inside T" to "exactly T", in place; the last place becomes random alone. */
export function exactlyOf(vector: Float64Array): Float64Array {
  const random = vector.length - 1;
  vector[random] = (vector[random] as number) - (vector[random - 1] as number);
  for (let bit = 1; bit < random; bit *= 2) {
    for (let set = 0; set < random; set++) {
      if (set & bit) vector[set] = (vector[set] as number) - (vector[set ^ bit] as number);
    }
  }
  return vector;
}

/**
 * The weights that turn a vector of "inside" into its expected likelihood: Σ_T weight[T]·inside[T]
 * equals Σ_T likelihood[T]·exactly[T].
 */
export function insideWeights(bySet: Float64Array): Float64Array {
  const weights = Float64Array.from(bySet);
  const random = weights.length - 1;
  for (let bit = 1; bit < random; bit *= 2) {
    for (let set = 0; set < random; set++) {
      if (set & bit) {
        weights[set ^ bit] = (weights[set ^ bit] as number) - (weights[set] as number);
      }
    }
  }
  weights[random - 1] = (weights[random - 1] as number) - (weights[random] as number);
  return weights;
}

/**
 * 1 for every set that up to `most` faults with company can make together. What inversion leaves at
 * any other set is rounding, which sharp likelihoods would blow up.
 */
export function reachableSets(model: DiagnosisModel, most: number): Uint8Array {
  const random = randomSet(model.cylinders);
  const alone = new Set<number>();
  for (let f = 0; f < model.faults; f++) {
    if (model.alone[f]) continue;
    for (let a = model.atomStart[f] as number; a < (model.atomStart[f + 1] as number); a++) {
      alone.add(model.atomSet[a] as number);
    }
  }
  let reached = alone;
  for (let members = 2; members <= most; members++) {
    const next = new Set(reached);
    for (const set of reached) for (const other of alone) next.add(Math.min(random, set | other));
    reached = next;
  }
  return Uint8Array.from({ length: random + 1 }, (_, set) => (reached.has(set) ? 1 : 0));
}
