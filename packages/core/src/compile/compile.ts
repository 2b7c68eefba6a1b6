// Engine + answers + knowledge → diagnosis model. The one entry into inference; nothing of engines is
// left behind it.
import type { Engine } from "../engine/engine.ts";
import type { Finding, RepairDone } from "../knowledge/answer.ts";
import type { Knowledge } from "../knowledge/knowledge.ts";
import type { FaultRow } from "../knowledge/schema.ts";
import type { DiagnosisModel, Link } from "../model/diagnosis-model.ts";
import { type Answered, answeredOf } from "./answered.ts";
import { fits } from "./fits.ts";
import { observe, type Subjects, subjectsOf } from "./likelihood.ts";
import { patternOf } from "./pattern.ts";
import { companyFactor, type Instance, instancesOf, riskFactor, shareOf } from "./prior.ts";
import { observeRepairs } from "./repair.ts";

/** A model and what its numbers stand for. */
export interface Compiled {
  readonly model: DiagnosisModel;
  /** By fault number; the last is "something else". */
  readonly instances: readonly Instance[];
  /** By component number. */
  readonly componentKeys: readonly string[];
  readonly answered: readonly Answered[];
}

/** Compiles checked findings and repairs (see `checkFindings`, `checkRepairs`) on an engine. */
export function compile(
  engine: Engine,
  findings: readonly Finding[],
  knowledge: Knowledge,
  repairs: readonly RepairDone[] = [],
): Compiled {
  const answered = answeredOf(engine, findings, knowledge).filter(({ row }) => fits(engine, row));
  const { subjects, componentKeys, company, prior } = groundOf(engine, knowledge);
  const { instances } = subjects;
  const risks = new Map(
    [...knowledge.faults, knowledge.somethingElse].map((row) => [row, riskFactor(row, answered)]),
  );
  const odds = Float64Array.from(
    instances,
    ({ fault, share }) => company * share * (risks.get(fault) as number),
  );
  const observed = answered.map((answer) =>
    observe(subjects, answer, knownBefore(engine, answer, answered)),
  );
  return {
    model: {
      ...prior,
      odds,
      observations: [
        ...observed.flatMap((o) => o.observations),
        ...observeRepairs(engine, instances, repairs, knowledge),
      ],
      misfireObservations: observed.flatMap((o) => o.misfireObservations),
    },
    instances,
    componentKeys,
    answered,
  };
}

/** Everything else that is known; of answers to the same question those at cylinders that fire earlier. */
function knownBefore(
  { order }: Engine,
  { row, cylinder }: Answered,
  answered: readonly Answered[],
): readonly Answered[] {
  const turn = order.indexOf(cylinder ?? 0);
  return answered.filter(
    (other) => other.row.id !== row.id || order.indexOf(other.cylinder ?? 0) < turn,
  );
}

/** What does not hang on what was found. */
interface Ground {
  readonly subjects: Subjects;
  readonly componentKeys: readonly string[];
  /** See `companyFactor`. */
  readonly company: number;
  readonly prior: Omit<DiagnosisModel, "odds" | "observations" | "misfireObservations">;
}

/** Engines whose ground is kept; a profile without a firing order may be more than a dozen. */
const KEPT = 32;
const grounds = new WeakMap<Knowledge, Map<string, Ground>>();

/**
 * Worked out once for an engine and tables. Tables may be filled in later, as long as what they say of a
 * question that was asked before stays as it was.
 */
function groundOf(engine: Engine, knowledge: Knowledge): Ground {
  const known = grounds.get(knowledge) ?? new Map<string, Ground>();
  grounds.set(knowledge, known);
  const key = JSON.stringify(engine);
  const ground = known.get(key) ?? newGround(engine, knowledge);
  // the one used last is dropped last
  known.delete(key);
  known.set(key, ground);
  const [oldest] = known.keys();
  if (known.size > KEPT && oldest !== undefined) known.delete(oldest);
  return ground;
}

function newGround(engine: Engine, knowledge: Knowledge): Ground {
  const named = instancesOf(engine, knowledge);
  const instances = [...named, somethingElse(engine, knowledge)];
  const components = componentsOf(engine, instances);
  const alone = new Uint8Array(instances.length);
  alone[instances.length - 1] = 1;
  return {
    subjects: subjectsOf(engine, instances),
    componentKeys: components.keys,
    company: companyFactor(
      named.map(({ share }) => share),
      knowledge.twoFaultsShare,
    ),
    prior: {
      cylinders: engine.names.length,
      faults: instances.length,
      alone,
      component: components.of,
      components: components.keys.length,
      ...atomsOf(instances),
      links: linksOf(instances),
    },
  };
}

function somethingElse(engine: Engine, knowledge: Knowledge): Instance {
  const all = engine.names.map((_, cylinder) => cylinder);
  const place = { kind: "engine", cylinders: all, id: "engine" } as const;
  return {
    fault: knowledge.somethingElse,
    place,
    pattern: patternOf(engine, place, knowledge.somethingElse.reach),
    share: shareOf(knowledge.somethingElse, engine.ignition) / 1000,
  };
}

interface Atoms {
  readonly atomStart: Uint32Array;
  readonly atomChance: Float64Array;
  readonly atomSet: Uint32Array;
}

function atomsOf(instances: readonly Instance[]): Atoms {
  const patterns = instances.map(({ pattern }) => [...pattern]);
  const flat = patterns.flat();
  let atom = 0;
  const starts = patterns.map((pattern) => {
    const start = atom;
    atom += pattern.length;
    return start;
  });
  return {
    atomStart: Uint32Array.from([...starts, atom]),
    atomChance: Float64Array.from(flat, ([, chance]) => chance),
    atomSet: Uint32Array.from(flat, ([set]) => set),
  };
}

/** A part sits at the place of its own kind that holds the fault's first cylinder. */
function componentsOf(
  engine: Engine,
  instances: readonly Instance[],
): { of: Uint32Array; keys: readonly string[] } {
  const numbers = new Map<string, number>();
  const of = Uint32Array.from(instances, (instance) => {
    const key = componentKey(engine, instance);
    const number = numbers.get(key) ?? numbers.size;
    numbers.set(key, number);
    return number;
  });
  return { of, keys: [...numbers.keys()] };
}

/** How the part in which a fault sits is named in a ranking: `coil 2+5`, `fuel pump engine`. */
export function componentKey(engine: Engine, { fault, place }: Instance): string {
  const isWhole = fault.part.at === "engine" || fault.part.at === "set";
  const cylinders = partCylinders(engine, fault, place.cylinders);
  const where = isWhole ? "engine" : cylinders.map((c) => engine.names[c]).join("+");
  return `${fault.part.name} ${where}`;
}

/**
 * Cylinders of the part in which a fault sits: a leg of a double coil belongs to the whole coil, a
 * cylinder's stretch of a gasket to the gasket of its bank.
 */
export function partCylinders(
  engine: Engine,
  fault: FaultRow,
  cylinders: readonly number[],
): readonly number[] {
  const [first = 0] = cylinders;
  const ascending = (list: readonly number[] = []) => [...list].sort((a, b) => a - b);
  switch (fault.part.at) {
    case "engine":
    case "set":
      return engine.names.map((_, cylinder) => cylinder);
    case "bank":
      return ascending(engine.banks[engine.bankOf[first] ?? 0]);
    case "coil":
      return ascending(engine.groups[engine.groupOf[first] ?? 0]);
    default:
      return cylinders;
  }
}

/** "a wears b" where the two sit at the same cylinders. */
function linksOf(instances: readonly Instance[]): readonly Link[] {
  const byType = new Map<string, number[]>();
  instances.forEach(({ fault }, number) => {
    byType.set(fault.id, [...(byType.get(fault.id) ?? []), number]);
  });
  return instances.flatMap(({ fault, place }, a) =>
    (fault.wears ?? []).flatMap(({ fault: worn, times }) =>
      (byType.get(worn) ?? [])
        .filter((b) => b !== a && sharesCylinder(place.cylinders, instances[b]))
        .map((b) => ({ a, b, times })),
    ),
  );
}

function sharesCylinder(cylinders: readonly number[], other: Instance | undefined): boolean {
  return other?.place.cylinders.some((cylinder) => cylinders.includes(cylinder)) ?? false;
}
