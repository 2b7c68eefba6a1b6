// What can somebody do who looks for a hidden fault, what comes of it, and how many minutes does it take?
import type { NextCheck, NextRepair } from "../advice/advice.ts";
import { cautionsOf, mustRest } from "../advice/offer.ts";
import { fits } from "../compile/fits.ts";
import { checkRepairs, placeOfRepair } from "../compile/repair.ts";
import { nameAt } from "../engine/cylinder-name.ts";
import type { Engine } from "../engine/engine.ts";
import { type Place, places } from "../engine/place.ts";
import type { CylinderName } from "../engine/profile.ts";
import { servedBy } from "../engine/served-by.ts";
import { rank } from "../explain/rank.ts";
import type { RankedFault } from "../explain/ranking.ts";
import type { Finding, RepairDone } from "../knowledge/answer.ts";
import { KNOWLEDGE } from "../knowledge/knowledge.ts";
import type { CheckRow, RepairRow, Tool } from "../knowledge/schema.ts";
import { driveAdvice } from "../service/drive.ts";
import { nearest } from "../units/nearest.ts";
import { InputError, pointer } from "../units/problem.ts";
import type { HiddenFault } from "./hidden-fault.ts";
import { answersByKey, questionsOf } from "./simulated-look.ts";
import { checked, type Visit } from "./simulated-visit.ts";
import { checkStep, namesOf, repairStep } from "./visit-step.ts";

/** What was chosen: a check, at a cylinder where it has one, or a look at the ranking. */
export type PracticeAct =
  | { readonly kind: "check"; readonly check: string; readonly cylinder?: CylinderName }
  | { readonly kind: "peek" };

/** A check or a repair at a place, as it can be chosen. */
export interface PracticeStep {
  readonly id: string;
  readonly name: string;
  /** None for the whole engine. What shares a coil is looked at with it: one is judged by the other. */
  readonly cylinders: readonly CylinderName[];
  /** What must come off first, in words, and is not off yet. */
  readonly opens: readonly string[];
  /** With what must come off. */
  readonly minutes: number;
}

/** A check that was made. */
export interface PracticeCheck extends PracticeStep {
  readonly kind: "check";
  /** What it showed, with what the owner or a check before had told of the same. */
  readonly shows: readonly Finding[];
  /** True where nothing of it was news. */
  readonly isKnown: boolean;
}

/** A look at the ranking: the likeliest faults as they stood. */
export interface PracticePeek {
  readonly kind: "peek";
  readonly leaders: readonly RankedFault[];
}

/** One check or repair of the catalogue, at all places that it has on the engine. */
export interface PracticeOffer {
  readonly id: string;
  /** Without a place. */
  readonly name: string;
  readonly tool: Tool;
  readonly places: readonly PracticeStep[];
  /** Ids, to be read first. */
  readonly cautions: readonly string[];
  /** True of a check that turns the engine, where what is known says that it must stay off. */
  readonly mustRest: boolean;
}

/** How it stands. */
export interface Practice {
  readonly story: readonly Finding[];
  /** In the order in which they were made. */
  readonly steps: readonly (PracticeCheck | PracticePeek)[];
  /** Of all checks so far. */
  readonly minutes: number;
  readonly checks: readonly PracticeOffer[];
  readonly repairs: readonly PracticeOffer[];
}

const LEADERS_TOLD = 3;

/** Everything that was done and can be done. Throws an `InputError` when an act cannot be on this engine. */
export function practise(hidden: HiddenFault, acts: readonly PracticeAct[]): Practice {
  const { engine, start } = hidden;
  const steps: (PracticeCheck | PracticePeek)[] = [];
  let now = start;
  for (const act of acts) {
    if (act.kind === "peek") {
      const { ranking } = rank(engine.profile, now.findings, { hypotheses: 0 });
      steps.push({ kind: "peek", leaders: ranking.slice(0, LEADERS_TOLD) });
      continue;
    }
    const { row, cylinders } = checkedAct(engine, act);
    const check = checkStep(now, row, cylinders);
    const after = checked(now, hidden.broken, check);
    steps.push({
      kind: "check",
      ...stepOffered(engine, check),
      shows: shownBy(engine, after.findings, { row, cylinders }),
      isKnown: after.findings.length === now.findings.length,
    });
    now = after;
  }
  return {
    story: start.findings,
    steps,
    minutes: steps.reduce((sum, step) => sum + (step.kind === "check" ? step.minutes : 0), 0),
    checks: checksOffered(now),
    repairs: repairsOffered(now),
  };
}

/** What is known, once a check was made, of everything that it looks at. */
export function shownBy(
  engine: Engine,
  findings: readonly Finding[],
  { row, cylinders }: CheckHere,
): readonly Finding[] {
  const known = answersByKey(engine, findings);
  return questionsOf(engine, row, cylinders).flatMap(({ key }) => known.get(key) ?? []);
}

function checksOffered(now: Visit): readonly PracticeOffer[] {
  const { engine, findings } = now;
  const driving = driveAdvice(engine.profile, findings);
  return KNOWLEDGE.checks
    .filter((row) => fits(engine, row))
    .map((row) => ({
      id: row.id,
      name: row.name,
      tool: row.tool,
      places: placesOfCheck(engine, row).map((at) => stepOffered(engine, checkStep(now, row, at))),
      cautions: cautionsOf(row, driving),
      mustRest: mustRest(row, driving),
    }));
}

function repairsOffered(now: Visit): readonly PracticeOffer[] {
  const { engine } = now;
  return KNOWLEDGE.repairs
    .filter((row) => fits(engine, row))
    .map((row) => ({
      id: row.id,
      name: nameAt(row.name, engine.names, engine.names.length),
      tool: row.tool,
      places: places(engine, row.at).map((at) => stepOffered(engine, repairStep(now, row, at))),
      cautions: row.cautions,
      mustRest: false,
    }))
    .filter((offer) => offer.places.length > 0);
}

/** A step as it is told. */
export function stepOffered(engine: Engine, step: NextCheck | NextRepair): PracticeStep {
  const { name, opens, minutes } = step;
  const says = opens.filter(({ minutes: off }) => off > 0).map(({ say }) => say);
  const id = step.kind === "check" ? step.check : step.repair;
  return { id, name, cylinders: whereOf(engine, step), opens: [...new Set(says)], minutes };
}

/** Of a check that looks at connectors alone, all that the connector feeds. */
function whereOf(engine: Engine, step: NextCheck | NextRepair): readonly CylinderName[] {
  const [first] = step.cylinders;
  if (step.kind === "repair" || first === undefined) return step.cylinders;
  const row = KNOWLEDGE.checks.find(({ id }) => id === step.check);
  const scopes = (row?.yields ?? [])
    .flatMap((id) => KNOWLEDGE.findings.get(id) ?? [])
    .flatMap(({ scope }) => (scope === "engine" ? [] : [scope]));
  const isConnector = scopes.every((scope) => scope === "connector");
  const all = isConnector ? namesOf(engine, servedBy(engine, "connector", first)) : step.cylinders;
  const isHere = (name: CylinderName): boolean => all.includes(name);
  return all.length === engine.names.length ? [] : engine.names.filter(isHere);
}

/** The cylinders of each coil, or each by itself where one coil serves them all; ascending. */
function looksTogether({ names, groups }: Engine): readonly (readonly number[])[] {
  if (groups.length < 2) return names.map((_, c) => [c]);
  return groups.map((group) => [...group].sort((a, b) => a - b)).sort(([a = 0], [b = 0]) => a - b);
}

/** Where a check can be made: nowhere in particular, everywhere, or coil by coil; where two places are one, once. */
function placesOfCheck(engine: Engine, row: CheckRow): readonly (readonly number[])[] {
  if (row.everyCylinder) return [engine.names.map((_, c) => c)];
  const nowhere = questionsOf(engine, row, []);
  const all = looksTogether(engine).map((cylinders) => {
    return { cylinders, questions: questionsOf(engine, row, cylinders) };
  });
  if (all.every(({ questions }) => questions.length === nowhere.length)) return [[]];
  const keys = all.map(({ questions }) => questions.map(({ key }) => key).join());
  return all.filter((_, i) => keys.indexOf(keys[i] ?? "") === i).map(({ cylinders }) => cylinders);
}

/** A check at cylinders by index; none for the whole engine. */
export interface CheckHere {
  readonly row: CheckRow;
  readonly cylinders: readonly number[];
}

/** A check that was chosen, looked up; throws an `InputError` when this engine has no such check there. */
export function checkedAct(
  engine: Engine,
  { check, cylinder }: Extract<PracticeAct, { readonly kind: "check" }>,
): CheckHere {
  const row = KNOWLEDGE.checks.find(({ id }) => id === check);
  if (!row) {
    const [near] = nearest(
      check,
      KNOWLEDGE.checks.map(({ id }) => id),
      Number.POSITIVE_INFINITY,
    );
    throw refused(
      "check",
      "check-unknown",
      `There is no check "${check}".`,
      `Did you mean "${near}"?`,
    );
  }
  if (!fits(engine, row)) {
    throw refused(
      "check",
      "check-not-here",
      `"${check}" is not for this engine.`,
      "Choose another check.",
    );
  }
  const [first = [], ...more] = placesOfCheck(engine, row);
  const isOnce = first.length === 0 || row.everyCylinder === true;
  if (isOnce || (more.length === 0 && cylinder === undefined)) {
    return { row, cylinders: first };
  }
  const names = engine.names.map(String);
  const index = names.indexOf(String(cylinder));
  const cylinders = looksTogether(engine).find((each) => each.includes(index));
  if (cylinders) return { row, cylinders };
  throw refused(
    "cylinder",
    cylinder === undefined ? "cylinder-missing" : "cylinder-unknown",
    `"${check}" needs a cylinder of this engine, not ${cylinder ?? "none"}.`,
    `Write one of ${names.join(", ")}.`,
  );
}

/** A repair that was chosen, looked up; throws an `InputError` when this engine has no such repair there. */
export function checkedRepair(
  engine: Engine,
  wanted: RepairDone,
): { readonly row: RepairRow; readonly at: Place } {
  const problems = checkRepairs(engine, [wanted], KNOWLEDGE);
  // Of a list of one: the path is within the repair.
  const own = problems.map((problem) => ({ ...problem, path: problem.path.replace(/^\/0/, "") }));
  if (own.length > 0) throw new InputError(own);
  const row = KNOWLEDGE.repairs.find(({ id }) => id === wanted.repair) as RepairRow;
  return { row, at: placeOfRepair(engine, row, wanted) as Place };
}

/** `field`: of the act. */
function refused(field: string, code: string, message: string, hint: string): InputError {
  return new InputError([{ code, path: pointer(field), message, hint }]);
}
