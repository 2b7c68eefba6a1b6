// The weight of all hypotheses of two faults, by fault and by set, one pair after the other.
import type { Crowd, Ring } from "./crowd.ts";
import type { Row } from "./evidence.ts";

export function sumPairs(crowd: Crowd): Ring {
  const { faults, sets, alone, reach } = crowd;
  const ring = { fault: new Float64Array(faults), set: new Float64Array(sets), leftOut: 0 };
  const seconds = new Float64Array(reach.masks);
  const said = new Float64Array(faults);
  for (let a = 0; a < faults; a++) {
    if (alone[a]) continue;
    sayPairs(crowd, a, said);
    seconds.fill(0);
    addPairs(crowd, a, said, { ring, seconds });
    addSets(crowd, a, seconds, ring.set);
  }
  return ring;
}

/** What is said of a fault and each that comes after it; 0 for those that stand alone. */
function sayPairs({ faults, alone, company, wide }: Crowd, a: number, said: Float64Array): void {
  const start = a * faults;
  for (let b = a + 1; b < faults; b++) {
    said[b] = alone[b] ? 0 : (company.factor[start + b] as number);
  }
  for (let i = 0; i < wide.length; i++) {
    const { isChoice, gain, say } = wide[i] as Row;
    const x = say[a] as number;
    for (let b = a + 1; b < faults; b++) {
      const y = say[b] as number;
      const both = isChoice ? (x + y) / 2 : 1 + gain * (x + y - x * y);
      said[b] = (said[b] as number) * both;
    }
  }
}

function addPairs(
  { faults, reach }: Crowd,
  a: number,
  said: Float64Array,
  { ring, seconds }: { readonly ring: Ring; readonly seconds: Float64Array },
): void {
  const { first, atomMask, atomWeight, unionSet, joined } = reach;
  const { fault } = ring;
  const row = a * unionSet.length;
  let sum = 0;
  for (let b = a + 1; b < faults; b++) {
    const both = said[b] as number;
    const end = first[b + 1] as number;
    let expected = 0;
    // a mask is a union by itself, of the same number
    for (let atom = first[b] as number; atom < end; atom++) {
      const m = atomMask[atom] as number;
      const weight = both * (atomWeight[atom] as number);
      expected += weight * (joined[row + m] as number);
      seconds[m] = (seconds[m] as number) + weight;
    }
    sum += expected;
    fault[b] = (fault[b] as number) + expected;
  }
  fault[a] = (fault[a] as number) + sum;
}

/** Sets of a fault with its seconds. */
function addSets({ reach }: Crowd, a: number, seconds: Float64Array, set: Float64Array): void {
  const { masks, first, atomMask, atomWeight, unionOf, unionSet } = reach;
  for (let atom = first[a] as number; atom < (first[a + 1] as number); atom++) {
    const start = (atomMask[atom] as number) * masks;
    const weight = atomWeight[atom] as number;
    for (let m = 0; m < masks; m++) {
      const at = unionSet[unionOf[start + m] as number] as number;
      set[at] = (set[at] as number) + weight * (seconds[m] as number);
    }
  }
}
