// What does the control unit store after the drive? Misfire codes and lamp by the windows of the monitor,
// circuit codes where a circuit is open, mixture codes where a trim is at its end.
import type { Random } from "../units/random.ts";
import {
  CATALYST_WINDOW,
  EMISSION_WINDOW,
  exceedsLimit,
  firingEvents,
  type MonitorWindow,
  misfireCodes,
} from "./monitor.ts";
import type { SimulatedDrive } from "./simulated-drive.ts";
import type { SimulatedEngine } from "./simulated-engine.ts";
import { SIMULATED_REGIME_NAMES, type SimulatedRegimeName } from "./simulated-regime.ts";

/** What a reader and the dashboard show. */
export interface SimulatedCodes {
  readonly codes: readonly string[];
  readonly lamp: "off" | "steady" | "blinking" | "blinked-then-steady";
  /** Regime in which the first code was set. */
  readonly frame?: SimulatedRegimeName;
  /** Misses as the unit counted them, by cylinder. */
  readonly counts: readonly number[];
}

/** A control unit: makers set limits above the floors, and not all test their circuits. */
interface Unit {
  readonly emissionLimit: number;
  readonly catalystLimit: number;
  readonly namesCylinders: boolean;
  readonly testsCoils: boolean;
  readonly testsInjectors: boolean;
}

/** Misses seen as the next cylinder's, and those not seen at all: small by published work on crank speed. */
const TAKEN_FOR_NEXT = 0.02;
const UNSEEN = 0.03;
const TRIM_END = 0.2;
const CIRCUIT_SHARE = 0.02;

/** The first seconds after a start are shorter than any window. */
export const COUNTED_REGIMES: readonly SimulatedRegimeName[] = SIMULATED_REGIME_NAMES.filter(
  (name) => name !== "coldStart" && name !== "hotRestart",
);

/** Codes, lamp and counts of a drive. */
export function storeCodes(
  parts: SimulatedEngine,
  drive: SimulatedDrive,
  random: Random,
): SimulatedCodes {
  const unit: Unit = {
    emissionLimit: 0.01 + 0.015 * random.uniform(),
    catalystLimit: 0.05 + 0.1 * random.uniform(),
    namesCylinders: random.uniform() < 0.7,
    testsCoils: random.uniform() < 0.5,
    testsInjectors: random.uniform() < 0.75,
  };
  const counted = COUNTED_REGIMES.map((name) => ({
    name,
    misses: seen(parts, drive[name].misses, random),
    cycles: drive[name].cycles,
  }));
  const over = (window: MonitorWindow, limit: number): typeof counted =>
    counted.filter(({ misses, cycles }) => {
      const n = parts.engine.names.length;
      const inWindow = (sum(misses) / (cycles * n)) * firingEvents(n, window.revolutions);
      return exceedsLimit(inWindow, n, window, limit);
    });
  const emission = over(EMISSION_WINDOW, unit.emissionLimit);
  const catalyst = over(CATALYST_WINDOW, unit.catalystLimit);
  const counts = parts.engine.names.map((_, c) =>
    sum(emission.map(({ misses }) => misses[c] ?? 0)),
  );
  const verdict = misfireCodes(counts);
  const optional = unit.namesCylinders || verdict.rule === "one" ? verdict.optional : [];
  // The window fills first where most strokes are lost.
  const losses = emission.map(({ misses }) => sum(misses));
  const frame = losses.length > 0 ? emission[random.choice(losses)]?.name : undefined;
  return {
    codes: [
      ...verdict.codes,
      ...(verdict.rule === "several" ? optional : []),
      ...circuitCodes(parts, drive, unit),
      ...mixtureCodes(drive),
    ],
    lamp: lampOf(emission.length, catalyst.length, random),
    ...(frame ? { frame } : {}),
    counts: parts.engine.names.map((_, c) => sum(counted.map(({ misses }) => misses[c] ?? 0))),
  };
}

/** Steady after the second trip with the fault; blinks while a window is bad for the catalyst. */
function lampOf(emission: number, catalyst: number, random: Random): SimulatedCodes["lamp"] {
  if (emission === 0) return "off";
  const isConfirmed = random.uniform() < 0.85;
  if (catalyst >= 4) return "blinking";
  if (catalyst > 0) return "blinked-then-steady";
  return isConfirmed ? "steady" : "off";
}

function seen(
  { engine }: SimulatedEngine,
  misses: readonly number[],
  random: Random,
): readonly number[] {
  const counts = misses.map(() => 0);
  misses.forEach((count, c) => {
    const next = engine.order[(engine.order.indexOf(c) + 1) % engine.order.length] ?? c;
    for (let i = 0; i < count; i++) {
      const u = random.uniform();
      if (u < UNSEEN) continue;
      const as = u < UNSEEN + TAKEN_FOR_NEXT ? next : c;
      counts[as] = (counts[as] ?? 0) + 1;
    }
  });
  return counts;
}

function circuitCodes(
  parts: SimulatedEngine,
  drive: SimulatedDrive,
  unit: Unit,
): readonly string[] {
  const codes: string[] = [];
  if (unit.testsCoils) {
    parts.controls.forEach(({ still, shaken }, g) => {
      if (still + 0.1 * shaken > CIRCUIT_SHARE) codes.push(`P03${51 + Math.min(g, 11)}`);
    });
  }
  if (unit.testsInjectors) {
    parts.injectors.forEach(({ isOpen }, c) => {
      if (isOpen) codes.push(`P02${String(c + 1).padStart(2, "0")}`);
    });
  }
  if (parts.crankOffHot > 0.04 && drive.hotIdle.blackout + drive.cruise.blackout > 0.05) {
    codes.push("P0335");
  }
  return codes;
}

function mixtureCodes(drive: SimulatedDrive): readonly string[] {
  const trims = [drive.hotIdle.mixture.trim, drive.cruise.mixture.trim];
  if (trims.some((trim) => trim > TRIM_END)) return ["P0171"];
  return trims.some((trim) => trim < -TRIM_END) ? ["P0172"] : [];
}

function sum(list: readonly number[]): number {
  return list.reduce((a, b) => a + b, 0);
}
