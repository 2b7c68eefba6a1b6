// What the sums over triples work on: the faults as they are told of one another, and arrays that are
// written anew for each pair.
import type { Company } from "./company.ts";
import type { Row } from "./evidence.ts";
import type { Reach } from "./reach.ts";
import type { Traits } from "./selection.ts";

export interface Ring {
  /** By fault: weight of the hypotheses that hold it. */
  readonly fault: Float64Array;
  /** By set: weight of the hypotheses that make it, before the misfire findings have their say. */
  readonly set: Float64Array;
  /** What was left out of any number at most. */
  leftOut: number;
}

export interface Crowd {
  readonly faults: number;
  readonly sets: number;
  readonly alone: Uint8Array;
  readonly wide: readonly Row[];
  /** Undefined where the closed form is no gain: all are then summed one by one. */
  readonly traits: Traits | undefined;
  readonly company: Company;
  readonly reach: Reach;
}

/** One fault with two masks; a row is written when it is first asked for. */
export interface Joins {
  /** The fault. */
  of: number;
  /** [mask·masks + mask]: what is expected of it when the two join it. */
  readonly expected: Float64Array;
  /** [mask·masks + mask]: weight of a second and a third with these masks. */
  readonly weight: Float64Array;
  /** By mask: 1 where its row is written. */
  readonly isWritten: Uint8Array;
}

/** Arrays that are written anew for each pair, and what is added up over all. */
export interface Work extends Crowd {
  readonly traits: Traits;
  readonly ring: Ring;
  /** 1 for faults that can be strangers. */
  readonly light: Uint8Array;
  /** Faults that can have company; of these the ones that can be no strangers. */
  readonly all: readonly number[];
  readonly heavy: readonly number[];
  /** [trait·masks + mask]: all light faults together. */
  readonly pool: Float64Array;
  /** [trait·masks + mask]: what any light fault takes part in as a third. */
  readonly offered: Float64Array;
  /** By mask: what is expected of the pair when that mask joins it. */
  readonly expected: Float64Array;
  /** By trait: what the wide rows say of the pair and a third. */
  readonly say: Float64Array;
  /** By mask: weight of all light thirds of the pair, as if all were strangers. */
  readonly strangers: Float64Array;
  /** By mask: weight of the seconds of a fault. */
  readonly seconds: Float64Array;
  /** By mask: weight of the thirds of the pair. */
  readonly thirds: Float64Array;
  /** By union: the second and third members of all triples of one fault. */
  readonly others: Float64Array;
  readonly joins: Joins;
  /** [fault·rows + row]: what the wide rows have of each fault. */
  readonly says: Float64Array;
  /** By wide row: what it says of the pair and a third that says 0, and how that grows. */
  readonly held: Float64Array;
  readonly slope: Float64Array;
  /** By wide choice: what it says of the pair and a third that is silent. */
  readonly silent: Float64Array;
  /** Terms below this are left out, until all that is allowed is spent. */
  readonly least: number;
  readonly allowed: number;
}

/** Heavier than this is no stranger. */
const HEAVY = 30;

/** Terms differ by powers of ten, so most of those left out are far below the least. */
const MANY_ARE_SMALLER = 30;

const NO_TRAITS: Traits = {
  count: 0,
  of: new Float64Array(),
  third: () => {},
  seconds: () => {},
  cores: () => {},
};

export function workOf(crowd: Crowd, allowed: number): Work {
  const { faults, sets, alone, wide, traits = NO_TRAITS, company, reach } = crowd;
  const { masks } = reach;
  const light = Uint8Array.from(company.weight, (weight, f) =>
    !alone[f] && weight * spoken(wide, f) < HEAVY && crowd.traits ? 1 : 0,
  );
  const traitMasks = traits.count * masks;
  const pool = new Float64Array(traitMasks);
  for (let f = 0; f < faults; f++) {
    if (light[f]) addTraits(crowd, traits, f, pool);
  }
  const all = Array.from(light.keys()).filter((f) => !alone[f]);
  return {
    ...crowd,
    all,
    heavy: all.filter((f) => !light[f]),
    traits,
    ring: { fault: new Float64Array(faults), set: new Float64Array(sets), leftOut: 0 },
    light,
    pool,
    offered: new Float64Array(traitMasks),
    expected: new Float64Array(masks),
    say: new Float64Array(traits.count),
    strangers: new Float64Array(masks),
    seconds: new Float64Array(masks),
    thirds: new Float64Array(masks),
    others: new Float64Array(reach.unionSet.length),
    joins: {
      of: -1,
      expected: new Float64Array(masks * masks),
      weight: new Float64Array(masks * masks),
      isWritten: new Uint8Array(masks),
    },
    says: saysOf(wide, faults),
    held: new Float64Array(wide.length),
    slope: new Float64Array(wide.length),
    silent: new Float64Array(wide.length),
    least: (MANY_ARE_SMALLER * allowed) / termsOf(crowd, light),
    allowed,
  };
}

function saysOf(wide: readonly Row[], faults: number): Float64Array {
  const says = new Float64Array(faults * wide.length);
  wide.forEach(({ say }, i) => {
    for (let f = 0; f < faults; f++) says[f * wide.length + i] = say[f] as number;
  });
  return says;
}

/** What choices with silent faults say of a fault by itself. */
function spoken(wide: readonly Row[], fault: number): number {
  let product = 1;
  for (const { isChoice, hasSilent, say } of wide) {
    const own = say[fault] as number;
    if (isChoice && hasSilent && own >= 0) product *= own;
  }
  return product;
}

function addTraits({ reach }: Crowd, traits: Traits, f: number, pool: Float64Array): void {
  const { masks, first, atomMask, atomWeight } = reach;
  for (let k = 0; k < traits.count; k++) {
    const trait = traits.of[f * traits.count + k] as number;
    if (trait === 0) continue;
    for (let a = first[f] as number; a < (first[f + 1] as number); a++) {
      const at = k * masks + (atomMask[a] as number);
      pool[at] = (pool[at] as number) + trait * (atomWeight[a] as number);
    }
  }
}

/** At least as many as can be left out. */
function termsOf({ faults, company }: Crowd, light: Uint8Array): number {
  let terms = 1;
  for (let a = 0; a < faults; a++) {
    if (!light[a]) terms += (faults * faults) / 2;
    const known = company.known[a] as readonly number[];
    terms += known.length;
    for (const b of known) terms += (company.known[b] as readonly number[]).length;
  }
  return terms;
}
