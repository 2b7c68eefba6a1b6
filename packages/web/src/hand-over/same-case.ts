// Is a case that comes to this device here already, just as it comes?
import type { CaseDoc, KeptCase } from "../state/store.ts";

/** The case that holds the very same, in whatever order its fields stand; `undefined` when none does. */
export function sameCase(doc: CaseDoc, kept: readonly KeptCase[]): KeptCase | undefined {
  const wanted = ordered(doc);
  return kept.find((each) => ordered(each.doc) === wanted);
}

function ordered(doc: CaseDoc): string {
  return JSON.stringify(doc, (_, value: unknown) => {
    if (typeof value !== "object" || value === null || Array.isArray(value)) return value;
    return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
  });
}
