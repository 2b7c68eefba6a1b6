// `half-order drive`: may one drive on, and why; as JSON or as text.
import { CAUTIONS, type DriveAdvice, driveAdvice, KNOWLEDGE } from "@half-order/core";
import { readCase } from "./case-input.ts";
import { type Input, plainWords } from "./input.ts";
import { json, wrapped } from "./text.ts";

export async function driveCommand(args: readonly string[], stdin: Input): Promise<string> {
  const { isJson, names } = plainWords(args, 1);
  const { engine, findings, atHand: { where } = {} } = await readCase(names[0], stdin);
  const advice = driveAdvice(engine, findings, { where });
  return isJson ? json(advice) : sayDrive(advice);
}

function sayDrive({ ask, level, rules, never, cautions, limpHome }: DriveAdvice): string {
  const parts = [
    level ? wrapped(level.say.toUpperCase()) : "",
    level ? level.steps.map((step, i) => wrapped(`${i + 1}. ${step}`, "  ")).join("") : "",
    ask ? sayLook(ask) : "",
    CAUTIONS.filter(({ id }) => cautions.includes(id))
      .map(({ say }) => wrapped(`CAUTION. ${say}`))
      .join(""),
    rules.length > 0 ? `Why:\n${rules.map(sayRule).join("")}` : "",
    never.length > 0 ? `Never:\n${list(never)}` : "",
    limpHome ? sayLimpHome(limpHome) : "",
    level || ask ? "" : wrapped("Nothing that is known speaks against driving with normal care."),
    wrapped(
      "These are rules, not probabilities. The vehicle maker's manual, local rules and a licensed " +
        "technician overrule them.",
    ),
  ];
  return parts.filter(Boolean).join("\n");
}

function sayLook(id: string): string {
  const row = KNOWLEDGE.findings.get(id);
  const options = Object.values(row?.options ?? {}).map(({ say }) => say);
  return wrapped(`Look at this first. ${row?.ask ?? id} ${options.join("; ")}.`);
}

function sayRule({ reason, lifts }: DriveAdvice["rules"][number]): string {
  return `${wrapped(reason, "  ")}${wrapped(`What would change it: ${lifts}`, "    ")}`;
}

function sayLimpHome({ limits, steps, afterwards }: NonNullable<DriveAdvice["limpHome"]>): string {
  const { maxSpeedKmh, maxDistanceKm, rpm, lookEveryMin } = limits;
  return [
    `Only to reach safety:\n${list(steps)}`,
    wrapped(
      `At most ${maxSpeedKmh} km/h and ${maxDistanceKm} km, ${rpm.join(" to ")} rpm, a look every ` +
        `${lookEveryMin} minutes. These limits are estimates.`,
      "  ",
    ),
    `Afterwards:\n${list(afterwards)}`,
  ].join("");
}

function list(lines: readonly string[]): string {
  return lines.map((line) => wrapped(`- ${line}`, "  ")).join("");
}
