// Does a plug spark? What its gap needs against what its coil can give, with leaks to ground, breaks and,
// on double coils, the companion in series.
import { firesInPairs } from "../engine/firing-group.ts";
import type { Random } from "../units/random.ts";
import { ENGINE_RANGE, plugDemand, uniformBreakdown } from "./breakdown.ts";
import { availableVolts, chargingCurrent } from "./coil.ts";
import { type Leg, seriesPair } from "./series-pair.ts";
import { sealedShare, sparkGas } from "./simulated-charge.ts";
import type { SimulatedEngine, SimulatedPath } from "./simulated-engine.ts";
import type { SimulatedRegime } from "./simulated-regime.ts";

/** Spread of breakdown from cycle to cycle. */
const CYCLE_SPREAD = 0.07;
const EFFICIENCY = 0.6;
const PRIMARY = { loopOhm: 0.7, inductanceH: 3.5e-3, supplyV: 14 };
const DWELL_S = 2.6e-3;
/** What the gap between rotor and cap takes. */
export const ROTOR_GAP_V = 2500;
/** The gas round the plug of the companion, which fires at the end of its exhaust stroke. */
export const EXHAUST_STROKE = { pressurePa: 1e5, temperatureK: 800 };
/** A loose contact gapes wider when shaken. */
const SHAKEN_BREAK = 0.8;
const CLEANING_C = 450;
/** Our estimate: e times less soot for each 60 K. */
const CLEANING_STEP_K = 60;
/** Water in a well carries the spark to the head over a few millimetres. */
const FLOODED_ARC_V = 5000;

/** What does not change from cycle to cycle in a regime. */
export interface SparkNeeds {
  readonly plugV: readonly number[];
  readonly exhaustV: readonly number[];
  readonly coilV: readonly number[];
  /** By cylinder: the lowest voltage at which its path leaks to ground. */
  readonly arcV: readonly number[];
  readonly breakV: readonly number[];
  readonly shuntOhm: readonly number[];
}

/** Needs and means of every plug in a regime. */
export function sparkNeeds(parts: SimulatedEngine, regime: SimulatedRegime): SparkNeeds {
  const all = parts.engine.names.map((_, c) => c);
  return {
    plugV: all.map((c) => needOf(parts, regime, c)),
    exhaustV: parts.plugs.map(({ gapM }) => uniformBreakdown({ gapM, ...EXHAUST_STROKE })),
    coilV: parts.coils.map(({ strength }) => coilVolts({ ...parts, strength }, regime.supplyV)),
    arcV: all.map((c) => arcOf(parts, regime, c)),
    breakV: all.map(
      (c) =>
        pathsOf(parts, c).reduce((sum, { breakV }) => sum + breakV, 0) *
        (1 + SHAKEN_BREAK * regime.shaking),
    ),
    shuntOhm: parts.plugs.map(({ shuntOhm }) => shuntOhm * burntOff(regime.noseC)),
  };
}

/** What heat does to soot: from 450 °C up (plug makers' pages) less and less of it conducts. */
function burntOff(noseC: number): number {
  return Math.exp(Math.max(0, noseC - CLEANING_C) / CLEANING_STEP_K);
}

function needOf(parts: SimulatedEngine, regime: SimulatedRegime, c: number): number {
  const plug = parts.plugs[c];
  if (!plug) return 0;
  const gas = sparkGas(regime, sealedShare(parts, c, regime));
  const [least, most] = ENGINE_RANGE.gapM;
  const gapM = Math.min(most, Math.max(least, plug.gapM));
  const isReversed = parts.reversed[c] ?? false;
  const [low, high] = plugDemand({ gapM, ...gas }, { isReversed });
  return ((low + high) / 2) * (plug.gapM / gapM) ** 0.8 * plug.edge;
}

/** A coil with what feeds it. */
export interface FedCoil {
  readonly energyJ: number;
  readonly capacitanceF: number;
  /** Energy against a sound coil at the same current. */
  readonly strength: number;
  /** Resistance in the feed beyond the usual. */
  readonly feedOhm: number;
}

/** The highest voltage that a coil can give at a voltage of the battery, V. */
export function coilVolts(coil: FedCoil, supplyV: number): number {
  const loop = { ...PRIMARY, supplyV, loopOhm: PRIMARY.loopOhm + coil.feedOhm };
  const current = chargingCurrent(loop, DWELL_S) / chargingCurrent(PRIMARY, DWELL_S);
  // Below rated voltage the dwell is made longer, which wins most of the loss back.
  const held = supplyV < 13 ? Math.min(1, current * 1.25) : Math.min(1, current);
  return availableVolts({
    energyJ: coil.energyJ * coil.strength * held ** 2,
    efficiency: EFFICIENCY,
    capacitanceF: coil.capacitanceF,
  });
}

function pathsOf(parts: SimulatedEngine, c: number): readonly SimulatedPath[] {
  return [parts.plugs, parts.boots, parts.leads, parts.towers, parts.coilLegs].flatMap(
    (list) => list[c] ?? [],
  );
}

function arcOf(parts: SimulatedEngine, { damp, warmth }: SimulatedRegime, c: number): number {
  const paths = [...pathsOf(parts, c), parts.rotor].map(
    ({ arcV, wetShare }) => arcV * (1 - damp * (1 - wetShare)),
  );
  // A hot head dries its wells; splash fills them again.
  const water = (parts.wellWater[c] ?? 0) * Math.max(damp, 1 - 1.2 * warmth);
  const flooded = water > 0.05 ? FLOODED_ARC_V / water : Infinity;
  return Math.min(flooded, ...paths);
}

/** By cylinder: true when its plug sparks at its own firing point in this cycle. */
export function sparksIn(
  parts: SimulatedEngine,
  needs: SparkNeeds,
  isOff: (coil: number) => boolean,
  random: Random,
): readonly boolean[] {
  return parts.engine.names.map((_, c) => {
    const coil = parts.engine.groupOf[c] ?? 0;
    if (isOff(coil)) return false;
    const spread = 1 + CYCLE_SPREAD * random.normal();
    const volts = needs.coilV[coil] ?? 0;
    const pair = pairOf(parts, needs, c, spread);
    return pair
      ? seriesPair(pair.legs, volts).sparks[0]
      : singleSpark(parts, needs, c, volts, spread);
  });
}

function singleSpark(
  parts: SimulatedEngine,
  needs: SparkNeeds,
  c: number,
  coilV: number,
  spread: number,
): boolean {
  const rotor = parts.engine.ignition === "distributor" ? ROTOR_GAP_V + parts.rotor.breakV : 0;
  const plugV = (needs.plugV[c] ?? 0) * spread;
  const neededV = plugV + (needs.breakV[c] ?? 0) + rotor;
  return neededV <= shunted(parts, needs, c, coilV) && plugV <= (needs.arcV[c] ?? 0);
}

/** A double coil at the moment at which one of its cylinders is to fire. */
export interface FiringPair {
  /** The cylinder that is to fire, and the one whose plug sparks into exhaust. */
  readonly cylinders: readonly [number, number];
  readonly legs: readonly [Leg, Leg];
}

/** Both legs when a cylinder is to fire; `undefined` when it has a coil of its own. */
export function pairOf(
  parts: SimulatedEngine,
  needs: SparkNeeds,
  c: number,
  spread = 1,
): FiringPair | undefined {
  const { engine } = parts;
  const coil = engine.groupOf[c] ?? 0;
  const other = engine.groups[coil]?.find((each) => each !== c);
  if (other === undefined || !firesInPairs(engine.ignition)) return undefined;
  const coilV = needs.coilV[coil] ?? 0;
  const own = legOf(parts, needs, c, (needs.plugV[c] ?? 0) * spread, coilV);
  const companion = legOf(parts, needs, other, needs.exhaustV[other] ?? 0, coilV);
  return { cylinders: [c, other], legs: [own, companion] };
}

function legOf(
  parts: SimulatedEngine,
  needs: SparkNeeds,
  c: number,
  plugV: number,
  coilV: number,
): Leg {
  const breakV = needs.breakV[c] ?? 0;
  const leaks = plugV > (needs.arcV[c] ?? Infinity);
  // Soot drains the swing before the gap breaks; the current then flows without a spark. Past a clean nose
  // nothing flows, however far the coil falls short.
  const reachedV = shunted(parts, needs, c, coilV);
  const drains = reachedV < coilV && plugV > reachedV;
  if (leaks || drains) return { plugV, state: "shorted" };
  if (breakV === 0) return { plugV, state: "sound" };
  return Number.isFinite(breakV) ? { plugV, state: "open", breakV } : { plugV, state: "open" };
}

function shunted(parts: SimulatedEngine, needs: SparkNeeds, c: number, coilV: number): number {
  const shunt = needs.shuntOhm[c] ?? Infinity;
  if (shunt === Infinity) return coilV;
  // With all of its energy in the capacitance: E = ½CV².
  const energyJ = 0.5 * parts.capacitanceF * coilV ** 2;
  return availableVolts({ energyJ, capacitanceF: parts.capacitanceF }, shunt);
}
