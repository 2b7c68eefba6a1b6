// The next step in words, for a terminal: what to do, what each outcome would mean, what else there is.
import {
  type AtHand,
  type CylinderName,
  type DriveAdvice,
  driveAdvice,
  type Knowledge,
  type Next,
  type NextCheck,
  type NextRepair,
  REPAIR_RESULTS,
  sayProbability,
} from "@half-order/core";
import type { Case } from "@half-order/core/wire";
import { sayOutcomes } from "./outcome-text.ts";
import { jsonLine, percent, table, wrapped } from "./text.ts";

/** Further checks and repairs that get a line. */
const MORE_TOLD = 5;

export function sayNext(
  { title, engine, findings, atHand = {} }: Case,
  advice: Next,
  knowledge: Knowledge,
): string {
  const { step } = advice;
  const { where } = atHand;
  const driving = driveAdvice(engine, findings, { where });
  const parts = [
    wrapped([title, engine.name ?? engine.id ?? "The engine"].filter(Boolean).join(": ")),
    sayDriving(driving),
    step.kind === "check"
      ? sayCheck(step, knowledge)
      : step.kind === "repair"
        ? sayRepair(step, knowledge)
        : sayCall(advice, driving),
    wrapped(
      `Expected from here until it runs right: ${sayMinutes(advice.expectedMinutes)}; ` +
        `${sayMinutes(advice.expectedMinutesWithoutChecks)} without checks. ` +
        `${sayEnd(advice.callChance)} ${sayRate(advice.hourRate, atHand)}`,
    ),
    sayOthers(advice),
    sayWithheld(advice),
    wrapped(
      "Minutes, prices and chances are estimates. The vehicle maker's service manual comes first.",
    ),
  ];
  return parts.filter(Boolean).join("\n");
}

/** No check is worth a drive that the rules forbid. */
function sayDriving({ level, rules }: DriveAdvice): string {
  if (level?.level !== "stop-now" && level?.level !== "do-not-drive") return "";
  return [
    wrapped(`${level.say.toUpperCase()} "half-order drive" says why.`),
    ...rules
      .filter((rule) => rule.level === "stop-now")
      .map(({ lifts }) => wrapped(`Before any step: ${lifts}`)),
  ].join("");
}

/** Help, and how the car gets there: as the drive rules have it. */
function sayCall({ mendable }: Next, { level, ask }: DriveAdvice): string {
  const chance = sayProbability(mendable);
  const how =
    level?.say ??
    (ask
      ? "Whether it may be driven there hangs on one more look."
      : "Drive it home, or to help, gently.");
  return [
    wrapped("Next: call for help. Nothing here pays against that any more."),
    wrapped(
      `With what is at hand it could be mended with a chance of ${chance} at most. ${how} ` +
        '"half-order drive" tells all about driving.',
      "  ",
    ),
  ].join("");
}

function sayRate(hourRate: number, { hourRate: own }: AtHand): string {
  const usual = "an estimate; give yours as hourRate under atHand";
  const from = own === undefined ? usual : own === hourRate ? "as given" : "the least that counts";
  return `Parts and a bill are counted as time, an hour of yours at ${hourRate} (${from}).`;
}

/** Hours that stand for a professional's bill are no hours of the user's. */
function sayEnd(callChance: number): string {
  const chance = sayProbability(callChance);
  return `That it ends at a professional's with repairs alone: ${chance}.`;
}

function sayCheck(check: NextCheck, knowledge: Knowledge): string {
  const row = knowledge.checks.find(({ id }) => id === check.check);
  const lines = [
    wrapped(
      `Next: ${check.name}${sayAt(check.cylinders)} (${sayMinutes(check.minutes)}, ${check.check}).`,
    ),
    sayCautions(check.cautions, knowledge),
    sayOpens(check.opens),
    ...(row?.steps ?? []).map((step, i) => wrapped(`${i + 1}. ${step}`, "  ")),
    check.putBack.length > 0 ? wrapped("Before the engine runs again:", "  ") : "",
    ...check.putBack.map(({ say }) => wrapped(`- ${say}`, "  ")),
    sayOutcomes(check.outcomes, knowledge),
  ];
  return lines.filter(Boolean).join("");
}

function sayRepair(repair: NextRepair, knowledge: Knowledge): string {
  const { repair: id, name, minutes, cures, cautions, opens, because, isMade } = repair;
  const chance = sayProbability(cures);
  const what = isMade ? "What was done cured it" : "It cures this";
  return [
    wrapped(`Next: ${name} (${sayMinutes(minutes)}, ${id}). ${what} with a chance of ${chance}.`),
    because ? wrapped(because, "  ") : "",
    sayCautions(cautions, knowledge),
    sayOpens(opens),
    wrapped('Write how the engine then runs into "repairs" of the case:', "  "),
    `    ${sayDone(repair)}\n`,
    wrapped(`Results: ${REPAIR_RESULTS.join(", ")}.`, "    "),
    isMade ? "" : wrapped(`"half-order mend ${id}" tells what belongs to it.`, "  "),
  ]
    .filter(Boolean)
    .join("");
}

/** What a case holds of a repair. */
function sayDone({ repair, cylinders: [cylinder] }: NextRepair): string {
  return jsonLine({ repair, ...(cylinder === undefined ? {} : { cylinder }), result: "cured" });
}

function sayOthers({ step, checks, repairs }: Next): string {
  // What comes before any further check stands alone.
  if (step.kind === "repair" && step.because) return "";
  const next = step.kind === "check" ? step.check : undefined;
  const others = checks.filter(({ check, worthMinutes }) => check !== next && worthMinutes > 0);
  const checkLines = others
    .slice(0, MORE_TOLD)
    .map((check) => [
      check.check,
      `${check.name}${sayAt(check.cylinders)}`,
      sayMinutes(check.minutes),
      `saves ${sayMinutes(check.worthMinutes)}`,
    ]);
  const repairLines = repairs
    .slice(0, MORE_TOLD)
    .map(({ repair, name, minutes, cures }) => [
      repair,
      name,
      sayMinutes(minutes),
      `cures ${percent(cures)}`,
    ]);
  return [
    checkLines.length > 0 ? `Other checks that pay:\n${table(checkLines)}` : "",
    repairLines.length > 0 ? `Repairs, if nothing more were checked:\n${table(repairLines)}` : "",
  ]
    .filter(Boolean)
    .join("\n");
}

/** Why a step cannot be done with what is at hand. */
export const REASONS = {
  tool: "needs a tool",
  spare: "would settle it; needs a good part to try",
  skill: "needs more skill",
  place: "not at this place",
  rest: "the engine must stay off",
} as const;

function sayWithheld({ withheld }: Next): string {
  if (withheld.length === 0) return "";
  return `Not with what is at hand:\n${table(withheld.map(({ id, name, why }) => [id, name, REASONS[why]]))}`;
}

export function sayCautions(ids: readonly string[], { cautions }: Knowledge): string {
  return cautions
    .filter(({ id }) => ids.includes(id))
    .map(({ say }) => wrapped(`CAUTION. ${say}`, "  "))
    .join("");
}

/** What comes off first, each kind once, with where it comes off. */
export function sayOpens(opens: NextCheck["opens"]): string {
  const kinds = [...new Set(opens.map(({ say }) => say))].map((say) => {
    const like = opens.filter((each) => each.say === say);
    const minutes = like.reduce((sum, each) => sum + each.minutes, 0);
    const places = like.map(({ id }) => id.slice(id.indexOf("@") + 1).replace(/^\w+ /, ""));
    const at = like.length > 1 ? ` at ${places.join(", ")}` : "";
    return `${say}${at} (${sayMinutes(minutes)})`;
  });
  return kinds.length > 0 ? wrapped(`First: ${kinds.join("; ")}.`, "  ") : "";
}

function sayAt(cylinders: readonly CylinderName[]): string {
  return cylinders.length > 0 ? ` at ${cylinders.join(", ")}` : "";
}

export function sayMinutes(value: number): string {
  if (value < 90) return `${Math.max(1, Math.round(value))} min`;
  return `${(value / 60).toFixed(1)} h`;
}
