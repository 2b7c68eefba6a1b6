// Engines without a maker: every firing order in use under every ignition that suits it.
import { firesInPairs } from "./firing-group.ts";
import { firingAngles, pairingMismatchDeg, shortestPeriod } from "./firing-order.ts";
import { GENERIC_ORDERS, type GenericOrder } from "./generic-order.ts";
import { type EngineProfile, IGNITION_KINDS, type IgnitionKind } from "./profile.ts";

const COUNT_WORDS = new Map([
  [2, "two"],
  [3, "three"],
  [4, "four"],
  [5, "five"],
  [6, "six"],
]);

const IGNITION_WORDS: Readonly<Record<IgnitionKind, string>> = {
  distributor: "distributor",
  pack: "coil pack",
  rail: "coil rail",
  hybrid: "coils on every other plug",
  "coil-per-plug": "coil per plug",
};

/** Profiles with ids that read aloud: `generic.i4.1342.rail`; all, or those of so many cylinders. All are complete. */
export function genericProfiles(cylinders?: number): readonly EngineProfile[] {
  const orders = GENERIC_ORDERS.filter(
    ({ order }) => cylinders === undefined || order.length === cylinders,
  );
  return orders.flatMap((order) =>
    IGNITION_KINDS.filter((ignition) => suits(order, ignition)).map((ignition) =>
      genericProfile(order, ignition),
    ),
  );
}

/** Crank degrees by which the best pairs of a generic order miss 360°; 0 when they are exact. */
export function orderMismatchDeg({ order, intervals }: GenericOrder): number {
  return pairingMismatchDeg(firingAngles([...order.keys()], intervals));
}

function suits(order: GenericOrder, ignition: IgnitionKind): boolean {
  return !firesInPairs(ignition) || orderMismatchDeg(order) === 0;
}

function genericProfile(generic: GenericOrder, ignition: IgnitionKind): EngineProfile {
  const { layout, order, intervals, banks } = generic;
  const uneven = intervals && shortestPeriod(intervals).join("-");
  const letter = { inline: "i", v: "v", flat: "f" }[layout];
  const isLong = order.some((name) => Number(name) >= 10);
  const id = [
    "generic",
    `${letter}${order.length}`,
    order.join(isLong ? "-" : ""),
    ...(uneven ? [`odd-${uneven}`] : []),
    ignition,
  ].join(".");
  const name = [
    layoutName(generic),
    order.join("-"),
    ...(uneven ? [`uneven ${uneven}`] : []),
    IGNITION_WORDS[ignition],
  ].join(", ");
  const timing = intervals ? { firingIntervals: intervals } : {};
  return {
    id,
    name,
    cylinders: order.length,
    layout,
    banks,
    firingOrder: order,
    ...timing,
    ignition,
  };
}

function layoutName({ layout, order }: GenericOrder): string {
  if (layout === "v") return order.length === 2 ? "V-twin" : `V${order.length}`;
  const count = COUNT_WORDS.get(order.length) ?? String(order.length);
  return `${layout === "inline" ? "Inline" : "Flat"} ${count}`;
}
