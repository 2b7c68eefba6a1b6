// Rows on which many speak. What they say of three faults is a sum of products of what each has: its
// traits. There are two ways to have traits. By selection (selection.ts). By class:
// faults of which all wide rows say the same are one class, and to be of it is the trait. The one with
// fewer traits is taken.
import type { DiagnosisModel } from "../model/diagnosis-model.ts";
import { type Evidence, type Row, rowsOf, said } from "./evidence.ts";
import { bySelection, type Traits, waysOf } from "./selection.ts";

/** With more traits than this the closed form is no gain. */
const MOST_TRAITS = 160;
/** A row on which more faults than this speak makes too many of them acquainted, and is wide. */
const MANY = 32;
/** A choice with silent faults is wide from so many speakers on, while no more pairs of traits are met. */
const SOME = 17;
const MOST_PAIRS = 2500;
/** A trait by class costs more than one by selection: most pairs of those are never met. */
const CLASS_COST = 2;

/** The observations of a model, for sums over so many faults together. */
export function evidenceOf(model: DiagnosisModel, most: number): Evidence {
  const { rows, plain } = rowsOf(model);
  const wide = areWide(rows, most);
  return {
    wide: rows.filter((row) => wide.has(row)),
    local: rows.filter((row) => !wide.has(row)),
    plain,
  };
}

/** The rows that are better summed by trait. */
function areWide(rows: readonly Row[], most: number): ReadonlySet<Row> {
  const wide = new Set(
    rows.filter(({ isChoice, hasSilent, speakers }) =>
      isChoice ? !hasSilent : speakers.length > MANY,
    ),
  );
  // pairs are quickly visited
  if (most < 3) return wide;
  const others = rows
    .filter((row) => row.isChoice && !wide.has(row) && row.speakers.length > SOME)
    .sort((a, b) => b.speakers.length - a.speakers.length);
  let pairs = 1;
  for (const row of wide) pairs *= pairsOf(row);
  for (const row of others) {
    pairs *= pairsOf(row);
    if (pairs > MOST_PAIRS) break;
    wide.add(row);
  }
  return wide;
}

/** Pairs of numbers of two faults that a row knows. */
function pairsOf(row: Row): number {
  return waysOf(row) === 3 ? 9 : row.isChoice ? 3 : 4;
}

/** Undefined when there are too many. */
export function traitsOf(wide: readonly Row[], faults: number): Traits | undefined {
  const selections = wide.reduce((product, row) => product * waysOf(row), 1);
  const { classOf, first } = classesOf(wide, faults);
  if (selections <= CLASS_COST * first.length) return bySelection(wide, faults, selections);
  return first.length > MOST_TRAITS ? undefined : byClass(wide, classOf, first);
}

function byClass(wide: readonly Row[], classOf: Uint32Array, first: readonly number[]): Traits {
  const count = first.length;
  const of = new Float64Array(classOf.length * count);
  classOf.forEach((own, f) => {
    of[f * count + own] = 1;
  });
  const table = new Float64Array(count ** 3);
  const put = (i: number, j: number, k: number, value: number): void => {
    table[(i * count + j) * count + k] = value;
  };
  for (let i = 0; i < count; i++) {
    for (let j = 0; j <= i; j++) {
      for (let k = 0; k <= j; k++) {
        const three = [first[i] as number, first[j] as number, first[k] as number];
        const value = wide.reduce((product, row) => product * said(row, three), 1);
        put(i, j, k, value);
        put(i, k, j, value);
        put(j, i, k, value);
        put(j, k, i, value);
        put(k, i, j, value);
        put(k, j, i, value);
      }
    }
  }
  return {
    count,
    of,
    third: (a, b, out) => {
      const start = ((classOf[a] as number) * count + (classOf[b] as number)) * count;
      for (let k = 0; k < count; k++) out[k] = table[start + k] as number;
    },
    seconds: (j, visit) => {
      for (let k = 0; k < count; k++) {
        visit(
          k,
          wide.reduce((p, row) => p * said(row, [first[j] as number, first[k] as number]), 1),
        );
      }
    },
    cores: (j, k, visit) => {
      const start = (j * count + k) * count;
      for (let i = 0; i < count; i++) visit(i, table[start + i] as number);
    },
  };
}

function classesOf(wide: readonly Row[], faults: number) {
  const classOf = new Uint32Array(faults);
  let first = [0];
  for (const { say } of wide) {
    // faults of one class that the row tells apart
    const numbers = new Map<number, Map<number, number>>();
    first = [];
    for (let f = 0; f < faults; f++) {
      const before = classOf[f] as number;
      const own = say[f] as number;
      const known = numbers.get(own) ?? new Map<number, number>();
      numbers.set(own, known);
      let number = known.get(before);
      if (number === undefined) {
        number = first.push(f) - 1;
        known.set(before, number);
      }
      classOf[f] = number;
    }
  }
  return { classOf, first };
}
