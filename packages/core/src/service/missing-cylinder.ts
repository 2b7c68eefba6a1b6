// Which cylinders are known to miss? Named by codes, by counts, or by a cancel test; no probability in it.
import type { Answered } from "../compile/answered.ts";
import type { Engine } from "../engine/engine.ts";
import type { CylinderName } from "../engine/profile.ts";
import { MISSING_CYLINDER } from "../knowledge/drive-level.ts";

/**
 * The cylinders that at least one source names, in the order of the engine. Codes or counts that name
 * more than half of an engine tell of misses at random, since it would not run on the rest, and name
 * nobody. A cylinder that changes nothing when it is switched off is dead whatever the others do.
 */
export function missingCylinders(
  engine: Engine,
  answered: readonly Answered[],
): readonly CylinderName[] {
  const missing = new Set<number>();
  for (const each of answered) for (const cylinder of namedBy(engine, each)) missing.add(cylinder);
  return engine.names.filter((_, cylinder) => missing.has(cylinder));
}

function namedBy(engine: Engine, { row, cylinder, options, codes, counts }: Answered): number[] {
  if (row.id === "cancel") {
    return cylinder !== undefined && options.includes("no-drop") ? [cylinder] : [];
  }
  if (codes) return unlessRandom(engine, indicesOf(engine, codes.misfire));
  if (counts) return unlessRandom(engine, counted(counts));
  return [];
}

function indicesOf(engine: Engine, numbers: readonly number[]): number[] {
  return numbers.flatMap((number) => {
    const index = engine.names.findIndex((name) => String(name) === String(number));
    return index < 0 ? [] : [index];
  });
}

function counted(counts: readonly number[]): number[] {
  const { fewestCounts, leastShare } = MISSING_CYLINDER;
  const total = counts.reduce((sum, count) => sum + count, 0);
  return counts.flatMap((count, cylinder) =>
    count >= fewestCounts && count >= leastShare * total ? [cylinder] : [],
  );
}

function unlessRandom(engine: Engine, named: number[]): number[] {
  return named.length > engine.names.length / 2 && engine.names.length > 1 ? [] : named;
}
