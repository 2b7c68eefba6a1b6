// The weight of all hypotheses of three faults, by fault and by set.
//
// Strangers are summed in closed form: what is said of three of them is a product of their own weights and
// of what the wide rows say, which is a sum of products of traits. Of the acquainted, what they say more
// or less than strangers is added pair by pair: for a pair with factor 1 + d, d times the pair with any
// third; and triple by triple what is left where the third knows one of the two. A fault that explains
// very much by itself would make these differences large, and take digits: it is heavy, no stranger to
// anyone, and its triples are summed one by one.
import { areAcquainted, factorOf, threefold } from "./company.ts";
import type { Work } from "./crowd.ts";
import { addStrangers } from "./strangers.ts";
import {
  addAnyThird,
  addAtoms,
  addOthers,
  addThird,
  beginFault,
  dot,
  endFault,
  expectOf,
  expectPair,
  findStrangers,
  isLeftOut,
  largest,
  saidOf,
} from "./third.ts";

/** Two faults, and the hypotheses of three that hold them. */
export interface Pair {
  readonly weightWith: (third: number) => number;
  readonly withAnyThird: () => number;
}

export function sumTriples(work: Work): void {
  addStrangers(work);
  addAcquainted(work);
  addHeavy(work);
}

/** What the acquainted make different, and that no fault is its own company. */
function addAcquainted(work: Work): void {
  const { faults, company, light } = work;
  for (let a = 0; a < faults; a++) {
    if (!light[a]) continue;
    beginFault(work, a);
    addSelf(work, a);
    for (const b of company.known[a] as readonly number[]) {
      if (b > a && light[b]) addPair(work, a, b);
    }
    endFault(work);
  }
}

/** The pair of a fault with itself, which the closed form has counted, is taken out again. */
function addSelf(work: Work, a: number): void {
  const { ring, thirds, expected } = work;
  expectPair(work, a);
  thirds.fill(0);
  findStrangers(work, a);
  addAnyThird(work, -1 / 2);
  const own = saidOf(work, a);
  addAtoms(work, a, own / 3);
  const weight = dot(thirds, expected);
  ring.fault[a] = (ring.fault[a] as number) + 2 * weight + (own / 3) * expectOf(work, a);
  addOthers(work, a);
}

function addPair(work: Work, a: number, b: number): void {
  const { ring, thirds, expected, company } = work;
  const extra = factorOf(company, a, b) - 1;
  expectPair(work, b);
  thirds.fill(0);
  findStrangers(work, b);
  let ownA = 0;
  let ownB = 0;
  if (extra !== 0 && !isLeftOut(work, extra)) {
    addAnyThird(work, extra);
    // neither is a third of their own pair
    const saidA = extra * saidOf(work, a);
    const saidB = extra * saidOf(work, b);
    addAtoms(work, a, -saidA);
    addAtoms(work, b, -saidB);
    ownA = saidA * expectOf(work, a);
    ownB = saidB * expectOf(work, b);
  }
  addKnown(work, a, b);
  const weight = dot(thirds, expected);
  ring.fault[a] = (ring.fault[a] as number) + weight - ownA;
  ring.fault[b] = (ring.fault[b] as number) + weight - ownB;
  addOthers(work, b);
}

/** Thirds that know one of the two; a triple is met at the first of its acquainted pairs only. */
function addKnown(work: Work, a: number, b: number): void {
  const { company, light } = work;
  const { factor, knows, known, place, acquainted } = company;
  const shared = company.shared(a, b);
  const most = largest(work.expected);
  const ofA = (place[a] as number) * acquainted;
  const ofB = (place[b] as number) * acquainted;
  const ab = factor[ofA + (place[b] as number)] as number;
  const all = [known[a], known[b]] as const;
  for (let list = 0; list < 2; list++) {
    for (const c of all[list] as readonly number[]) {
      if (!light[c] || c <= (list === 0 ? b : a)) continue;
      const at = place[c] as number;
      if (list === 1 && knows[ofA + at]) continue;
      const ac = factor[ofA + at] as number;
      const bc = factor[ofB + at] as number;
      const three = shared.length > 0 ? threefold(shared, a, b, c) : 1;
      addThird(work, c, ab * ac * bc * three - (ab + ac + bc - 2), most);
    }
  }
}

/** Triples with a heavy fault, one by one; with several, at the first of them. */
function addHeavy(work: Work): void {
  const rest = [...work.all];
  for (const h of work.heavy) {
    rest.splice(rest.indexOf(h), 1);
    beginFault(work, h);
    for (let i = 0; i < rest.length; i++) addHeavyPair(work, h, rest, i);
    endFault(work);
  }
}

/** A heavy fault and the i-th of the rest, with those after it. */
function addHeavyPair(work: Work, a: number, rest: readonly number[], i: number): void {
  const b = rest[i] as number;
  const { ring, thirds, expected, company } = work;
  expectPair(work, b);
  thirds.fill(0);
  const shared = company.shared(a, b);
  const most = largest(expected);
  const ab = factorOf(company, a, b);
  for (let j = i + 1; j < rest.length; j++) {
    const c = rest[j] as number;
    const three = shared.length > 0 ? threefold(shared, a, b, c) : 1;
    const both = factorOf(company, a, c) * factorOf(company, b, c);
    addThird(work, c, ab * both * three, most);
  }
  const weight = dot(thirds, expected);
  ring.fault[a] = (ring.fault[a] as number) + weight;
  ring.fault[b] = (ring.fault[b] as number) + weight;
  addOthers(work, b);
}

/** Asking for the next pair puts an end to the one before. */
export function pairOf(work: Work, a: number, b: number): Pair {
  const { light, company, all, heavy } = work;
  const { known } = company;
  const shared = company.shared(a, b);
  const ab = factorOf(company, a, b);
  if (work.joins.of !== a) beginFault(work, a);
  expectPair(work, b);
  /** The factor on top of what strangers would make of it. */
  const factorWith = (c: number): number => {
    const both = factorOf(company, a, c) * factorOf(company, b, c);
    return ab * both * (shared.length > 0 ? threefold(shared, a, b, c) : 1);
  };
  const plainWith = (c: number): number => saidOf(work, c) * expectOf(work, c);
  const withAnyThird = (): number => {
    const areStrangers = light[a] === 1 && light[b] === 1;
    let sum = areStrangers ? ab * withStrangers(work, a, b) : 0;
    const visit = (c: number): void => {
      const counted = areStrangers && light[c] ? ab : 0;
      if (c !== a && c !== b) sum += (factorWith(c) - counted) * plainWith(c);
    };
    if (areStrangers) {
      for (const c of known[a] as readonly number[]) if (light[c]) visit(c);
      for (const c of known[b] as readonly number[]) {
        if (light[c] && !areAcquainted(company, a, c)) visit(c);
      }
    }
    for (const c of areStrangers ? heavy : all) visit(c);
    return Math.max(0, sum);
  };
  return { weightWith: (c) => factorWith(c) * plainWith(c), withAnyThird };
}

/** The pair with all light thirds as if they were strangers. */
function withStrangers(work: Work, a: number, b: number): number {
  const own = saidOf(work, a) * expectOf(work, a) + saidOf(work, b) * expectOf(work, b);
  findStrangers(work, b);
  return dot(work.strangers, work.expected) - own;
}
