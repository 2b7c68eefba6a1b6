// Does a cylinder hold a charge that burns? Its mixture from dose, drips and unmetered air, and what leaks
// leave of its compression.

import { IDLING_SIX } from "./crank-torque.ts";
import { chargeAt, type GasState } from "./cylinder.ts";
import type { SimulatedEngine } from "./simulated-engine.ts";
import type { SimulatedRegime } from "./simulated-regime.ts";

const ATMOSPHERE_PA = 101_325;
const AIR_K = 293;
const GAS_CONSTANT = 287;
/** √κ·(2/(κ+1))^((κ+1)/(2κ−2))/√R of air: choked mass flow is this × area × pressure/√T. */
const CHOKED = 0.0404;
const CRITICAL_RATIO = 0.528;
const DISCHARGE = 0.6;
const SWEPT_M3 = 0.5e-3;
const FILLING = 0.85;
const STOICHIOMETRIC = 14.7;
/** Share of a runner's leak that its own cylinder draws; the rest goes to the plenum. */
const OWN_RUNNER_SHARE = 0.75;
/** Most that a trim can add or take. */
const TRIM_LIMIT = 0.25;
const SPARK_DEG = -15;
const RAIL_KG = 3e-3;

/** Mixture and trim of one regime. */
export interface SimulatedMixture {
  /** By cylinder: mean of air over what burning needs; `Infinity` without fuel. */
  readonly lambda: readonly number[];
  /** By cylinder: fuel against a sound cylinder. */
  readonly fuel: readonly number[];
  /** What the control unit adds, −0.25..0.25. */
  readonly trim: number;
  /** Air over what all fuel needs, in the whole exhaust. */
  readonly exhaust: number;
}

/** Air that leaks into the intake through an area, kg/s; choked while the vacuum is deep. */
export function leakedAir(areaM2: number, intakePa: number): number {
  const ratio = intakePa / ATMOSPHERE_PA;
  const subsonic =
    ratio <= CRITICAL_RATIO
      ? 1
      : Math.sqrt(Math.max(0, 1 - ((ratio - CRITICAL_RATIO) / (1 - CRITICAL_RATIO)) ** 2));
  return (DISCHARGE * areaM2 * ATMOSPHERE_PA * CHOKED * subsonic) / Math.sqrt(AIR_K);
}

/** Air that one cylinder draws, kg/s. */
function drawnAir({ intakePa, rpm, chargeK }: SimulatedRegime): number {
  return ((SWEPT_M3 * FILLING * intakePa) / (GAS_CONSTANT * chargeK)) * (rpm / 120);
}

/** The mixture of every cylinder with a trim. */
export function mixtureIn(
  parts: SimulatedEngine,
  regime: SimulatedRegime,
  trim: number,
): SimulatedMixture {
  const own = drawnAir(regime);
  const leaks = parts.cylinders.map(({ runnerM2 }) => leakedAir(runnerM2, regime.intakePa));
  const common =
    leakedAir(parts.hoseM2, regime.intakePa) +
    leaks.reduce((a, b) => a + b, 0) * (1 - OWN_RUNNER_SHARE);
  const share = common / parts.cylinders.length;
  const pressure = pressureShare(parts, regime);
  const fuel = parts.injectors.map(
    ({ dose, leakKgS }) =>
      (dose * pressure * (1 + trim)) / regime.lambda +
      ((leakKgS + puddle(leakKgS, regime)) * STOICHIOMETRIC) / own,
  );
  const lambda = leaks.map((leak, c) => {
    const air = 1 + (share + leak * OWN_RUNNER_SHARE) / own;
    return (fuel[c] ?? 0) > 0 ? air / (fuel[c] ?? 0) : Number.POSITIVE_INFINITY;
  });
  const air = 1 + (share + mean(leaks) * OWN_RUNNER_SHARE) / own;
  return { lambda, fuel, trim, exhaust: air / mean(fuel) };
}

/** What dripped in while the engine stood, drawn in over the stretch, kg/s. The rail holds no more. */
function puddle(leakKgS: number, { soakS = 0, cycles, rpm }: SimulatedRegime): number {
  return Math.min(leakKgS * soakS, RAIL_KG) / ((cycles * 120) / rpm);
}

/**
 * The trim a moment later. What did not burn reaches the sensor: all of its oxygen, but only half of its fuel
 * finds partners there (the share is from memory), so misses look lean.
 */
export function trimmed(
  { trim, fuel, exhaust }: SimulatedMixture,
  missShare: readonly number[],
): number {
  const unseen = mean(fuel.map((f, c) => 0.5 * Math.min(1, f) * (missShare[c] ?? 0)));
  const next = trim + 0.6 * (exhaust - 1 + unseen);
  return Math.max(-TRIM_LIMIT, Math.min(TRIM_LIMIT, next));
}

/** Dose goes with the root of the pressure; a tired pump gives way as flow grows. */
function pressureShare(parts: SimulatedEngine, regime: SimulatedRegime): number {
  const demand = (regime.intakePa * regime.rpm) / (97e3 * 1900);
  const droop = Math.min(1, parts.pumpFlow / Math.max(demand, 1e-3));
  return Math.sqrt(parts.fuelPressure) * droop;
}

/**
 * What leaks leave of a cylinder's charge when it is squeezed, 0..1. The share lost a second does not depend
 * on pressure: flow and content both grow with it. Rings seal better hot.
 */
export function sealedShare(
  parts: SimulatedEngine,
  cylinder: number,
  { rpm, warmth }: { readonly rpm: number; readonly warmth: number },
): number {
  const { valveM2 = 0, ringM2 = 0 } = parts.cylinders[cylinder] ?? {};
  const gasket = parts.gaskets
    .filter(({ pair }) => pair.includes(cylinder))
    .reduce((sum, { areaM2 }) => sum + areaM2, 0);
  const area = valveM2 + gasket + ringM2 * (1.4 - 0.4 * warmth);
  // Mean volume during the squeeze is about two fifths of the swept one.
  const seconds = 30 / rpm;
  const rate = (DISCHARGE * area * CHOKED * GAS_CONSTANT * Math.sqrt(400)) / (0.4 * SWEPT_M3);
  return Math.exp(-rate * seconds);
}

/** Pressure and heat at the moment of the spark. */
export function sparkGas(regime: SimulatedRegime, sealed: number): GasState {
  const charge = { pressurePa: regime.intakePa, temperatureK: regime.chargeK };
  const gas = chargeAt(IDLING_SIX.geometry, charge, SPARK_DEG);
  return { pressurePa: gas.pressurePa * sealed, temperatureK: gas.temperatureK };
}

function mean(list: readonly number[]): number {
  return list.reduce((a, b) => a + b, 0) / list.length;
}
