// The next step in words, for a terminal: what to do, what each outcome would mean, what else there is.
import {
  type CheckOutcome,
  type CylinderName,
  driveAdvice,
  type Knowledge,
  type Next,
  type NextCheck,
  type NextRepair,
  sayProbability,
} from "@half-order/core";
import type { Case } from "@half-order/core/wire";
import { percent, table, wrapped } from "./text.ts";

/** Further checks and repairs that get a line. */
const MORE_TOLD = 5;
/** Outcomes rarer than this are not worth a line. */
const WORTH_SAYING = 0.01;

export function sayNext(
  { title, engine, findings }: Case,
  advice: Next,
  knowledge: Knowledge,
): string {
  const { step } = advice;
  const parts = [
    wrapped([title, engine.name ?? engine.id ?? "The engine"].filter(Boolean).join(": ")),
    sayDriving(engine, findings),
    step.kind === "check"
      ? sayCheck(step, knowledge)
      : step.kind === "repair"
        ? sayRepair(step, knowledge)
        : wrapped("Next: hand it to a professional. Nothing at hand is likely to pay any more."),
    wrapped(
      `Expected from here until it runs right: ${sayMinutes(advice.expectedMinutes)}, parts counted ` +
        `as time at your hour rate; ${sayMinutes(advice.expectedMinutesWithoutChecks)} without checks. ` +
        `${sayEnd(advice.callChance)}`,
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
function sayDriving(engine: Case["engine"], findings: Case["findings"]): string {
  const { level } = driveAdvice(engine, findings);
  if (level?.level !== "stop-now" && level?.level !== "do-not-drive") return "";
  return wrapped(`${level.say.toUpperCase()} "half-order drive" says why.`);
}

/** Hours that stand for a professional's bill are no hours of the user's. */
function sayEnd(callChance: number): string {
  return `With repairs alone it ends at a professional's with a chance of ${sayProbability(callChance)}.`;
}

function sayCheck(check: NextCheck, knowledge: Knowledge): string {
  const row = knowledge.checks.find(({ id }) => id === check.check);
  const lines = [
    wrapped(`Next: ${check.name}${sayAt(check.cylinders)} (${sayMinutes(check.minutes)}).`),
    sayCautions(row?.cautions ?? [], knowledge),
    sayOpens(check.opens),
    ...(row?.steps ?? []).map((step, i) => wrapped(`${i + 1}. ${step}`, "  ")),
    "What it would mean:\n",
    table(
      check.outcomes
        .filter(({ probability }) => probability >= WORTH_SAYING)
        .map((outcome) => sayOutcome(outcome, knowledge)),
    ),
  ];
  return lines.filter(Boolean).join("");
}

function sayOutcome({ answers, probability, leader }: CheckOutcome, knowledge: Knowledge) {
  const said = answers.map(({ finding, answer, cylinder }) => {
    const at = cylinder === undefined ? "" : `${cylinder}: `;
    return `${at}${sayAnswer(answer, knowledge.findings.get(finding)?.options ?? {})}`;
  });
  const then = leader ? `then first ${leader.name}, ${percent(leader.probability)}` : "";
  return [percent(probability).padStart(7), said.join("; ") || "anything else", then];
}

function sayAnswer(
  answer: CheckOutcome["answers"][number]["answer"],
  options: Readonly<Record<string, { readonly say: string }>>,
): string {
  const word = (option: string): string => options[option]?.say ?? option;
  if (typeof answer === "string") return word(answer);
  if (typeof answer === "number") return String(answer);
  if (Array.isArray(answer)) return answer.map(word).join(", ") || "nothing else";
  return Object.entries(answer)
    .map(([cylinder, count]) => `${cylinder}: ${count}`)
    .join(", ");
}

function sayRepair(repair: NextRepair, knowledge: Knowledge): string {
  const row = knowledge.repairs.find(({ id }) => id === repair.repair);
  return [
    wrapped(
      `Next: ${repair.name} (${sayMinutes(repair.minutes)}); it cures this with a chance of ` +
        `${sayProbability(repair.cures)}.`,
    ),
    sayCautions(row?.cautions ?? [], knowledge),
    sayOpens(repair.opens),
  ]
    .filter(Boolean)
    .join("");
}

function sayOthers({ step, checks, repairs }: Next): string {
  const others = checks.filter((check) => check !== step && check.worthMinutes > 0);
  const checkLines = others
    .slice(0, MORE_TOLD)
    .map((check) => [
      `${check.name}${sayAt(check.cylinders)}`,
      sayMinutes(check.minutes),
      `saves ${sayMinutes(check.worthMinutes)}`,
    ]);
  const repairLines = repairs
    .slice(0, MORE_TOLD)
    .map(({ name, minutes: work, cures }) => [name, sayMinutes(work), `cures ${percent(cures)}`]);
  return [
    checkLines.length > 0 ? `Other checks that pay:\n${table(checkLines)}` : "",
    repairLines.length > 0 ? `Repairs, if nothing more were checked:\n${table(repairLines)}` : "",
  ]
    .filter(Boolean)
    .join("\n");
}

const REASONS = { tool: "needs a tool", skill: "needs more skill", place: "not at this place" };

function sayWithheld({ withheld }: Next): string {
  if (withheld.length === 0) return "";
  return `Not with what is at hand:\n${table(withheld.map(({ name, why }) => [name, REASONS[why]]))}`;
}

export function sayCautions(ids: readonly string[], { cautions }: Knowledge): string {
  return cautions
    .filter(({ id }) => ids.includes(id))
    .map(({ say }) => wrapped(`CAUTION. ${say}`, "  "))
    .join("");
}

function sayOpens(opens: NextCheck["opens"]): string {
  const said = opens.map(({ say }) => say).join("; ");
  return said ? wrapped(`First: ${said}.`, "  ") : "";
}

function sayAt(cylinders: readonly CylinderName[]): string {
  return cylinders.length > 0 ? ` at ${cylinders.join(", ")}` : "";
}

export function sayMinutes(value: number): string {
  if (value < 90) return `${Math.max(1, Math.round(value))} min`;
  return `${(value / 60).toFixed(1)} h`;
}
