// What would one see, measure or try on the broken engine? Answers on demand, read off the parts.
import { CYLINDER_BENCH, ENGINE_BENCH } from "./simulated-bench.ts";
import { sealedShare } from "./simulated-charge.ts";
import type { SimulatedCodes } from "./simulated-code.ts";
import type { SimulatedEngine, SimulatedPath } from "./simulated-engine.ts";
import { lookOf } from "./simulated-plug-look.ts";
import { SIMULATED_REGIMES } from "./simulated-regime.ts";
import { lost, type SimulatedFinding, smell } from "./simulated-sense.ts";
import { sparkNeeds } from "./simulated-spark.ts";
import type { CylinderLook, EngineLook, SimulatedState } from "./simulated-state.ts";
import { CYLINDER_SWAPS, ENGINE_SWAPS } from "./simulated-swap.ts";

const CRANKING = { rpm: 250, warmth: 1 };
const HIGHEST_KPA = 1250;
/** A tester's gap: what sound secondaries jump with ease (from memory, 20 to 25 kV). */
const TESTER_V = 21e3;
const OPEN_BREAK_V = 14e3;

/** Looks at the whole engine. */
const ENGINE_LOOKS: Readonly<Record<string, EngineLook>> = {
  counts: ({ parts, codes }) =>
    Object.fromEntries(parts.engine.names.map((name, c) => [String(name), codes.counts[c] ?? 0])),
  codes: ({ codes }) => codes.codes,
  "trim.idle": ({ drive }) => Math.round(100 * drive.hotIdle.mixture.trim),
  "trim.speed": ({ drive }) => Math.round(100 * drive.cruise.mixture.trim),
  "manifold-pressure": ({ parts, drive }) => {
    if (parts.gaskets.length > 0 || parts.cylinders.some((c) => c.valveM2 > 4e-6))
      return "swinging";
    const isHigh = parts.hoseM2 > 12e-6 || lost(drive.hotIdle) > 0.2;
    return isHigh ? "high" : "normal";
  },
  "coolant-reading": () => "plausible",
  voltage: () => 14.2,
  supply: ({ parts }) => (parts.feedOhm > 0.15 ? ["feed"] : []),
  cranking: ({ parts }) => {
    const sealed = parts.engine.names.map((_, c) => sealedShare(parts, c, CRANKING));
    const weak = sealed.filter((s) => s < 0.75 * Math.max(...sealed)).length;
    return (["even", "one-weak", "two-weak"] as const)[Math.min(2, weak)];
  },
  "fuel-pressure": ({ parts }) => {
    // Falls under load where the pump gives less than full load takes.
    if (parts.fuelPressure < 0.88 || parts.pumpFlow < 1) return "low";
    return parts.injectors.some(({ leakKgS }) => leakKgS > 0.04e-3) ? "bleeds-down" : "in-limit";
  },
  "intake-leak": ({ parts }) => [
    ...(parts.cylinders.some(({ runnerM2 }) => runnerM2 > 0) ? ["runner"] : []),
    ...(parts.hoseM2 > 0 ? ["hose"] : []),
  ],
  sound: ({ parts }) => [
    ...(arcsAtIdle(parts).length > 0 ? ["spark-tick"] : []),
    ...(leakM2(parts) > 2e-6 ? ["hiss"] : []),
  ],
  "dark-look": ({ parts }) => (arcsAtIdle(parts).some((c) => isOutside(parts, c)) ? "yes" : "no"),
  mist: ({ parts, drive, random }) => {
    // Mist makes the damp of the wet stretch at idle; wells stay closed to it.
    const wet = parts.engine.names.some(
      (_, c) =>
        isOutside(parts, c) &&
        (wetArc(parts, c) < idleNeed(parts, c) * 1.05 || (drive.wet.share[c] ?? 0) > 0.2),
    );
    return wet && random.uniform() < 0.95 ? "yes" : "no";
  },
  "wells-dried": ({ parts }) => (parts.wellWater.some((w) => w > 0) ? "yes" : "no"),
  wiggle: ({ parts }) => [
    ...(parts.connectorLock.some((lock) => lock !== "clicks") ? ["coil-connector"] : []),
    ...(parts.controls.some(({ still, shaken }) => shaken > 0.1 && still < 1) &&
    parts.connectorLock.every((lock) => lock === "clicks")
      ? ["harness"]
      : []),
  ],
  smell: ({ drive, random }) => smell(drive, random),
  smoke: ({ parts, drive }) => [
    ...(drive.hotIdle.mixture.fuel.some((fuel) => fuel > 1.5) ? ["black"] : []),
    ...(parts.cylinders.some(({ ringM2 }) => ringM2 > 6e-6) ? ["blue"] : []),
  ],
  "oil.use": ({ parts }) => (parts.cylinders.some((c) => c.ringM2 > 6e-6) ? "much" : "none"),
  coolant: () => "no",
  "fuel.story": () => "normal",
  "plug.type": () => "listed",
  "lead.order": () => "right",
  tachometer: ({ parts }) => (parts.crankOffHot > 0 ? "yes" : "no"),
  "meter-unplugged": () => "no",
  "regime.electrics": ({ parts }) => (parts.feedOhm > 0.5 ? "yes" : "no"),
  "regime.gear": () => "same",
  "regime.air-conditioner": () => "no",
  "exhaust.paper": ({ parts, drive }) => {
    if (parts.cylinders.some((c) => c.valveM2 > 4e-6 && c.leaksTo === "exhaust"))
      return "drawn-back";
    return drive.hotIdle.share.some((s) => s > 0.4) ? "flutter" : "steady";
  },
  "cap.look": ({ parts }) => [
    ...(parts.towers.some(({ arcV }) => arcV < Infinity) ? ["cap"] : []),
    ...(parts.rotor.arcV < Infinity ? ["rotor"] : []),
  ],
  "codes.frame": ({ codes }) => frameOf(codes),
  lamp: ({ codes }) => codes.lamp,
  ...ENGINE_SWAPS,
  ...ENGINE_BENCH,
};

/** Looks at one cylinder or the coil that fires it. */
const CYLINDER_LOOKS: Readonly<Record<string, CylinderLook>> = {
  "plug.look": ({ parts, drive }, c) => lookOf(parts, drive, c),
  "plug.damage": ({ parts }, c) => parts.plugs[c]?.mark,
  "plug.gap": ({ parts }, c) => Math.round(1e5 * (parts.plugs[c]?.gapM ?? 0)) / 100,
  "well.look": ({ parts }, c) => ((parts.wellWater[c] ?? 0) > 0 ? "water" : "dry"),
  "boot.look": ({ parts }, c) => {
    const boot = parts.boots[c];
    if (boot && boot.arcV < Infinity) return boot.wetShare < 0.5 ? "track" : "burn";
    if (boot && boot.breakV > 0) return parts.bootHigh[c] ? "fine" : "spring";
    // The burnt line on the plug prints itself into the boot.
    return parts.plugs[c]?.mark === "track" ? "track" : "fine";
  },
  "boot.seat": ({ parts }, c) => (parts.bootHigh[c] ? "high" : "home"),
  "tower.look": ({ parts }, c) => ((parts.towers[c]?.arcV ?? 0) < Infinity ? "cracked" : "fine"),
  "connector.lock": ({ parts }, c) => parts.connectorLock[connectorOf(parts, c)] ?? "clicks",
  "connector.push": ({ parts }, c) =>
    (parts.connectorLock[connectorOf(parts, c)] ?? "clicks") === "clicks" ? "no-change" : "cured",
  "coil.look": ({ random }) => (random.uniform() < 0.04 ? "cracked" : "fine"),
  spark: sparkOf,
  trigger: ({ parts }, c) => {
    const g = parts.engine.groupOf[c] ?? 0;
    const { still = 0 } = parts.controls[g] ?? {};
    return still > 0.9 ? "dark" : "flashes";
  },
  "injector.tick": ({ parts }, c) => ((parts.injectors[c]?.dose ?? 1) > 0 ? "ticks" : "silent"),
  "injector.lamp": () => "blinks",
  "injector.resistance": ({ parts }, c) => (parts.injectors[c]?.isOpen ? "off" : "equal"),
  "injector.cut": () => "no",
  "lead.resistance": ({ parts }, c) => {
    const { breakV = 0 } = parts.leads[c] ?? {};
    if (breakV === 0) return "equal";
    return breakV > OPEN_BREAK_V ? "open" : "high";
  },
  compression: ({ parts }, c) => Math.round(HIGHEST_KPA * sealedShare(parts, c, CRANKING)),
  "compression.wet": ({ parts }, c) =>
    (parts.cylinders[c]?.ringM2 ?? 0) > 2e-6 ? "rises" : "no-rise",
  ...CYLINDER_SWAPS,
  ...CYLINDER_BENCH,
};

/** The answer to a finding at a cylinder, or of the whole engine; `undefined` when it cannot be seen. */
export function observe(
  state: SimulatedState,
  finding: string,
  cylinder?: number,
): SimulatedFinding["answer"] | undefined {
  const ofEngine = ENGINE_LOOKS[finding];
  if (ofEngine) return ofEngine(state);
  return cylinder === undefined ? undefined : CYLINDER_LOOKS[finding]?.(state, cylinder);
}

/** What the unit keeps as the state in which the first code was set. */
export function frameOf({ frame }: SimulatedCodes): string | undefined {
  switch (frame) {
    case undefined:
      return undefined;
    case "coldStart":
    case "coldIdle":
      return "cold-idle";
    case "hotIdle":
      return "warm-idle";
    case "pull":
      return "pull";
    default:
      return "cruise";
  }
}

function connectorOf(parts: SimulatedEngine, c: number): number {
  return parts.engine.connectors.findIndex(({ cylinders }) => cylinders.includes(c));
}

function leakM2(parts: SimulatedEngine): number {
  return parts.hoseM2 + parts.cylinders.reduce((sum, { runnerM2 }) => sum + runnerM2, 0);
}

function outsidePaths(parts: SimulatedEngine, c: number): readonly (SimulatedPath | undefined)[] {
  return [parts.boots[c], parts.leads[c], parts.towers[c], parts.plugs[c]];
}

/** True when the leak of a cylinder's path lies where eyes and water get to it. */
function isOutside(parts: SimulatedEngine, c: number): boolean {
  const { mark } = parts.plugs[c] ?? {};
  return outsidePaths(parts, c).some(
    (path) =>
      path !== undefined && path.arcV < Infinity && (path !== parts.plugs[c] || mark === "track"),
  );
}

function wetArc(parts: SimulatedEngine, c: number): number {
  return Math.min(...outsidePaths(parts, c).map((p) => (p ? p.arcV * p.wetShare : Infinity)));
}

function idleNeed(parts: SimulatedEngine, c: number): number {
  return sparkNeeds(parts, SIMULATED_REGIMES.hotIdle).plugV[c] ?? 0;
}

/** Cylinders whose leak arcs, or whose break is jumped, at idle, revved up now and then. */
function arcsAtIdle(parts: SimulatedEngine): readonly number[] {
  const needs = sparkNeeds(parts, SIMULATED_REGIMES.hotIdle);
  return parts.engine.names.flatMap((_, c) => {
    const arc = Math.min(...outsidePaths(parts, c).map((p) => p?.arcV ?? Infinity));
    return arc < 1.3 * (needs.plugV[c] ?? 0) || (needs.breakV[c] ?? 0) > 3000 ? [c] : [];
  });
}

/**
 * A tester in place of the plug, engine cranking: coil, cap and cable count, and a boot's contact unless it
 * only sat badly on the plug. The plug, and a boot that leaks to its well, are out of it.
 */
function sparkOf({ parts }: SimulatedState, c: number): string {
  const { engine } = parts;
  const g = engine.groupOf[c] ?? 0;
  const coil = parts.coils[g];
  const control = parts.controls[g];
  if ((control?.still ?? 0) > 0.9 || (coil?.offCold ?? 0) > 0.9) return "none";
  const needs = sparkNeeds(parts, SIMULATED_REGIMES.hotIdle);
  const upstream = [parts.leads[c], parts.towers[c], parts.coilLegs[c], parts.rotor];
  const arc = Math.min(...upstream.map((path) => path?.arcV ?? Infinity));
  const contact = parts.bootHigh[c] ? 0 : (parts.boots[c]?.breakV ?? 0);
  const open = upstream.reduce((sum, path) => sum + (path?.breakV ?? 0), contact);
  const volts = Math.min(arc, (needs.coilV[g] ?? 0) - open);
  if (volts > TESTER_V) return "strong";
  return volts > 7e3 ? "weak" : "none";
}
