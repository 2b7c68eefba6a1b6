// How did somebody look for a hidden fault, how would the library have, and where do the two ways part?
import type { Next, NextCheck, NextRepair } from "../advice/advice.ts";
import { fits } from "../compile/fits.ts";
import type { Engine } from "../engine/engine.ts";
import { places } from "../engine/place.ts";
import { sayProbability } from "../explain/phrase.ts";
import { rank } from "../explain/rank.ts";
import type { Finding, RepairDone } from "../knowledge/answer.ts";
import { LEAST_MENDABLE } from "../knowledge/at-hand.ts";
import { KNOWLEDGE } from "../knowledge/knowledge.ts";
import type { CheckRow } from "../knowledge/schema.ts";
import type { HiddenFault, HiddenTruth } from "./hidden-fault.ts";
import {
  type CheckHere,
  checkedAct,
  checkedRepair,
  type PracticeAct,
  type PracticeStep,
  shownBy,
  stepOffered,
} from "./practice.ts";
import { questionsOf } from "./simulated-look.ts";
import { adviceFor } from "./simulated-rule.ts";
import { checked, cureChance, doneOf, repairedInVain, type Visit } from "./simulated-visit.ts";
import { checkStep, repairStep } from "./visit-step.ts";

/** A step, and how probable the true fault was held after it; a repair after which it runs right leaves nothing to ask. */
export type PathStep =
  | (PracticeStep & {
      readonly kind: "check";
      /** With what the owner or a check before had told of the same. */
      readonly shows: readonly Finding[];
      readonly belief: number;
    })
  | (PathRepair & { readonly kind: "repair"; readonly belief?: number })
  | { readonly kind: "peek"; readonly belief: number };

/** A repair, and the chance that it cures what was hidden, 0 where it does not reach it. */
export interface PathRepair extends PracticeStep {
  readonly cures: number;
}

/** Why it was handed over: hardly anything that can be done would mend it, or to go on costs more than that. */
export type HandedOver = "little-mends" | "costs-more";

/**
 * One way from the story on: until it runs right, or is handed to somebody else, or, of a learner, to the repair
 * that was chosen, after which it may miss as before.
 */
export interface Path {
  readonly steps: readonly PathStep[];
  readonly checkMinutes: number;
  /** Of all checks and repairs. */
  readonly minutes: number;
  readonly end: "runs" | "misses" | HandedOver;
}

/** What one did where the ways part, and what the planner thought of it there. */
export type PartingStep =
  /**
   * `worthMinutes`: what it was expected to save against mending without any check, its own taken off; left out
   * where it was not weighed.
   */
  | (PracticeStep & { readonly kind: "check"; readonly worthMinutes?: number })
  /** `hoped`: the chance that it cures, as far as was known; left out where that was next to none. */
  | (PracticeStep & { readonly kind: "repair"; readonly hoped?: number })
  | { readonly kind: "call"; readonly why: HandedOver }
  /** The search ended before. */
  | { readonly kind: "end" };

export interface Parting {
  /** So many checks and repairs were the same, in the same order. */
  readonly together: number;
  readonly learner: PartingStep;
  readonly library: PartingStep;
}

/** Both ways beside what was hidden. */
export interface Comparison {
  readonly truth: HiddenTruth;
  /** What mends it, from the engine as it came: the surest first, or the shortest of equally sure; two at most. */
  readonly mends: readonly PathRepair[];
  /** How probable the ranking held the true fault after the story. */
  readonly belief: number;
  readonly learner: Path;
  readonly library: Path;
  /** Left out where they are the same to the end. */
  readonly parting?: Parting;
}

/**
 * Lays the way of somebody who looked and then chose a repair beside that of the planner, which starts from the
 * same story and has the same at hand, until the engine runs right or it is handed over. Throws an `InputError`
 * when an act or the repair cannot be on this engine.
 */
export function comparePaths(
  hidden: HiddenFault,
  acts: readonly PracticeAct[],
  wanted: RepairDone,
): Comparison {
  const { engine, truth, start } = hidden;
  const learner = learnersWay(hidden, acts, wanted);
  const library = librarysWay(hidden);
  const parting = partingOf(engine, learner.taken, library.taken, library.said);
  return {
    truth,
    mends: mendsOf(hidden).slice(0, MENDS_TOLD),
    belief: beliefIn(hidden, start),
    learner: learner.path,
    library: library.path,
    ...(parting ? { parting } : {}),
  };
}

const MENDS_TOLD = 2;

/** Every repair that reaches what was hidden, the surest first; of those with a chance said alike the shortest. */
function mendsOf(hidden: HiddenFault): readonly PathRepair[] {
  const { engine, start } = hidden;
  return KNOWLEDGE.repairs
    .filter((row) => fits(engine, row))
    .flatMap((row) => places(engine, row.at).map((at) => repairStep(start, row, at)))
    .map((repair) => pathRepair(hidden, repair))
    .filter(({ cures }) => cures > 0)
    .sort((a, b) => (isAlike(a, b) ? a.minutes - b.minutes : b.cures - a.cures));
}

function isAlike(a: PathRepair, b: PathRepair): boolean {
  return sayProbability(a.cures) === sayProbability(b.cures);
}

function pathRepair({ engine, broken }: HiddenFault, repair: NextRepair): PathRepair {
  const cures = cureChance(engine, broken, doneOf(repair));
  return { ...stepOffered(engine, repair), cures };
}

/** What was done, step by step, without looks at the ranking. */
type Taken = readonly (NextCheck | NextRepair)[];

interface Way {
  readonly path: Path;
  readonly taken: Taken;
}

function learnersWay(hidden: HiddenFault, acts: readonly PracticeAct[], wanted: RepairDone): Way {
  const { engine, broken, start } = hidden;
  const repaired = checkedRepair(engine, wanted);
  const taken: NextCheck[] = [];
  const steps: PathStep[] = [];
  let now = start;
  for (const act of acts) {
    if (act.kind === "peek") {
      steps.push({ kind: "peek", belief: beliefIn(hidden, now) });
      continue;
    }
    const { row, cylinders } = checkedAct(engine, act);
    const check = checkStep(now, row, cylinders);
    now = checked(now, broken, check);
    taken.push(check);
    steps.push(pathStep(hidden, check, now));
  }
  const repair = repairStep(now, repaired.row, repaired.at);
  const { step, isCured } = repairedStep(hidden, now, repair);
  const path = pathOf([...steps, step], isCured ? "runs" : "misses");
  return { path, taken: [...taken, repair] };
}

interface LibrarysWay extends Way {
  /** What the planner said at each of its steps, and at the end. */
  readonly said: readonly Next[];
}

function librarysWay(hidden: HiddenFault): LibrarysWay {
  const taken: (NextCheck | NextRepair)[] = [];
  const steps: PathStep[] = [];
  const said: Next[] = [];
  let now = hidden.start;
  for (;;) {
    const advice = adviceFor(now);
    const { step } = advice;
    if (step.kind === "call") {
      return { path: pathOf(steps, whyHanded(advice)), taken, said: [...said, advice] };
    }
    if (step.kind === "repair") {
      const repaired = repairedStep(hidden, now, step);
      now = repaired.after;
      said.push(advice);
      taken.push(step);
      steps.push(repaired.step);
      if (repaired.isCured) return { path: pathOf(steps, "runs"), taken, said };
      continue;
    }
    const after = checked(now, hidden.broken, step);
    if (after.findings.length === now.findings.length) {
      now = { ...now, putOff: [...now.putOff, step.check] };
      continue;
    }
    now = after;
    said.push(advice);
    taken.push(step);
    steps.push(pathStep(hidden, step, now));
  }
}

/** No luck in it: a repair that cures more likely than not does, so that the same repair does the same on both ways. */
const CURES_FROM = 0.5;

/** A repair that was made, whether it is taken to have cured the engine, and what is known then. */
function repairedStep(
  hidden: HiddenFault,
  now: Visit,
  repair: NextRepair,
): { readonly step: PathStep; readonly isCured: boolean; readonly after: Visit } {
  const made = { kind: "repair", ...pathRepair(hidden, repair) } as const;
  const after = repairedInVain(now, repair);
  if (made.cures > CURES_FROM) return { step: made, isCured: true, after };
  return { step: { ...made, belief: beliefIn(hidden, after) }, isCured: false, after };
}

function pathStep(hidden: HiddenFault, check: NextCheck, after: Visit): PathStep {
  const { engine } = hidden;
  return {
    kind: "check",
    ...stepOffered(engine, check),
    shows: shownBy(engine, after.findings, hereOf(engine, check)),
    belief: beliefIn(hidden, after),
  };
}

function whyHanded({ mendable }: Next): HandedOver {
  return mendable < LEAST_MENDABLE ? "little-mends" : "costs-more";
}

function pathOf(steps: readonly PathStep[], end: Path["end"]): Path {
  const minutesOf = (kinds: readonly PathStep["kind"][]): number =>
    steps.reduce(
      (sum, step) => sum + (step.kind !== "peek" && kinds.includes(step.kind) ? step.minutes : 0),
      0,
    );
  return {
    steps,
    checkMinutes: minutesOf(["check"]),
    minutes: minutesOf(["check", "repair"]),
    end,
  };
}

/** How probable the ranking holds the true fault, whatever else may be present. */
function beliefIn({ engine, truth }: HiddenFault, { findings, repairs }: Visit): number {
  const { ranking } = rank(engine.profile, findings, { hypotheses: 0, repairs });
  const own = ranking.find(({ fault, place }) => fault === truth.fault && place === truth.place);
  return own?.probability ?? 0;
}

/** Until there the findings are the same, so that what the planner said there is about both. */
function partingOf(
  engine: Engine,
  learner: Taken,
  library: Taken,
  said: readonly Next[],
): Parting | undefined {
  const isSame = (i: number): boolean => keyOf(engine, learner[i]) === keyOf(engine, library[i]);
  const longest = Math.max(learner.length, library.length);
  const together = Array.from({ length: longest }, (_, i) => i).find((i) => !isSame(i));
  if (together === undefined) return undefined;
  const advice = said[together] as Next;
  const [own, other] = [learner[together], library[together]];
  return {
    together,
    learner: own ? weighed(engine, own, advice) : { kind: "end" },
    library: other ? weighed(engine, other, advice) : { kind: "call", why: whyHanded(advice) },
  };
}

function weighed(engine: Engine, of: NextCheck | NextRepair, advice: Next): PartingStep {
  const { step, checks, repairs } = advice;
  const isIt = (each: NextCheck | NextRepair): boolean => keyOf(engine, each) === keyOf(engine, of);
  const own = step.kind !== "call" && isIt(step) ? step : [...checks, ...repairs].find(isIt);
  if (of.kind === "check") {
    const worth = own?.kind === "check" ? { worthMinutes: own.worthMinutes } : {};
    return { kind: "check", ...stepOffered(engine, of), ...worth };
  }
  const hoped = own?.kind === "repair" ? { hoped: own.cures } : {};
  return { kind: "repair", ...stepOffered(engine, of), ...hoped };
}

/** Steps with one key are the same: what is looked at, or what is mended where. */
function keyOf(engine: Engine, step: NextCheck | NextRepair | undefined): string | undefined {
  if (!step) return undefined;
  if (step.kind === "repair") return [step.repair, ...step.cylinders].join(" ");
  const { row, cylinders } = hereOf(engine, step);
  const keys = questionsOf(engine, row, cylinders).map(({ key }) => key);
  return [step.check, ...keys.sort()].join(" ");
}

function hereOf(engine: Engine, { check, cylinders }: NextCheck): CheckHere {
  const row = KNOWLEDGE.checks.find(({ id }) => id === check) as CheckRow;
  return { row, cylinders: cylinders.map((name) => engine.names.indexOf(name)) };
}
