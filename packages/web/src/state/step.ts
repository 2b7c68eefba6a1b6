// The next step as the page shows it: what is offered when something was put off, what is looked at, what it
// has cost so far.
import {
  type CheckOutcome,
  type CheckRow,
  type CylinderName,
  type Engine,
  type Finding,
  type FindingRow,
  type Next,
  type NextCheck,
  type NextRepair,
  type NextStep,
  type RepairDone,
  runsEngine,
  servedBy,
} from "@half-order/core";
import type { SpentTime } from "@half-order/core/wire";

/** One question of a check: of the whole engine, or of one cylinder. */
export interface Look {
  readonly row: FindingRow;
  readonly cylinder?: CylinderName;
}

/** A step by what is done and where; the same in every plan. */
export function keyOfStep(step: NextStep): string {
  if (step.kind === "call") return step.kind;
  return keyAt(step.kind === "check" ? step.check : step.repair, step.cylinders);
}

export function keyAt(id: string, cylinders: readonly CylinderName[]): string {
  return [id, ...cylinders].join(" ");
}

/** The address of a check at its cylinders, in parts. */
export function checkAddress(id: string, cylinders: readonly CylinderName[]): readonly string[] {
  return ["step", id, ...(cylinders.length > 0 ? [cylinders.join("+")] : [])];
}

/** By what a step is put off: a check wherever it would be made, a repair at its place. */
export function putOffKey(step: NextStep): string {
  return step.kind === "check" ? step.check : keyOfStep(step);
}

/**
 * The step to offer when some were put off: the planner's, else the next best check, else the first repair,
 * else somebody who has what it takes.
 */
export function offered(plan: Next, putOff: ReadonlySet<string>): NextStep {
  const steps: readonly NextStep[] = [plan.step, ...worthwhile(plan.checks), ...plan.repairs];
  return steps.find((step) => !putOff.has(putOffKey(step))) ?? { kind: "call" };
}

/** Checks that save more than they cost. */
function worthwhile(checks: readonly NextCheck[]): readonly NextCheck[] {
  return checks.filter(({ worthMinutes }) => worthMinutes > 0);
}

/** Everything else that the plan holds, best first; of one check only its best place. */
export function otherChecks(plan: Next, step: NextStep): readonly NextCheck[] {
  const taken = new Set(step.kind === "check" ? [step.check] : []);
  return plan.checks.filter(({ check }) => !taken.has(check) && taken.add(check));
}

/** Each check once, at all the places at which the list has it. */
export function atAllPlaces(checks: readonly NextCheck[]): readonly NextCheck[] {
  const ids = [...new Set(checks.map(({ check }) => check))];
  return ids.flatMap((id) => {
    const like = checks.filter(({ check }) => check === id);
    const cylinders = [...new Set(like.flatMap((each) => each.cylinders))];
    return like.slice(0, 1).map((each) => ({ ...each, cylinders }));
  });
}

/** The questions of a check at some cylinders; one coil or connector is asked about once. */
export function looksOf(
  rows: readonly FindingRow[],
  cylinders: readonly CylinderName[],
  engine: Engine,
): readonly Look[] {
  const looks = rows.flatMap((row): readonly Look[] =>
    row.scope === "engine" ? [{ row }] : cylinders.map((cylinder) => ({ row, cylinder })),
  );
  const keys = looks.map((look) => keyOfLook(look, engine));
  return looks.filter((_, i) => keys.indexOf(keys[i] ?? "") === i);
}

/** Looks with one key are about the same thing. */
export function keyOfLook(look: Look, engine: Engine): string {
  return [look.row.id, ...servedBy(engine, look.row.scope, look.cylinder)].join(" ");
}

/** What was answered already, at whichever cylinder of the same coil or connector. */
export function givenTo(
  look: Look,
  findings: readonly Finding[],
  engine: Engine,
): Finding | undefined {
  const key = keyOfLook(look, engine);
  return findings.findLast(({ finding, cylinder }) => {
    if (finding !== look.row.id) return false;
    const at = cylinder === undefined ? {} : { cylinder };
    return keyOfLook({ row: look.row, ...at }, engine) === key;
  });
}

/**
 * True of an answer of a check for which the engine ran: by then all that was off for it was back on. A check that
 * runs the engine may begin with a look at what is off.
 */
export function wasRun(
  check: Pick<CheckRow, "cautions">,
  { topic, travels }: Pick<FindingRow, "topic" | "travels">,
): boolean {
  return travels !== undefined || (runsEngine(check) && topic !== "plugs and wells");
}

/** Like things that come off at several places, as one. */
export interface Off {
  readonly say: string;
  readonly ids: readonly string[];
  /** Of all of them together. */
  readonly minutes: number;
}

/** What must come off, each kind once. */
export function offInShort(opens: NextCheck["opens"]): readonly Off[] {
  return [...new Set(opens.map(({ say }) => say))].map((say) => {
    const like = opens.filter((each) => each.say === say);
    return {
      say,
      ids: like.map(({ id }) => id),
      minutes: like.reduce((sum, { minutes }) => sum + minutes, 0),
    };
  });
}

/** Where a repair of a plan is named in the address: none for the whole engine. */
export function wantedOf({ repair, cylinders }: NextRepair): readonly string[] {
  const [first] = cylinders;
  return first === undefined ? [repair] : [repair, String(first)];
}

/** The likeliest outcomes first, those that hardly happen left out. */
export function toldOutcomes(outcomes: readonly CheckOutcome[]): readonly CheckOutcome[] {
  return outcomes
    .filter(({ probability }) => probability >= WORTH_TELLING)
    .sort((a, b) => b.probability - a.probability);
}

const WORTH_TELLING = 0.005;

/** Answers in the order in which a check asks for them: its questions one after the other, each at one place after the other. */
export function asAsked(
  answers: readonly Finding[],
  yields: readonly string[],
  cylinders: readonly CylinderName[],
): readonly Finding[] {
  const place = ({ finding, cylinder }: Finding): number =>
    yields.indexOf(finding) * (cylinders.length + 1) +
    (cylinder === undefined ? 0 : cylinders.indexOf(cylinder));
  return [...answers].sort((a, b) => place(a) - place(b));
}

/** Minutes of the steps that still stand in the case: what was taken back has cost nothing. */
export function spentMinutes(
  spent: readonly SpentTime[],
  findings: readonly Finding[],
  repairs: readonly RepairDone[],
): number {
  return spent
    .filter(({ shownBy }) =>
      "when" in shownBy
        ? repairs.some(({ when }) => when === shownBy.when)
        : findings.some(
            ({ finding, cylinder }) => finding === shownBy.finding && cylinder === shownBy.cylinder,
          ),
    )
    .reduce((sum, { minutes }) => sum + minutes, 0);
}
