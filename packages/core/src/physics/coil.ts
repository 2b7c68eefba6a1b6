// How long does a coil need to charge, how long does it have, and what voltage can it then give?
import type { IgnitionKind } from "../engine/profile.ts";

/** The loop that charges a coil: battery, driver, harness and primary winding. */
export interface PrimaryLoop {
  readonly supplyV: number;
  /** All resistance of the loop. */
  readonly loopOhm: number;
  readonly inductanceH: number;
}

/** The high-voltage side when the charging current is cut. */
export interface Secondary {
  /** Energy stored in the coil. */
  readonly energyJ: number;
  /** Share of it that reaches the winding and its capacitance; 1 unless given. */
  readonly efficiency?: number;
  /** Winding, cable and plug together; 40 to 60 pF for a coil on the plug, 60 to 120 pF with cables
   * (from memory). */
  readonly capacitanceF: number;
  /** Secondary inductance; 10 to 40 H (from memory). Only a leak makes it matter. */
  readonly inductanceH?: number;
}

/** What turns a coil and how fast. */
export interface CoilDuty {
  readonly ignition: IgnitionKind;
  readonly cylinders: number;
  readonly rpm: number;
}

/** How much of the time between sparks a coil charges. */
export interface Dwell {
  /** Distributor: share of the time between sparks; 38° of 60° unless given (a German encyclopedia on
   * the dwell angle of six cylinders). */
  readonly share?: number;
  /** Coils of their own: how long the spark burns before charging can start again, s. */
  readonly sparkS?: number;
}

const TYPICAL_SHARE = 38 / 60;
const DEFAULT_INDUCTANCE_H = 20;

/** Primary current, A, after charging for so many seconds: V/R·(1 − exp(−Rt/L)). */
export function chargingCurrent(loop: PrimaryLoop, seconds: number): number {
  return finalCurrent(loop) * -Math.expm1(-seconds / timeConstant(loop));
}

/** Current at which the resistance alone stops the rise, A. */
export function finalCurrent({ supplyV, loopOhm }: PrimaryLoop): number {
  return supplyV / loopOhm;
}

/** L/R, s: after this the current has come to 63 %. */
export function timeConstant({ loopOhm, inductanceH }: PrimaryLoop): number {
  return inductanceH / loopOhm;
}

/** Seconds to charge to a current, A; `undefined` when the loop can never carry it. */
export function chargingTime(loop: PrimaryLoop, currentA: number): number | undefined {
  const share = currentA / finalCurrent(loop);
  return share < 1 ? -timeConstant(loop) * Math.log1p(-share) : undefined;
}

/** Energy in the field of a winding, J: ½·L·i². */
export function storedEnergy(inductanceH: number, currentA: number): number {
  return 0.5 * inductanceH * currentA ** 2;
}

/** Voltage across a winding whose current changes by so much in so many seconds, V. */
export function inducedVolts(inductanceH: number, changeA: number, seconds: number): number {
  return (inductanceH * changeA) / seconds;
}

/** Seconds that a distributor's contacts stay shut for a dwell in degrees of the half-speed shaft. */
export function distributorDwell(dwellDeg: number, rpm: number): number {
  return dwellDeg / (3 * rpm);
}

/**
 * Seconds between two sparks of one coil: a distributor's serves every cylinder, a double coil fires
 * every turn, a coil of its own every second turn.
 */
export function sparkPeriod({ ignition, cylinders, rpm }: CoilDuty): number {
  switch (ignition) {
    case "distributor":
      return 120 / (cylinders * rpm);
    case "pack":
    case "rail":
    case "hybrid":
      return 60 / rpm;
    case "coil-per-plug":
      return 120 / rpm;
  }
}

/** Seconds that a coil has to charge before each spark; 0 when the spark outlasts the period. */
export function dwellTime(duty: CoilDuty, dwell: Dwell = {}): number {
  const period = sparkPeriod(duty);
  if (duty.ignition === "distributor") return period * (dwell.share ?? TYPICAL_SHARE);
  return Math.max(0, period - (dwell.sparkS ?? 0));
}

/**
 * Highest voltage the secondary can reach when nothing sparks, V. All energy goes into the capacitance,
 * √(2E/C), less what runs off through a resistance across the plug (soot, a leak), ohm. Exact for a
 * lossless winding that rings into its capacitance with that resistance across it.
 */
export function availableVolts(secondary: Secondary, leakOhm?: number): number {
  const { energyJ, efficiency = 1, capacitanceF } = secondary;
  const free = Math.sqrt((2 * efficiency * energyJ) / capacitanceF);
  return leakOhm === undefined ? free : free * ringShare(damping(secondary, leakOhm));
}

/** Damping of the ringing secondary by a leak, ohm: √(L/C)/(2R); 1 is critical. */
export function damping(
  { capacitanceF, inductanceH = DEFAULT_INDUCTANCE_H }: Secondary,
  leakOhm: number,
): number {
  return Math.sqrt(inductanceH / capacitanceF) / (2 * leakOhm);
}

/**
 * First peak of the damped swing against the undamped one: exp(−ζ·acos ζ/√(1−ζ²)), and with acosh
 * above critical damping.
 */
function ringShare(ζ: number): number {
  // Both branches come to 1 here, but as 0/0.
  if (Math.abs(ζ - 1) < 1e-9) return Math.exp(-1);
  if (ζ < 1) return Math.exp((-ζ * Math.acos(ζ)) / Math.sqrt(1 - ζ * ζ));
  return ζ === Number.POSITIVE_INFINITY ? 0 : Math.exp((-ζ * Math.acosh(ζ)) / Math.sqrt(ζ * ζ - 1));
}
