// Which names the cylinders of an engine go by, and in which order they are counted.
import type { CylinderName, EngineProfile } from "./profile.ts";

/**
 * The cylinder names of a profile in counting order: 1 to n, or the labels (such as "R1") that its
 * banks, order or firing groups use, bank by bank. A faulty profile may yield too few or too many.
 */
export function cylinderNames(profile: EngineProfile): readonly CylinderName[] {
  const given = profile.banks ?? profile.firingOrder ?? profile.firingGroups ?? [];
  const mentions: readonly CylinderName[] = given.flat();
  const labels = mentions.filter((name): name is string => isLabel(name));
  if (labels.length * 2 <= mentions.length) {
    return Array.from({ length: profile.cylinders }, (_, i) => i + 1);
  }
  const distinct = [...new Set(labels)];
  return profile.banks ? distinct : byPrefix(distinct);
}

/** True for names such as "R1"; false for numbers and for numbers in quotes. */
export function isLabel(name: CylinderName): boolean {
  return typeof name === "string" && !/^\s*\d*\s*$/.test(name);
}

/** Names as a phrase: "1", "1 and 4", "1, 2 and 5". */
export function sayNames(names: readonly CylinderName[]): string {
  const head = names.slice(0, -1).join(", ");
  return head === "" ? names.join("") : `${head} and ${names[names.length - 1]}`;
}

/**
 * The name of something at these cylinders, for `{at}` in it. What serves all cylinders of the engine, such as
 * the one connector of a coil rail, is there once and needs no place.
 */
export function nameAt(name: string, names: readonly CylinderName[], ofAll: number): string {
  const once = names.length === ofAll ? name.replace(/ (of|on) \{at\}/, "") : name;
  return once.replace("{at}", sayNames(names));
}

/** Labels with the same letters together, letters as first met, numbers ascending within. */
function byPrefix(labels: readonly string[]): readonly string[] {
  const prefix = (label: string): string => label.replace(/\d+$/, "");
  const prefixes = [...new Set(labels.map(prefix))];
  const number = (label: string): number => Number(label.slice(prefix(label).length));
  return [...labels].sort(
    (a, b) => prefixes.indexOf(prefix(a)) - prefixes.indexOf(prefix(b)) || number(a) - number(b),
  );
}
