// Which sets of cylinders faults reach, and what the misfire findings say of unions of them. Few sets are
// reached by one fault, and few by two, so they are numbered and nothing is done for any other.
import { type DiagnosisModel, randomSet, unionOf } from "../model/diagnosis-model.ts";

/** Sets that faults with company reach. "Masks" are those of one fault, "unions" those of up to two. */
export interface Reach {
  readonly masks: number;
  /** The set of each mask and of each union; the masks come first. */
  readonly unionSet: Uint32Array;
  /** [mask·masks + mask]: number of their union. */
  readonly unionOf: Uint32Array;
  /** Atoms of fault f: first[f] to first[f + 1] − 1. None for a fault that stands alone. */
  readonly first: Uint32Array;
  readonly atomMask: Uint32Array;
  /** Chance of the atom times the weight of its fault. */
  readonly atomWeight: Float64Array;
  /** What the misfire findings say of a set. */
  readonly likelihood: (set: number) => number;
  /** [union·masks + mask]: the set that the two make together. */
  readonly setOf: Uint32Array;
  /** [union·masks + mask]: what the misfire findings say of it. */
  readonly ofUnion: Float64Array;
  /** [fault·rows + union]: Σ over the atoms of the fault of weight · likelihood of atom and union. */
  readonly joined: Float64Array;
  /** Unions of which `ofUnion` and `joined` tell, the first ones. */
  readonly rows: number;
}

/**
 * @param weight by fault: what its atoms are multiplied with
 * @param most faults that come together: of two `ofUnion` and `joined` are told for masks alone
 */
export function reachOf(model: DiagnosisModel, weight: Float64Array, most: number): Reach {
  const likelihood = setLikelihood(model);
  const layout = layoutOf(model);
  const { masks, unionSet, setOf } = layout;
  const rows = most > 2 ? unionSet.length : masks;
  const ofUnion = new Float64Array(rows * masks);
  for (let at = 0; at < ofUnion.length; at++) ofUnion[at] = likelihood(setOf[at] as number);
  const sofar = { ...layout, likelihood, ofUnion, rows, atomWeight: atomWeightsOf(model, weight) };
  return { ...sofar, joined: joinedOf(sofar, model.faults) };
}

type Layout = Pick<Reach, "masks" | "unionSet" | "unionOf" | "first" | "atomMask" | "setOf">;

/** By the sets of a model: models of one engine share them. */
const layouts = new WeakMap<
  Uint32Array,
  { readonly of: DiagnosisModel; readonly layout: Layout }
>();

function layoutOf(model: DiagnosisModel): Layout {
  const { cylinders, atomSet, atomStart, alone } = model;
  const known = layouts.get(atomSet);
  const isSame = known?.of.atomStart === atomStart && known.of.alone === alone;
  if (known && isSame && known.of.cylinders === cylinders) return known.layout;
  const { sets, first, atomMask } = masksOf(model);
  const masks = sets.length;
  const unions = unionsOf(cylinders, sets);
  const setOf = new Uint32Array(unions.unionSet.length * masks);
  for (let at = 0; at < setOf.length; at++) {
    const union = unions.unionSet[Math.floor(at / masks)] as number;
    setOf[at] = unionOf(cylinders, union, sets[at % masks] as number);
  }
  const layout = { masks, first, atomMask, ...unions, setOf };
  layouts.set(atomSet, { of: { ...model, observations: [], misfireObservations: [] }, layout });
  return layout;
}

/** Product of the misfire observations, worked out once for each set that is asked for. */
function setLikelihood({
  cylinders,
  misfireObservations,
}: DiagnosisModel): (set: number) => number {
  const known = new Float64Array(randomSet(cylinders) + 1).fill(-1);
  return (set) => {
    const before = known[set] as number;
    if (before >= 0) return before;
    let product = 1;
    for (const { likelihood } of misfireObservations) product *= likelihood(set);
    known[set] = product;
    return product;
  };
}

function masksOf({ cylinders, faults, alone, atomStart, atomSet }: DiagnosisModel) {
  const number = new Int32Array(randomSet(cylinders) + 1).fill(-1);
  const sets: number[] = [];
  const first = new Uint32Array(faults + 1);
  const atomMask = new Uint32Array(atomSet.length);
  let atoms = 0;
  for (let f = 0; f < faults; f++) {
    first[f] = atoms;
    const end = alone[f] ? 0 : (atomStart[f + 1] as number);
    for (let a = atomStart[f] as number; a < end; a++) {
      const set = atomSet[a] as number;
      if ((number[set] as number) < 0) number[set] = sets.push(set) - 1;
      atomMask[atoms++] = number[set] as number;
    }
  }
  first[faults] = atoms;
  return { sets, first, atomMask };
}

function atomWeightsOf(
  { faults, alone, atomStart, atomChance }: DiagnosisModel,
  weight: Float64Array,
): Float64Array {
  const weights = new Float64Array(atomChance.length);
  let atoms = 0;
  for (let f = 0; f < faults; f++) {
    if (alone[f]) continue;
    for (let a = atomStart[f] as number; a < (atomStart[f + 1] as number); a++) {
      weights[atoms++] = (atomChance[a] as number) * (weight[f] as number);
    }
  }
  return weights;
}

function unionsOf(cylinders: number, sets: readonly number[]) {
  const masks = sets.length;
  const number = new Int32Array(randomSet(cylinders) + 1).fill(-1);
  const all = [...sets];
  for (let m = 0; m < masks; m++) number[sets[m] as number] = m;
  const numberOf = new Uint32Array(masks * masks);
  for (let a = 0; a < masks; a++) {
    for (let b = 0; b < masks; b++) {
      const set = unionOf(cylinders, sets[a] as number, sets[b] as number);
      if ((number[set] as number) < 0) number[set] = all.push(set) - 1;
      numberOf[a * masks + b] = number[set] as number;
    }
  }
  return { unionOf: numberOf, unionSet: Uint32Array.from(all) };
}

function joinedOf(
  { masks, first, atomMask, atomWeight, ofUnion, rows }: Omit<Reach, "joined">,
  faults: number,
): Float64Array {
  const joined = new Float64Array(faults * rows);
  for (let f = 0; f < faults; f++) {
    const start = first[f] as number;
    const end = first[f + 1] as number;
    for (let u = 0; u < rows; u++) {
      let sum = 0;
      for (let a = start; a < end; a++) {
        sum += (atomWeight[a] as number) * (ofUnion[u * masks + (atomMask[a] as number)] as number);
      }
      joined[f * rows + u] = sum;
    }
  }
  return joined;
}
