// All triples of light faults in closed form, as if all were strangers; and what the acquainted offer to
// any third.
import type { Work } from "./crowd.ts";
import { addScaled } from "./third.ts";

/** All light faults as if they were strangers, and as if a fault could be its own company. */
export function addStrangers(work: Work): void {
  const { traits, reach, pool, thirds, others } = work;
  const { masks, unionOf } = reach;
  const weight = new Float64Array(masks * masks);
  for (let j = 0; j < traits.count; j++) {
    weight.fill(0);
    for (let k = 0; k < traits.count; k++) {
      thirds.fill(0);
      let isAny = false;
      traits.cores(j, k, (i, core) => {
        addScaled(thirds, pool, i * masks, core);
        isAny = true;
      });
      if (isAny) addPool(weight, pool.subarray(k * masks, (k + 1) * masks), thirds);
    }
    others.fill(0);
    for (let at = 0; at < weight.length; at++) {
      const u = unionOf[at] as number;
      others[u] = (others[u] as number) + (weight[at] as number);
    }
    addStrangersOf(work, j, others);
  }
}

/** Weights of a second and a third, by their masks. */
function addPool(to: Float64Array, seconds: Float64Array, thirds: Float64Array): void {
  const masks = thirds.length;
  for (let a = 0; a < masks; a++) {
    const weight = seconds[a] as number;
    if (weight === 0) continue;
    const start = a * masks;
    for (let b = 0; b < masks; b++) {
      to[start + b] = (to[start + b] as number) + weight * (thirds[b] as number);
    }
  }
}

/** One trait with the unions of all seconds and thirds. */
function addStrangersOf(
  { reach, pool, offered, ring }: Work,
  j: number,
  others: Float64Array,
): void {
  const { masks, ofUnion, setOf } = reach;
  for (let u = 0; u < others.length; u++) {
    const other = others[u] as number;
    if (other === 0) continue;
    for (let m = 0; m < masks; m++) {
      const at = j * masks + m;
      const end = u * masks + m;
      offered[at] = (offered[at] as number) + (other * (ofUnion[end] as number)) / 2;
      const set = setOf[end] as number;
      ring.set[set] = (ring.set[set] as number) + (other * (pool[at] as number)) / 6;
    }
  }
}

/** What light faults take part in as thirds of the pairs of others. */
export function addOffered({ faults, light, traits, reach, offered, ring }: Work): void {
  const { masks, first, atomMask, atomWeight } = reach;
  for (let c = 0; c < faults; c++) {
    if (!light[c]) continue;
    let sum = 0;
    for (let k = 0; k < traits.count; k++) {
      const trait = traits.of[c * traits.count + k] as number;
      if (trait === 0) continue;
      for (let atom = first[c] as number; atom < (first[c + 1] as number); atom++) {
        const at = k * masks + (atomMask[atom] as number);
        sum += trait * (atomWeight[atom] as number) * (offered[at] as number);
      }
    }
    ring.fault[c] = (ring.fault[c] as number) + sum;
  }
}
