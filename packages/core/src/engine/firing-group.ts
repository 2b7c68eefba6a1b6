// Which cylinders each coil fires: all through a distributor, two companions at once, or its own.
import type { EngineProfile, IgnitionKind } from "./profile.ts";

/** True for the kinds whose coils fire two companions at once. */
export function firesInPairs(ignition: IgnitionKind): boolean {
  return ignition === "pack" || ignition === "rail" || ignition === "hybrid";
}

/** How many cylinders one coil of this kind fires on an engine with so many cylinders. */
export function groupSize(ignition: IgnitionKind, cylinders: number): number {
  if (ignition === "distributor") return cylinders;
  return firesInPairs(ignition) ? 2 : 1;
}

/**
 * Groups of cylinder indices, one a coil. Pairs come in firing order with the one that fires first
 * in front; coils with one plug come in cylinder order. Without a companion a cylinder is alone.
 */
export function firingGroups(
  profile: EngineProfile,
  order: readonly number[],
  companions: readonly (number | undefined)[],
): readonly (readonly number[])[] {
  if (profile.ignition === "distributor") return [order];
  if (profile.ignition === "coil-per-plug") return order.map((_, cylinder) => [cylinder]);
  const place = (cylinder: number): number => order.indexOf(cylinder);
  return order.flatMap((cylinder) => {
    const companion = companions[cylinder];
    if (companion === undefined) return [[cylinder]];
    return place(cylinder) < place(companion) ? [[cylinder, companion]] : [];
  });
}
