// From answers to observations: for each, what every fault (or every way it reaches cylinders) says of it.
import type { Engine } from "../engine/engine.ts";
import type {
  CylinderClass,
  FaultRow,
  FindingRow,
  MisfireClass,
  SignRow,
} from "../knowledge/schema.ts";
import { type MisfireObservation, type Observation, randomSet } from "../model/diagnosis-model.ts";
import { floored } from "../units/weight.ts";
import type { Answered } from "./answered.ts";
import { bits, codesLikelihood } from "./code.ts";
import { countsLikelihood } from "./count.ts";
import type { Instance } from "./prior.ts";
import { fromRegimes } from "./regime.ts";

const SILENT = -1;

/** Faults at their places. */
export interface Subjects {
  readonly engine: Engine;
  readonly instances: readonly Instance[];
}

export interface Observed {
  readonly observations: readonly Observation[];
  readonly misfireObservations: readonly MisfireObservation[];
}

/** Everything that one answer tells. */
export function observe(subjects: Subjects, answered: Answered): Observed {
  const { row } = answered;
  if (row.kind === "codes") return ofCodes(subjects, answered);
  if (row.kind === "counts") {
    const likelihood = countsLikelihood(answered.counts ?? []);
    return { observations: [], misfireObservations: [{ likelihood, answer: answered.answer }] };
  }
  return {
    observations:
      row.kind === "choice" ? ofChoice(subjects, answered) : ofSigns(subjects, answered),
    misfireObservations: row.byMisfire ? [ofMisfire(subjects, answered)] : [],
  };
}

/**
 * A choice: each fault's probability of the answer that was given. Where the misfiring set has its say
 * already (`byMisfire`), the fault adds only how much likelier than usual it makes the answer at a
 * cylinder that misses.
 */
function ofChoice(subjects: Subjects, answered: Answered): readonly Observation[] {
  const { row, answer, cylinder } = answered;
  const option = answered.options[0] ?? "";
  const background = floored(usualChance(row, option));
  const byType = new Map<FaultRow, number>();
  for (const { fault } of subjects.instances) {
    if (!byType.has(fault)) byType.set(fault, choiceChance(fault, row, option, background));
  }
  if ([...byType.values()].every((chance) => chance === SILENT)) return [];
  const value = Float64Array.from(subjects.instances, ({ fault, place }) => {
    const chance = byType.get(fault) ?? SILENT;
    // A fault without a row of its own looks like the background, and counts as a speaker.
    if (row.scope === "engine") return chance === SILENT ? background : chance;
    return place.cylinders.includes(cylinder ?? 0) ? chance : SILENT;
  });
  return [{ form: "choice", background, value, answer }];
}

/** Chance of an option when no fault speaks: at a cylinder that misses, where the row tells that. */
function usualChance(row: FindingRow, option: string): number {
  const byMisfire = row.byMisfire as Readonly<Record<string, Readonly<Record<string, number>>>>;
  return byMisfire?.["hit"]?.[option] ?? row.options[option]?.chance ?? 0;
}

/** Chance of an option given a fault, or silent when the fault states nothing about the finding. */
function choiceChance(
  fault: FaultRow,
  row: FindingRow,
  option: string,
  background: number,
): number {
  const stated = signOf(fault, row)?.gives;
  const derived = stated ? undefined : fromRegimes(fault, row);
  if (!stated && !derived) return SILENT;
  const full = derived?.[option] ?? completed(stated ?? {}, row, option);
  const shown = row.momentary ? fault.shows * full + (1 - fault.shows) * background : full;
  return floored(shown);
}

/** What a row leaves open is spread over the options it does not name, as in the background. */
function completed(
  stated: Readonly<Partial<Record<string, number>>>,
  row: FindingRow,
  option: string,
): number {
  const own = stated[option];
  if (own !== undefined) return own;
  let statedSum = 0;
  let openBackground = 0;
  for (const name of Object.keys(row.options)) {
    const value = stated[name];
    if (value === undefined) openBackground += usualChance(row, name);
    else statedSum += value;
  }
  const background = usualChance(row, option);
  return openBackground > 0 ? ((1 - statedSum) * background) / openBackground : 0;
}

/** Signs that are there or not: one observation an option. */
function ofSigns(subjects: Subjects, { row, options, answer }: Answered): readonly Observation[] {
  return Object.entries(row.options).map(([option, { chance }]) => ({
    form: options.includes(option) ? ("seen" as const) : ("not-seen" as const),
    background: floored(chance),
    value: Float64Array.from(subjects.instances, ({ fault }) => signChance(fault, row, option)),
    answer,
  }));
}

/** Chance that a fault causes a sign; 0 when it states nothing (the leak keeps it off zero). */
function signChance(fault: FaultRow, row: FindingRow, option: string): number {
  const stated = signOf(fault, row)?.gives;
  const chance = stated ? (stated[option] ?? 0) : (fromRegimes(fault, row)?.[option] ?? 0);
  return Math.min(0.999, row.momentary ? chance * fault.shows : chance);
}

/** Codes: the cylinders named look at the misfiring set, each family is a sign. */
function ofCodes(subjects: Subjects, { row, codes, answer }: Answered): Observed {
  const { engine } = subjects;
  const cylinders = engine.names.length;
  const named = (codes?.misfire ?? []).reduce((mask, number) => {
    const cylinder = engine.names.indexOf(number);
    return cylinder < 0 ? mask : mask | (1 << cylinder);
  }, 0);
  const observations: Observation[] = [];
  for (const [option, { chance }] of Object.entries(row.options)) {
    const pointed = codes?.families.get(option);
    const isAtPlace = (place: readonly number[]): boolean =>
      !pointed ||
      pointed.length === 0 ||
      pointed.some((n) => place.includes(engine.names.indexOf(n)));
    observations.push({
      form: pointed ? "seen" : "not-seen",
      background: floored(chance),
      value: Float64Array.from(subjects.instances, ({ fault, place }) =>
        isAtPlace(place.cylinders) ? signChance(fault, row, option) : 0,
      ),
      answer,
    });
  }
  const likelihood = codesLikelihood(cylinders, named, codes?.several ?? false);
  return { observations, misfireObservations: [{ likelihood, answer }] };
}

/** Findings that see only how many cylinders miss, or whether one does. */
function ofMisfire({ engine }: Subjects, answered: Answered): MisfireObservation {
  const { row, options, cylinder, answer } = answered;
  const cylinders = engine.names.length;
  const byClass = row.byMisfire as Readonly<Record<string, Readonly<Record<string, number>>>>;
  const chance = (name: MisfireClass | CylinderClass): number =>
    floored(byClass[name]?.[options[0] ?? ""] ?? 0);
  const likelihood = (set: number): number => {
    if (set === randomSet(cylinders)) return chance("random");
    if (cylinder !== undefined) return chance(hasCylinder(set, cylinder) ? "hit" : "spared");
    const missing = bits(set);
    return chance(missing === 0 ? "none" : missing === 1 ? "one" : missing === 2 ? "two" : "more");
  };
  return { likelihood, answer };
}

function signOf(fault: FaultRow, row: FindingRow): SignRow | undefined {
  return fault.signs.find((sign) => sign.finding === row.id);
}

function hasCylinder(set: number, cylinder: number): boolean {
  return Math.floor(set / 2 ** cylinder) % 2 === 1;
}
