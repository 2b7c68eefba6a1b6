// Which words of the trade does somebody look for?
import { TERMS, type TermRow } from "@half-order/core";

const sorted = [...TERMS].sort((a, b) => a.word.localeCompare(b.word, "en"));

/** The words that hold what was typed, in any of their forms or in their meaning; these come last. */
export function search(typed: string): readonly TermRow[] {
  const part = typed.trim().toLowerCase();
  if (part === "") return sorted;
  const inName = sorted.filter(({ word, also = [] }) =>
    [word, ...also].some((form) => form.toLowerCase().includes(part)),
  );
  const inMeaning = sorted.filter((term) => term.say.toLowerCase().includes(part));
  return [...new Set([...inName, ...inMeaning])];
}
