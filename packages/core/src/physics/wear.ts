// How wide is the gap of a plug after so many kilometres? Sparks take metal away at a steady rate, which
// depends on the metal and, on double coils, on the spark that each plug also makes on its exhaust stroke.
import type { Figures, IgnitionKind } from "../engine/profile.ts";

export type ElectrodeMetal = NonNullable<Figures["plugElectrode"]>;

/** Low, likely and high. */
export interface Spread {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

const MM_PER_10000_KM = 1e-7;

/**
 * Growth of the gap, m a km. Nickel: 0.10–0.15 mm in 10,000 km (an engine maker's training booklet); a
 * trade magazine's 0.0002–0.0006 in for 1,000 miles is the low end here. Fine metals: a fifth to a tenth
 * of that (from memory). `other` covers both.
 */
export const GAP_GROWTH_M_PER_KM: Readonly<Record<ElectrodeMetal, Spread>> = {
  nickel: growth(0.032, 0.125, 0.15),
  platinum: growth(0.01, 0.02, 0.03),
  "double-platinum": growth(0.01, 0.02, 0.03),
  iridium: growth(0.01, 0.02, 0.03),
  other: growth(0.01, 0.06, 0.15),
};

/**
 * What a spark every turn does to the growth: twice as many sparks (plug makers' bulletins on waste
 * spark), but the second burns in thin gas and takes less; the likely value is our judgement.
 */
export const EXHAUST_SPARK_WEAR: Spread = { low: 1, likely: 1.5, high: 2 };

/** A plug and what it has run. */
export interface PlugLife {
  readonly newGapM: number;
  readonly electrode: ElectrodeMetal;
  readonly ignition: IgnitionKind;
}

/** The gap after a distance, m, without any setting in between. */
export function wornGap(plug: PlugLife, distanceKm: number): Spread {
  const rate = growthOf(plug);
  return {
    low: plug.newGapM + rate.low * distanceKm,
    likely: plug.newGapM + rate.likely * distanceKm,
    high: plug.newGapM + rate.high * distanceKm,
  };
}

/** Distance until the gap has grown to a width, km: `low` is the soonest. Zeros when it is there. */
export function distanceToGap(plug: PlugLife, gapM: number): Spread {
  const rate = growthOf(plug);
  const missing = Math.max(0, gapM - plug.newGapM);
  return { low: missing / rate.high, likely: missing / rate.likely, high: missing / rate.low };
}

/**
 * Which electrode of a plug on a double coil wears: the one the electrons leave, the centre when it is
 * negative (three plug makers' bulletins).
 */
export function wornElectrode(isReversed: boolean): "centre" | "ground" {
  return isReversed ? "ground" : "centre";
}

/** Growth in m a km of a plug on its ignition. */
function growthOf({ electrode, ignition }: PlugLife): Spread {
  const rate = GAP_GROWTH_M_PER_KM[electrode];
  if (ignition === "distributor" || ignition === "coil-per-plug") return rate;
  return {
    low: rate.low * EXHAUST_SPARK_WEAR.low,
    likely: rate.likely * EXHAUST_SPARK_WEAR.likely,
    high: rate.high * EXHAUST_SPARK_WEAR.high,
  };
}

function growth(low: number, likely: number, high: number): Spread {
  return {
    low: low * MM_PER_10000_KM,
    likely: likely * MM_PER_10000_KM,
    high: high * MM_PER_10000_KM,
  };
}
