// What was asked and answered, in words.
import {
  type Answer,
  type Engine,
  type Finding,
  type FindingRow,
  servesAll,
} from "@half-order/core";
import { inUnits } from "../state/figure.ts";
import { ANSWERS, LEDGER, QUESTION } from "./en.ts";

/** The answer as the buttons say it; an unknown option or row as it is written. */
export function sayAnswer(row: FindingRow | undefined, answer: Answer): string {
  if (typeof answer === "number")
    return inUnits.value(`${answer} ${row?.reading?.unit ?? ""}`.trim());
  if (typeof answer === "string") return sayOption(row, answer);
  if (Array.isArray(answer)) {
    const words = (answer as readonly string[]).map((option) => sayOption(row, option));
    return words.length > 0 ? words.join(", ") : ANSWERS.none_;
  }
  const counts = Object.entries(answer).map(([name, count]) => `${name}: ${count}`);
  return counts.join(", ");
}

/** What was asked, with its cylinder where it has one; without it where all cylinders of the engine share the thing. */
export function sayAsked(
  row: FindingRow | undefined,
  { finding, cylinder }: Pick<Finding, "finding" | "cylinder">,
  engine?: Engine,
): string {
  const ask = row?.ask ?? finding;
  const isOfAll = row && engine && servesAll(engine, row.scope, cylinder);
  return cylinder === undefined || isOfAll ? ask : `${ask} (${LEDGER.cylinder(String(cylinder))})`;
}

function sayOption(row: FindingRow | undefined, option: string): string {
  const known = row?.options[option]?.say;
  if (known !== undefined) return inUnits.value(known);
  if (row?.kind === "presence") return option === "yes" ? QUESTION.yes : QUESTION.no;
  return option;
}
