// The way through the questions: what comes before and after one, and where it was reached from.
import type { FindingRow } from "@half-order/core";
import { computed } from "@preact/signals";
import { firstQuestions } from "./asked.ts";
import { profile } from "./case.ts";
import { findingRow, questionAfter, questionBefore } from "./catalogue.ts";
import { at, goTo, path, screen, subject } from "./route.ts";

/** The question that the address asks for: the first one where it names none. */
export const openQuestion = computed<FindingRow | undefined>(() => {
  if (screen.value !== "question") return undefined;
  if (subject.value !== undefined) return findingRow(subject.value);
  return firstQuestions(profile.value)[0];
});

/** The address of a question that leads back to a screen instead of on to the next question. */
export function askFrom(screen: string, finding: string): string {
  return at("question", finding, screen);
}

/** The screen that the open question was reached from, where it is not one of a row of questions. */
function home(): string | undefined {
  return path.value[0] === "question" ? path.value[2] : undefined;
}

/** The address of the drive screen that leads back to where this screen stands. */
export function driveAddress(): string {
  return at("drive", ...path.value);
}

/** Where Back leads from the open question, or from any other screen of a case. */
export function backAddress(): string {
  if (screen.value === "drive" && path.value[1]) return at(...path.value.slice(1));
  const from = home();
  const row = openQuestion.value;
  if (from !== undefined) return at(from);
  const before = row && questionBefore(row.id, profile.value);
  if (before) return at("question", before.id);
  return row?.first === undefined ? at("ranking") : at();
}

/** Goes on from an answered question. */
export function goOn(row: FindingRow): void {
  const from = home();
  const next = from === undefined ? questionAfter(row.id, profile.value) : undefined;
  if (next) goTo("question", next.id);
  else goTo(from ?? "ranking");
}
