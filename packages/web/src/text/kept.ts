// A kept case in a line.
import type { KeptCase } from "../state/store.ts";
import { KEPT } from "./en-kept.ts";

/** "5 answers, 3 May 2026 at 14:10" in the words of the browser's language. */
export function sayKept({ changed, doc }: KeptCase): string {
  const when = new Date(changed).toLocaleString(undefined, {
    dateStyle: "medium",
    timeStyle: "short",
  });
  return `${KEPT.answers(doc.findings.length)}, ${when}`;
}
