// What does the current of a double coil do? Through both plugs in series when one of its cylinders is to
// fire, leg by leg, with the parts as they are.
import { seriesPair } from "./series-pair.ts";
import { offShare, silentShare } from "./simulated-drive.ts";
import type { SimulatedEngine } from "./simulated-engine.ts";
import type { SimulatedRegime } from "./simulated-regime.ts";
import { pairOf, sparkNeeds } from "./simulated-spark.ts";

/** One end of the winding down to the head. */
export interface PairLeg {
  readonly cylinder: number;
  /** Which stroke its cylinder ends when the coil fires. */
  readonly stroke: "compression" | "exhaust";
  /** What the plug needs, V. */
  readonly plugV: number;
  readonly state: "sound" | "shorted" | "open";
  /** What a break in the leg takes on top, V; `undefined` when there is none or nothing jumps it. */
  readonly breakV: number | undefined;
  /** The centre electrode is positive here. */
  readonly isReversed: boolean;
  readonly sparks: boolean;
  /** Part of the voltage that falls on this leg; 0 when no current flows. */
  readonly share: number;
}

/** A double coil at one firing. */
export interface PairFiring {
  readonly availableV: number;
  /** What both legs take together, V; `undefined` when nothing closes the loop. */
  readonly neededV: number | undefined;
  /** The cylinder that is to fire comes first. */
  readonly legs: readonly [PairLeg, PairLeg];
  /** Share of cycles in which the coil is not fed, not triggered or gives nothing. */
  readonly silent: number;
}

/** What happens when this cylinder is to fire; `undefined` when it has a coil of its own. */
export function pairFiring(
  parts: SimulatedEngine,
  regime: SimulatedRegime,
  cylinder: number,
): PairFiring | undefined {
  const needs = sparkNeeds(parts, regime);
  const pair = pairOf(parts, needs, cylinder);
  if (!pair) return undefined;
  const coil = parts.engine.groupOf[cylinder] ?? 0;
  const availableV = needs.coilV[coil] ?? 0;
  const { sparks, share, neededV } = seriesPair(pair.legs, availableV);
  const leg = (side: 0 | 1): PairLeg => ({
    cylinder: pair.cylinders[side],
    stroke: side === 0 ? "compression" : "exhaust",
    plugV: pair.legs[side].plugV,
    state: pair.legs[side].state,
    breakV: pair.legs[side].breakV,
    isReversed: parts.reversed[pair.cylinders[side]] ?? false,
    sparks: sparks[side],
    share: share[side],
  });
  return { availableV, neededV, legs: [leg(0), leg(1)], silent: silentCoil(parts, regime, coil) };
}

/** One of what stands in a row before the spark is enough to silence the coil. */
function silentCoil(parts: SimulatedEngine, regime: SimulatedRegime, coil: number): number {
  const first = parts.engine.groups[coil]?.[0] ?? 0;
  const connector = parts.engine.connectors.findIndex(({ cylinders }) => cylinders.includes(first));
  const contacts = [parts.supply, parts.feeds[connector], parts.controls[coil]].flatMap((each) =>
    each ? [offShare(each, regime)] : [],
  );
  const works = [silentShare(parts, regime, coil), ...contacts].map((off) => 1 - Math.min(1, off));
  return 1 - works.reduce((product, share) => product * share, 1);
}
