// The weight of all hypotheses of three faults, by fault and by set.
//
// Strangers are summed in closed form: what is said of three of them is a product of their own weights and
// of what the wide rows say, which is a sum of products of traits. Of the acquainted, what they say more
// or less than strangers is added pair by pair: for a pair with factor 1 + d, d times the pair with any
// third; and triple by triple what is left where the third knows one of the two. A fault that explains
// very much by itself would make these differences large, and take digits: it is heavy, no stranger to
// anyone, and its triples are summed one by one.
import { threefold } from "./company.ts";
import { type Crowd, type Ring, type Work, workOf } from "./crowd.ts";
import { addOffered, addStrangers } from "./strangers.ts";
import {
  addAtoms,
  addOthers,
  addSets,
  addThird,
  classPair,
  dot,
  expectOf,
  expectPair,
  isLeftOut,
  largest,
  offerThirds,
  saidOf,
} from "./third.ts";

export interface Triples {
  readonly ring: Ring;
  /** Weight of all hypotheses of three faults that hold these two. */
  readonly withThird: (a: number, b: number) => number;
}

/** @param allowed weight that may be left out of any number */
export function sumTriples(crowd: Crowd, allowed: number): Triples {
  const work = workOf(crowd, allowed);
  addStrangers(work);
  addAcquainted(work);
  addHeavy(work);
  addOffered(work);
  return { ring: work.ring, withThird: (a, b) => withThird(work, a, b) };
}

/** What the acquainted make different, and that no fault is its own company. */
function addAcquainted(work: Work): void {
  const { faults, company, light, others } = work;
  for (let a = 0; a < faults; a++) {
    if (!light[a]) continue;
    others.fill(0);
    addSelf(work, a);
    for (const b of company.known[a] as readonly number[]) {
      if (b > a && light[b]) addPair(work, a, b);
    }
    addSets(work, a);
  }
}

/** The pair of a fault with itself, which the closed form has counted, is taken out again. */
function addSelf(work: Work, a: number): void {
  const { ring, thirds, expected } = work;
  expectPair(work, a, a);
  thirds.fill(0);
  offerThirds(work, classPair(work, a, a), -1 / 2);
  const own = saidOf(work, a);
  addAtoms(work, a, own / 3);
  const weight = dot(thirds, expected);
  ring.fault[a] = (ring.fault[a] as number) + 2 * weight + (own / 3) * expectOf(work, a);
  addOthers(work, a);
}

function addPair(work: Work, a: number, b: number): void {
  const { ring, thirds, expected, company, faults } = work;
  const extra = (company.factor[a * faults + b] as number) - 1;
  expectPair(work, a, b);
  thirds.fill(0);
  const pair = classPair(work, a, b);
  let ownA = 0;
  let ownB = 0;
  if (extra !== 0 && !isLeftOut(work, pair, extra)) {
    offerThirds(work, pair, extra);
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
  const { company, light, faults } = work;
  const { factor, knows, known } = company;
  const shared = company.shared(a, b);
  const most = largest(work.expected);
  const ab = factor[a * faults + b] as number;
  const visit = (c: number): void => {
    const ac = factor[a * faults + c] as number;
    const bc = factor[b * faults + c] as number;
    const all = ab * ac * bc * threefold(shared, a, b, c);
    addThird(work, c, all - (ab + ac + bc - 2), most);
  };
  for (const c of known[a] as readonly number[]) if (c > b && light[c]) visit(c);
  for (const c of known[b] as readonly number[]) {
    if (c > a && light[c] && !knows[a * faults + c]) visit(c);
  }
}

/** Triples with a heavy fault, one by one; with several, at the first of them. */
function addHeavy(work: Work): void {
  const { faults, alone, light, others } = work;
  const rest = Array.from({ length: faults }, (_, f) => f).filter((f) => !alone[f]);
  const heavy = rest.filter((f) => !light[f]);
  for (const h of heavy) {
    rest.splice(rest.indexOf(h), 1);
    others.fill(0);
    for (let i = 0; i < rest.length; i++) addHeavyPair(work, h, rest, i);
    addSets(work, h);
  }
}

/** A heavy fault and the i-th of the rest, with those after it. */
function addHeavyPair(work: Work, a: number, rest: readonly number[], i: number): void {
  const b = rest[i] as number;
  const { ring, thirds, expected, company, faults } = work;
  const { factor } = company;
  expectPair(work, a, b);
  thirds.fill(0);
  const shared = company.shared(a, b);
  const most = largest(expected);
  const ab = factor[a * faults + b] as number;
  for (let j = i + 1; j < rest.length; j++) {
    const c = rest[j] as number;
    const three = shared.length > 0 ? threefold(shared, a, b, c) : 1;
    const both = (factor[a * faults + c] as number) * (factor[b * faults + c] as number);
    addThird(work, c, ab * both * three, most);
  }
  const weight = dot(thirds, expected);
  ring.fault[a] = (ring.fault[a] as number) + weight;
  ring.fault[b] = (ring.fault[b] as number) + weight;
  addOthers(work, b);
}

function withThird(work: Work, a: number, b: number): number {
  const { faults, alone, light, company, expected } = work;
  const { factor, knows } = company;
  const shared = company.shared(a, b);
  const ab = factor[a * faults + b] as number;
  expectPair(work, a, b);
  const areStrangers = light[a] === 1 && light[b] === 1;
  const thirdOf = (c: number, counted: number): void => {
    const both = (factor[a * faults + c] as number) * (factor[b * faults + c] as number);
    const all = ab * both * threefold(shared, a, b, c);
    sum += (all - counted) * saidOf(work, c) * expectOf(work, c);
  };
  let sum = 0;
  if (areStrangers) {
    const { thirds } = classPair(work, a, b);
    const own = saidOf(work, a) * expectOf(work, a) + saidOf(work, b) * expectOf(work, b);
    sum = ab * (dot(thirds, expected) - own);
  }
  for (let c = 0; c < faults; c++) {
    if (alone[c] || c === a || c === b) continue;
    if (!areStrangers || !light[c]) thirdOf(c, 0);
    else if (knows[a * faults + c] || knows[b * faults + c]) thirdOf(c, ab);
  }
  return Math.max(0, sum);
}
