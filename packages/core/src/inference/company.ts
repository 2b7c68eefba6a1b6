// Which faults are acquainted: some local row speaks of both, or a link joins them. Of strangers the local
// rows say what they say of each; for the acquainted there is a factor on top of that product, by pair,
// and a third one where three speak on one row.
import { type Evidence, type Row, said } from "./evidence.ts";
import type { LinkTable } from "./link-table.ts";

export interface Company {
  /** By fault: what the local rows say of it by itself. */
  readonly solo: Float64Array;
  /** By fault: that times its odds and what was not seen: all but the wide rows. */
  readonly weight: Float64Array;
  /** [fault·faults + fault]: what two are more than the product of their weights; links included. */
  readonly factor: Float64Array;
  /** [fault·faults + fault]: 1 for the acquainted. */
  readonly knows: Uint8Array;
  /** By fault: whom it knows, ascending. */
  readonly known: readonly (readonly number[])[];
  /** Local rows on which two speak. */
  readonly shared: (a: number, b: number) => readonly Row[];
}

/** A choice that a fault makes impossible would divide by nothing; this is taken for nothing. */
const NOTHING = 1e-12;

/** What a local row says of one speaker. */
function alone({ isChoice, gain, say }: Row, fault: number): number {
  const own = say[fault] as number;
  return isChoice ? Math.max(NOTHING, own) : 1 + gain * own;
}

export function companyOf(faults: number, evidence: Evidence, { links }: LinkTable): Company {
  const solo = new Float64Array(faults).fill(1);
  const factor = new Float64Array(faults * faults).fill(1);
  const knows = new Uint8Array(faults * faults);
  const both = (a: number, b: number, times: number): void => {
    for (const at of [a * faults + b, b * faults + a]) {
      factor[at] = (factor[at] as number) * times;
      knows[at] = 1;
    }
  };
  const rowsOf: Row[][] = Array.from({ length: faults }, () => []);
  for (const row of evidence.local) {
    const { speakers } = row;
    speakers.forEach((a, i) => {
      const own = alone(row, a);
      solo[a] = (solo[a] as number) * own;
      rowsOf[a]?.push(row);
      for (let j = i + 1; j < speakers.length; j++) {
        const b = speakers[j] as number;
        both(a, b, said(row, [a, b]) / own / alone(row, b));
      }
    });
  }
  for (const { a, b, times } of links) both(a, b, times);
  const weight = solo.map((own, f) => own * (evidence.plain[f] as number));
  return { solo, weight, factor, knows, known: knownOf(knows, faults), shared: sharedBy(rowsOf) };
}

function knownOf(knows: Uint8Array, faults: number): number[][] {
  return Array.from({ length: faults }, (_, a) => {
    const known: number[] = [];
    for (let b = 0; b < faults; b++) if (knows[a * faults + b]) known.push(b);
    return known;
  });
}

function sharedBy(rowsOf: readonly (readonly Row[])[]) {
  return (a: number, b: number): readonly Row[] => {
    const shared: Row[] = [];
    for (const row of rowsOf[a] as readonly Row[]) {
      const own = row.say[b] as number;
      if (row.isChoice ? own >= 0 : own > 0) shared.push(row);
    }
    return shared;
  };
}

/** What the rows that three share say more than the product of what they say of pairs. */
export function threefold(shared: readonly Row[], a: number, b: number, c: number): number {
  let product = 1;
  for (let i = 0; i < shared.length; i++) {
    const { isChoice, gain, say } = shared[i] as Row;
    const z = say[c] as number;
    if (isChoice ? z < 0 : z <= 0) continue;
    const x = say[a] as number;
    const y = say[b] as number;
    product *= isChoice
      ? ofThree(Math.max(NOTHING, x), Math.max(NOTHING, y), Math.max(NOTHING, z))
      : ofThreeSigns(gain, 1 - x, 1 - y, 1 - z);
  }
  return product;
}

/** The mean of three times each of them, by the means of two. */
function ofThree(x: number, y: number, z: number): number {
  return (8 / 3) * ((x + y + z) / (x + y)) * (x / (x + z)) * (y / (y + z)) * z;
}

/** The same of a sign, from the chances of not causing it. */
function ofThreeSigns(gain: number, x: number, y: number, z: number): number {
  const all = 1 + gain;
  const ones = (all - gain * x) * (all - gain * y) * (all - gain * z);
  const twos = (all - gain * x * y) * (all - gain * x * z) * (all - gain * y * z);
  return ((all - gain * x * y * z) * ones) / twos;
}
