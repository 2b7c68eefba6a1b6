// The weight of all hypotheses of two faults: all light faults by trait, as if they were strangers and could
// be their own company; then what the acquainted make different, one pair after the other.
import { factorOf } from "./company.ts";
import type { Work } from "./crowd.ts";
import { addScaled, saidOfTwo } from "./third.ts";

export function sumPairs(work: Work): void {
  addStrangerPairs(work);
  const { all, heavy, light, company, seconds } = work;
  const { known } = company;
  for (const a of all) {
    seconds.fill(0);
    if (light[a]) {
      addPair(work, a, a, -1 / 2);
      for (const b of known[a] as readonly number[]) {
        if (b > a && light[b]) addPair(work, a, b, factorOf(company, a, b) - 1);
      }
    }
    for (const b of light[a] ? heavy : all) {
      if (b > a) addPair(work, a, b, factorOf(company, a, b));
    }
    addSets(work, a);
  }
}

/** Sets, and what any light fault is offered as a second. */
function addStrangerPairs({ traits, reach, pool, offered, ring }: Work): void {
  const { masks, unionOf, unionSet, ofUnion } = reach;
  const seconds = new Float64Array(masks);
  for (let j = 0; j < traits.count; j++) {
    seconds.fill(0);
    traits.seconds(j, (k, core) => addScaled(seconds, pool, k * masks, core));
    for (let a = 0; a < masks; a++) {
      const at = j * masks + a;
      const own = pool[at] as number;
      let sum = 0;
      for (let b = 0; b < masks; b++) {
        const weight = seconds[b] as number;
        // a mask is a union by itself, of the same number
        sum += weight * (ofUnion[a * masks + b] as number);
        const set = unionSet[unionOf[a * masks + b] as number] as number;
        ring.set[set] = (ring.set[set] as number) + (own * weight) / 2;
      }
      offered[at] = (offered[at] as number) + sum;
    }
  }
}

/** So many times what strangers would make of two. */
function addPair(work: Work, a: number, b: number, times: number): void {
  if (times === 0) return;
  const { reach, ring, seconds } = work;
  const { first, atomMask, atomWeight, rows, joined } = reach;
  const said = times * saidOfTwo(work.wide, a, b);
  const row = a * rows;
  let sum = 0;
  for (let atom = first[b] as number; atom < (first[b + 1] as number); atom++) {
    const m = atomMask[atom] as number;
    const weight = said * (atomWeight[atom] as number);
    sum += weight * (joined[row + m] as number);
    seconds[m] = (seconds[m] as number) + weight;
  }
  ring.fault[a] = (ring.fault[a] as number) + sum;
  ring.fault[b] = (ring.fault[b] as number) + sum;
}

/** Sets of a fault with its seconds. */
function addSets({ reach, ring, seconds }: Work, a: number): void {
  const { masks, first, atomMask, atomWeight, unionOf, unionSet } = reach;
  for (let atom = first[a] as number; atom < (first[a + 1] as number); atom++) {
    const start = (atomMask[atom] as number) * masks;
    const weight = atomWeight[atom] as number;
    for (let m = 0; m < masks; m++) {
      const at = unionSet[unionOf[start + m] as number] as number;
      ring.set[at] = (ring.set[at] as number) + weight * (seconds[m] as number);
    }
  }
}
