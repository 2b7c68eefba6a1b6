// All triples of light faults in closed form, as if all were strangers; and what the acquainted offer to
// any third.
import type { Work } from "./crowd.ts";
import type { Reach } from "./reach.ts";
import { addScaled } from "./third.ts";

/** All light faults as if they were strangers, and as if a fault could be its own company. */
export function addStrangers(work: Work): void {
  const { traits, reach, pool, thirds } = work;
  const { count } = traits;
  const unions = reach.unionSet.length;
  const others = new Float64Array(count * unions);
  for (let j = 0; j < count; j++) {
    for (let k = 0; k <= j; k++) {
      if (!offeredTo(work, j, k)) continue;
      addPool(reach, pool, k, { thirds, others: others.subarray(j * unions, (j + 1) * unions) });
      if (k === j) continue;
      addPool(reach, pool, j, { thirds, others: others.subarray(k * unions, (k + 1) * unions) });
    }
  }
  for (let j = 0; j < count; j++) {
    addStrangersOf(work, j, others.subarray(j * unions, (j + 1) * unions));
  }
}

/** Thirds of two traits, by mask; false where there are none. */
function offeredTo({ traits, reach, pool, thirds }: Work, j: number, k: number): boolean {
  let isAny = false;
  thirds.fill(0);
  traits.cores(j, k, (i, core) => {
    addScaled(thirds, pool, i * reach.masks, core);
    isAny = true;
  });
  return isAny;
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

/** Unions of a row of masks with the thirds. */
function addPool(
  { masks, unionOf }: Reach,
  pool: Float64Array,
  k: number,
  { thirds, others }: Pick<Work, "thirds" | "others">,
): void {
  const start = k * masks;
  for (let a = 0; a < masks; a++) {
    const weight = pool[start + a] as number;
    if (weight === 0) continue;
    for (let b = 0; b < masks; b++) {
      const u = unionOf[a * masks + b] as number;
      others[u] = (others[u] as number) + weight * (thirds[b] as number);
    }
  }
}

/** What light faults take part in as thirds of the pairs of others. */
export function addOffered({
  faults,
  light,
  traits,
  reach,
  classPairs,
  offered,
  ring,
}: Work): void {
  const { masks, first, atomMask, atomWeight } = reach;
  for (const { say, offers } of classPairs.values()) {
    for (let k = 0; k < traits.count; k++) {
      const trait = say[k] as number;
      for (let m = 0; m < masks; m++) {
        const at = k * masks + m;
        offered[at] = (offered[at] as number) + trait * (offers[m] as number);
      }
    }
  }
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
