// What is it that an address asks for and that is not there?

export type Missing = "page" | "case" | "engine" | "kind" | "question" | "check" | "repair";

/** First parts of addresses that need a case; they stand here too because the table of screens knows this one. */
export const OF_CASE: readonly string[] = [
  "ranking",
  "question",
  "check",
  "checks",
  "step",
  "drive",
  "mend",
  "proof",
  "repairs",
  "sure",
  "add",
  "answers",
  "record",
  "hand-over",
];

/** By the first part of an address, what its second part names. */
const NAMED: Readonly<Record<string, Missing>> = {
  pick: "kind",
  engine: "kind",
  question: "question",
  check: "check",
  step: "check",
  mend: "repair",
};

export interface Here {
  /** Whether a case is open, whatever its engine. */
  readonly isOpen: boolean;
  /** Whether the engine of the open case is known too. */
  readonly hasCase: boolean;
}

/** Asked only of an address that has led to nothing; `path` as in `state/route.ts`. */
export function missingOf([name = ""]: readonly string[], { isOpen, hasCase }: Here): Missing {
  const named = NAMED[name] ?? "page";
  if (hasCase || !OF_CASE.includes(name)) return named;
  return isOpen ? "engine" : "case";
}
