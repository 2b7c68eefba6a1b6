// Cautions that the answers call for at once, before any ranking is read.
import type { Answered } from "../compile/answered.ts";

/** Ids of cautions, in the order of the answers, each once. */
export function cautionsOf(answered: readonly Answered[]): readonly string[] {
  const ids = answered.flatMap(({ row, options }) =>
    options.flatMap((option) => row.options[option]?.caution ?? []),
  );
  return [...new Set(ids)];
}
