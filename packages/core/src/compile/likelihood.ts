// From answers to observations: for each, what every fault (or every way it reaches cylinders) says of it.
import type { Engine } from "../engine/engine.ts";
import type { FaultRow, FindingRow, SignRow } from "../knowledge/schema.ts";
import type { MisfireObservation, Observation } from "../model/diagnosis-model.ts";
import { floored } from "../units/weight.ts";
import { afterMisfire } from "./after-misfire.ts";
import { type Answered, questionKey } from "./answered.ts";
import { codesLikelihood } from "./code.ts";
import { countsLikelihood } from "./count.ts";
import { metTimes, tempered } from "./hiding.ts";
import { cylinderClass, misfireClass } from "./pattern.ts";
import type { Instance } from "./prior.ts";
import { fromRegimes } from "./regime.ts";

const SILENT = -1;

/** Faults at their places, and what they were found to say of each question so far. */
export interface Subjects {
  readonly engine: Engine;
  readonly instances: readonly Instance[];
  readonly said: Map<FindingRow, Map<FaultRow | Instance, { readonly chances: Chances }>>;
  /** By finding and cylinder, then by instance: see `byMisfireSum`. */
  readonly sums: Map<string, Map<Instance, number>>;
}

/** By option; undefined where a fault states nothing about the finding. */
type Chances = Readonly<Record<string, number>> | undefined;

/** Subjects that remember, so that every answer after the first to a question costs little. */
export function subjectsOf(engine: Engine, instances: readonly Instance[]): Subjects {
  return { engine, instances, said: new Map(), sums: new Map() };
}

export interface Observed {
  readonly observations: readonly Observation[];
  readonly misfireObservations: readonly MisfireObservation[];
}

/**
 * Everything that one answer tells. `known`: the other answers, of which those to the same question elsewhere
 * are taken as given before it, and those about when the trouble is there say what the look could meet.
 */
export function observe(
  subjects: Subjects,
  answered: Answered,
  known: readonly Answered[] = [],
): Observed {
  const { row } = answered;
  if (row.kind === "codes") return ofCodes(subjects, answered);
  if (row.kind === "counts") {
    const likelihood = countsLikelihood(answered.counts ?? []);
    return { observations: [], misfireObservations: [{ likelihood, answer: answered.answer }] };
  }
  return {
    observations:
      row.kind === "choice"
        ? ofChoice(subjects, answered, known)
        : ofSigns(subjects, answered, known),
    misfireObservations: row.byMisfire ? [ofMisfire(subjects, answered)] : [],
  };
}

/**
 * A choice: each fault's probability of the answer that was given. Where the misfiring set has its say
 * already (`byMisfire`), the fault adds only how much likelier than usual it makes the answer at a
 * cylinder that misses.
 */
function ofChoice(
  subjects: Subjects,
  answered: Answered,
  known: readonly Answered[],
): readonly Observation[] {
  const { engine, instances } = subjects;
  const { row, answer, cylinder = 0 } = answered;
  const option = answered.options[0] ?? "";
  const background = floored(usualChance(row, option));
  const chancesOf = remembered(subjects, row, (instance) => choiceChances(engine, instance, row));
  const chanceOf = (instance: Instance): number => {
    const isThere = row.scope === "engine" || instance.place.cylinders.includes(cylinder);
    const whole = isThere ? chancesOf(instance) : undefined;
    const chances = whole && metIn(subjects, instance, answered, known, whole);
    // A fault without a row of its own looks like the background, and counts as a speaker.
    if (!chances) return row.scope === "engine" ? background : SILENT;
    const sums = chances === whole ? sumOf : byMisfireSum;
    const scale = row.byMisfire ? sums(subjects, instance, answered, chances) : 1;
    return Math.min(0.999, floored((chances[option] ?? 0) / scale));
  };
  const value = Float64Array.from(instances, chanceOf);
  const isSilent = value.every((chance) => chance === SILENT || chance === background);
  return isSilent ? [] : [{ form: "choice", background, value, answer }];
}

/** The sum, worked out once for all answers. */
function sumOf(
  subjects: Subjects,
  instance: Instance,
  answered: Answered,
  chances: Readonly<Record<string, number>>,
): number {
  const { sums } = subjects;
  const key = `${answered.row.id}@${answered.cylinder}`;
  const known = sums.get(key) ?? new Map<Instance, number>();
  sums.set(key, known);
  const sum = known.get(instance) ?? byMisfireSum(subjects, instance, answered, chances);
  known.set(instance, sum);
  return sum;
}

/**
 * What the answers to a question add up to, given a fault, when the say of the set is multiplied by how
 * much likelier than usual the fault makes each. Not 1 where the fault covers cylinders that it spares.
 */
function byMisfireSum(
  { engine }: Subjects,
  { pattern }: Instance,
  { row, cylinder }: Answered,
  chances: Readonly<Record<string, number>>,
): number {
  let sum = 0;
  for (const [set, chance] of pattern) {
    const bySet = byMisfireRow(engine, row, cylinder, set);
    for (const [option, own] of Object.entries(chances)) {
      sum += (chance * floored(bySet[option] ?? 0) * own) / floored(usualChance(row, option));
    }
  }
  return sum;
}

/** The chances of a look, as far as it could meet the fault; the same object where nothing speaks against it. */
function metIn(
  subjects: Subjects,
  instance: Instance,
  { row, cylinder }: Answered,
  known: readonly Answered[],
  chances: Readonly<Record<string, number>>,
): Readonly<Record<string, number>> {
  if (!row.made) return chances;
  const { engine } = subjects;
  const key = questionKey(engine, row, cylinder);
  const elsewhere = known
    .filter((other) => other.row.id === row.id && questionKey(engine, row, other.cylinder) !== key)
    .filter((other) => instance.place.cylinders.includes(other.cylinder ?? 0))
    .flatMap(({ options }) => options);
  const met = metBy(subjects, instance, row, known);
  if (met === 1 && elsewhere.length === 0) return chances;
  return tempered(chances, (option) => usualChance(row, option), row, { met, elsewhere });
}

function metBy(
  subjects: Subjects,
  instance: Instance,
  row: FindingRow,
  known: readonly Answered[],
): number {
  const { engine } = subjects;
  return metTimes(row, known, (when) =>
    remembered(subjects, when, (each) => choiceChances(engine, each, when))(instance),
  );
}

/** Worked out once for a fault where it does not hang on its place, else once for each place. */
function remembered(
  { said }: Subjects,
  row: FindingRow,
  of: (instance: Instance) => Chances,
): (instance: Instance) => Chances {
  const known = said.get(row) ?? new Map<FaultRow | Instance, { readonly chances: Chances }>();
  said.set(row, known);
  return (instance) => {
    const subject = row.afterMisfire ? instance : instance.fault;
    const { chances } = known.get(subject) ?? { chances: of(instance) };
    known.set(subject, { chances });
    return chances;
  };
}

/** Chance of an option when no fault speaks: at a cylinder that misses, where the row tells that. */
function usualChance(row: FindingRow, option: string): number {
  const byMisfire = row.byMisfire as Readonly<Record<string, Readonly<Record<string, number>>>>;
  return byMisfire?.["hit"]?.[option] ?? row.options[option]?.chance ?? 0;
}

/** Chance of each option given a fault; undefined when it states nothing about the finding. */
function choiceChances({ names }: Engine, { fault, pattern }: Instance, row: FindingRow): Chances {
  const stated = signOf(fault, row)?.gives;
  const derived = stated
    ? undefined
    : (fromRegimes(fault, row) ?? afterMisfire(pattern, names.length, row));
  if (!stated && !derived) return undefined;
  return Object.fromEntries(
    Object.keys(row.options).map((option) => {
      const full = derived?.[option] ?? completed(stated ?? {}, row, option);
      const usual = usualChance(row, option);
      const shown = showsIn(fault, row);
      return [option, shown * full + (1 - shown) * usual];
    }),
  );
}

/** Chance that a look meets the fault: what leaves a trace always, else when it shows or is waited for. */
function showsIn({ shows }: FaultRow, { momentary, awaits = 0 }: FindingRow): number {
  return momentary ? shows + (1 - shows) * awaits : 1;
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
function ofSigns(
  subjects: Subjects,
  { row, options, answer }: Answered,
  known: readonly Answered[],
): readonly Observation[] {
  const chances = subjects.instances.map(
    remembered(subjects, row, (instance) => signChances(subjects.engine, instance, row)),
  );
  // A sign cannot be surer than its row, which is a chance of one cause of several.
  const met = subjects.instances.map((each) => Math.min(1, metBy(subjects, each, row, known)));
  return Object.entries(row.options).map(([option, { chance }]) => ({
    form: options.includes(option) ? ("seen" as const) : ("not-seen" as const),
    background: floored(chance),
    value: Float64Array.from(chances, (of, i) => (of?.[option] ?? 0) * (met[i] as number)),
    answer,
  }));
}

/**
 * Chance that a fault causes each sign. What it does not state follows from when it shows, or from the
 * cylinders that it makes miss; else it is 0 (the leak keeps it off zero).
 */
function signChances({ names }: Engine, { fault, pattern }: Instance, row: FindingRow): Chances {
  const stated = signOf(fault, row)?.gives;
  const regimes = stated ? undefined : fromRegimes(fault, row);
  const misfire = afterMisfire(pattern, names.length, row);
  return Object.fromEntries(
    Object.keys(row.options).map((option) => {
      const chance = stated?.[option] ?? regimes?.[option] ?? misfire?.[option] ?? 0;
      return [option, Math.min(0.999, chance * showsIn(fault, row))];
    }),
  );
}

/** Codes: the cylinders named look at the misfiring set, each family is a sign. */
function ofCodes(subjects: Subjects, { row, codes, answer }: Answered): Observed {
  const { engine } = subjects;
  const cylinders = engine.names.length;
  const named = (codes?.misfire ?? []).reduce((mask, number) => {
    const cylinder = engine.names.indexOf(number);
    return cylinder < 0 ? mask : mask | (1 << cylinder);
  }, 0);
  const chances = subjects.instances.map(
    remembered(subjects, row, (instance) => signChances(subjects.engine, instance, row)),
  );
  const observations = Object.entries(row.options).map(([option, { chance }]): Observation => {
    const pointed = codes?.families.get(option);
    // A code that names a cylinder is one of as many as there are cylinders.
    const isNaming = pointed !== undefined && pointed.length > 0;
    const share = (place: readonly number[]): number => {
      if (!isNaming) return 1;
      const isAt = pointed.some((n) => place.includes(engine.names.indexOf(n)));
      return isAt ? 1 / place.length : 0;
    };
    return {
      form: pointed ? "seen" : "not-seen",
      background: floored(isNaming ? chance / cylinders : chance),
      value: Float64Array.from(
        subjects.instances,
        ({ place }, i) => (chances[i]?.[option] ?? 0) * share(place.cylinders),
      ),
      answer,
    };
  });
  const likelihood = codesLikelihood(cylinders, named, codes?.several ?? false);
  return { observations, misfireObservations: [{ likelihood, answer }] };
}

/** Findings that see only how many cylinders miss, or whether one does. */
function ofMisfire({ engine }: Subjects, answered: Answered): MisfireObservation {
  const { row, options, cylinder, answer } = answered;
  const [option = ""] = options;
  const likelihood = (set: number): number =>
    floored(byMisfireRow(engine, row, cylinder, set)[option] ?? 0);
  return { likelihood, answer };
}

function byMisfireRow(
  engine: Engine,
  row: FindingRow,
  cylinder: number | undefined,
  set: number,
): Readonly<Record<string, number>> {
  const cylinders = engine.names.length;
  const byClass = row.byMisfire as Readonly<Record<string, Readonly<Record<string, number>>>>;
  const name =
    cylinder === undefined ? misfireClass(set, cylinders) : cylinderClass(set, cylinder, cylinders);
  return byClass[name] ?? {};
}

function signOf(fault: FaultRow, row: FindingRow): SignRow | undefined {
  return fault.signs.find((sign) => sign.finding === row.id);
}
