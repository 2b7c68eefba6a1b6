// Which faults are acquainted: some local row speaks of both, or a link joins them. Of strangers the local
// rows say what they say of each; for the acquainted there is a factor on top of that product, by pair,
// and a third one where three speak on one row.
import type { Evidence, Row } from "./evidence.ts";
import type { LinkTable } from "./link-table.ts";

export interface Company {
  /** By fault: what the local rows say of it by itself. */
  readonly solo: Float64Array;
  /** By fault: that times its odds and what was not seen: all but the wide rows. */
  readonly weight: Float64Array;
  /** How many know somebody. Few do while little was found, so what two are to one another is kept for these alone. */
  readonly acquainted: number;
  /** By fault: its place among those; below 0 for a stranger to all. */
  readonly place: Int32Array;
  /** [place·acquainted + place]: what two are more than the product of their weights; links included. */
  readonly factor: Float64Array;
  /** [place·acquainted + place]: 1 for two that know one another. */
  readonly knows: Uint8Array;
  /** By fault: whom it knows, ascending. */
  readonly known: readonly (readonly number[])[];
  /** Local rows on which two speak. */
  readonly shared: (a: number, b: number) => readonly Row[];
}

/** What two are more than the product of their weights; 1 for strangers. */
export function factorOf({ place, acquainted, factor }: Company, a: number, b: number): number {
  const at = place[a] as number;
  const to = place[b] as number;
  return at < 0 || to < 0 ? 1 : (factor[at * acquainted + to] as number);
}

export function areAcquainted(
  { place, acquainted, knows }: Company,
  a: number,
  b: number,
): boolean {
  const at = place[a] as number;
  const to = place[b] as number;
  return at >= 0 && to >= 0 && knows[at * acquainted + to] === 1;
}

/** A choice that a fault makes impossible would divide by nothing; this is taken for nothing. */
const NOTHING = 1e-12;

/** What a local row says of one speaker. */
function alone({ isChoice, gain, say }: Row, fault: number): number {
  const own = say[fault] as number;
  return isChoice ? Math.max(NOTHING, own) : 1 + gain * own;
}

export function companyOf(faults: number, evidence: Evidence, table: LinkTable): Company {
  const place = placesOf(faults, evidence, table);
  const acquainted = place.reduce((most, at) => Math.max(most, at + 1), 0);
  const solo = new Float64Array(faults).fill(1);
  const factor = new Float64Array(acquainted ** 2).fill(1);
  const knows = new Uint8Array(acquainted ** 2);
  const known: number[][] = Array.from({ length: faults }, () => []);
  const both = (a: number, b: number, times: number): void => {
    const ab = (place[a] as number) * acquainted + (place[b] as number);
    const ba = (place[b] as number) * acquainted + (place[a] as number);
    if (!knows[ab]) {
      known[a]?.push(b);
      known[b]?.push(a);
    }
    knows[ab] = 1;
    knows[ba] = 1;
    factor[ab] = (factor[ab] as number) * times;
    factor[ba] = factor[ab] as number;
  };
  const rowsOf: Row[][] = Array.from({ length: faults }, () => []);
  for (const row of evidence.local) {
    const { speakers, isChoice, gain, say } = row;
    const own = speakers.map((a) => alone(row, a));
    speakers.forEach((a, i) => {
      const x = own[i] as number;
      solo[a] = (solo[a] as number) * x;
      rowsOf[a]?.push(row);
      const not = 1 - (say[a] as number);
      for (let j = i + 1; j < speakers.length; j++) {
        const b = speakers[j] as number;
        const y = own[j] as number;
        const two = isChoice ? (x + y) / 2 : 1 + gain * (1 - not * (1 - (say[b] as number)));
        both(a, b, two / x / y);
      }
    });
  }
  for (const { a, b, times } of table.links) both(a, b, times);
  for (const list of known) list.sort((a, b) => a - b);
  const weight = solo.map((own, f) => own * (evidence.plain[f] as number));
  const shared = sharedBy(rowsOf);
  return { solo, weight, acquainted, place, factor, knows, known, shared };
}

/** Numbers those who know somebody. */
function placesOf(faults: number, { local }: Evidence, { links }: LinkTable): Int32Array {
  const isMet = new Uint8Array(faults);
  for (const { speakers } of local) {
    for (const a of speakers) isMet[a] = 1;
  }
  for (const { a, b } of links) {
    isMet[a] = 1;
    isMet[b] = 1;
  }
  let acquainted = 0;
  return Int32Array.from(isMet, (met) => (met ? acquainted++ : -1));
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
  let above = 1;
  let below = 1;
  for (let i = 0; i < shared.length; i++) {
    const { isChoice, gain, say } = shared[i] as Row;
    let z = say[c] as number;
    if (isChoice ? z < 0 : z <= 0) continue;
    let x = say[a] as number;
    let y = say[b] as number;
    if (isChoice) {
      // the mean of three times each of them, by the means of two
      x = Math.max(NOTHING, x);
      y = Math.max(NOTHING, y);
      z = Math.max(NOTHING, z);
      above *= (8 / 3) * (x + y + z) * x * y * z;
      below *= (x + y) * (x + z) * (y + z);
    } else {
      // the same of a sign, from the chances of not causing it
      const all = 1 + gain;
      x = 1 - x;
      y = 1 - y;
      z = 1 - z;
      above *= (all - gain * x * y * z) * (all - gain * x) * (all - gain * y) * (all - gain * z);
      below *= (all - gain * x * y) * (all - gain * x * z) * (all - gain * y * z);
    }
  }
  return above / below;
}
