// What do meter, scope, gauges and longer trials show on the broken engine? Read off the parts.
import { leakage } from "./leak.ts";
import { RESISTANCE_RANGES } from "./resistance.ts";
import { leakedAir, sealedShare } from "./simulated-charge.ts";
import { silentShare } from "./simulated-drive.ts";
import type { SimulatedControl, SimulatedEngine, SimulatedPath } from "./simulated-engine.ts";
import { SIMULATED_REGIMES } from "./simulated-regime.ts";
import { coilVolts, sparkNeeds } from "./simulated-spark.ts";
import type { CylinderLook, EngineLook, SimulatedState } from "./simulated-state.ts";

/** A path that breaks down this low has burnt to carbon, which a meter sees (our estimate). */
const CARBONISED_V = 9e3;
/** Orifice of a leak-down tester: one millimetre across. */
const ORIFICE_M2 = 0.785e-6;
const ATMOSPHERE_PA = 101_325;
/** The widest gap that a tester's guide allows asks for nearly all of a sound coil (our estimate). */
const STRESS_SHARE = 0.8;
/** Energy of a sound coil, against which one with shorted turns ramps oddly. */
const WEAK = 0.75;
/** Ohms in the feed that flatten the ramp of the current. */
const FLAT_OHM = 0.3;
/** Part of the cycles in which something is missing before a watcher of a minute sees it. */
const SEEN = 0.02;

export const ENGINE_BENCH: Readonly<Record<string, EngineLook>> = {
  // At full throttle the sensor is not listened to; on a climb the trim is read.
  "trim.load": ({ drive }) => Math.round(100 * drive.climb.mixture.trim),
  restart: ({ parts }) => {
    const cools = parts.coils.some(({ offCold, offHot }) => offHot > 0.3 && offCold < 0.3 * offHot);
    return cools || parts.crankOffHot > 0.04 ? "after-cooling" : "no-change";
  },
  "oil-cap": ({ parts }) => (parts.cylinders.some((c) => c.ringM2 > 6e-6) ? "pulsing" : "normal"),
  // One of the hoses goes to the servo; its membrane leaks in one of five cases (our estimate).
  "brake-pedal": ({ parts, random }) => (parts.hoseM2 > 0 && random.uniform() < 0.2 ? "yes" : "no"),
  // Nothing of these is ever broken here.
  command: () => [],
  "fuel.sample": () => "clear",
  "coolant.gas": () => "no",
  "back-pressure": () => 3,
  "timing.mark": ({ parts }) => (parts.crankOffHot > 0.05 ? "jumps" : "steady"),
  "crank-signal": ({ parts }) => (parts.crankOffHot > 0 ? "drops-out" : "fine"),
};

export const CYLINDER_BENCH: Readonly<Record<string, CylinderLook>> = {
  cancel: ({ drive }, c) => {
    const works = 1 - (drive.hotIdle.share[c] ?? 0);
    if (works > 0.7) return "drop";
    return works > 0.25 ? "small-drop" : "no-drop";
  },
  "connector.rock": ({ parts, random }, c) => {
    if (controlsOf(parts, c).some(({ at, shaken }) => at === "pin" && shaken > 0.1))
      return "changes";
    // A chafed wire moves a little with its plug (our estimate).
    const isChafed = controlOf(parts, c).at === "wire" && controlOf(parts, c).still < 1;
    return isChafed && random.uniform() < 0.3 ? "changes" : "no-change";
  },
  "connector.pins": ({ parts }, c) =>
    controlsOf(parts, c).some(({ at }) => at === "pin") ? "loose" : "tight",
  "wire.continuity": ({ parts }, c) => {
    const { at, still } = controlOf(parts, c);
    if (at !== "wire") return "good";
    return still === 1 ? "open" : "changes";
  },
  "coil.current": ({ parts }, c) => {
    // A recording waits for the moment at which something is missing.
    const { still, shaken } = controlOf(parts, c);
    if (still + shaken * SIMULATED_REGIMES.hotIdle.shaking > SEEN) return "charge-time";
    const { strength = 1, offHot = 0 } = coilOf(parts, c) ?? {};
    return strength < WEAK || offHot > SEEN || parts.feedOhm > FLAT_OHM ? "ramp" : "clean";
  },
  "coil.resistance": ({ parts, random }, c) => {
    const { strength = 1, offCold = 0 } = coilOf(parts, c) ?? {};
    // Of dead windings not all are open, and shorted turns hardly change the ohms (trade's estimates).
    if (offCold > 0.9) return random.uniform() < 0.6 ? "open" : "in-limit";
    return strength < WEAK && random.uniform() < 0.25 ? "off" : "in-limit";
  },
  "coil.insulation": ({ parts }, c) => (isCarbonised(parts.coilLegs[c]) ? "low" : "equal"),
  "plug.insulation": ({ parts }, c) => {
    const { shuntOhm = Infinity } = parts.plugs[c] ?? {};
    const isShunted = shuntOhm < RESISTANCE_RANGES["plug.insulation"].ohm[0];
    return isShunted || isCarbonised(parts.plugs[c]) ? "low" : "high";
  },
  "spark.stress": stressOf,
  strobe: strobeOf,
  "burn-line": burnLine,
  "leak-down": ({ parts }, c) => Math.round(100 * leakDown(parts, c)),
  "leak.sound": ({ parts }, c) => {
    if (leakDown(parts, c) < 0.2) return "nowhere";
    const { valveM2 = 0, ringM2 = 0, leaksTo = "exhaust" } = parts.cylinders[c] ?? {};
    const gasket = gasketM2(parts, c);
    if (gasket > valveM2 && gasket > ringM2) return "neighbour";
    return valveM2 > ringM2 ? leaksTo : "filler";
  },
  "compression.running": ({ parts }, c) =>
    sealedShare(parts, c, SIMULATED_REGIMES.hotIdle) < 0.8 ? "low" : "normal",
  // Valve gear is sound here.
  "valve.lift": () => "equal",
  "bore.look": ({ parts }, c) => {
    if ((parts.cylinders[c]?.ringM2 ?? 0) > 5e-6) return "scored";
    // So much petrol washes the bore.
    return (parts.injectors[c]?.leakKgS ?? 0) > 0.04e-3 ? "steam-clean" : "normal";
  },
  "injector.balance": ({ parts }, c) => {
    const { dose = 1, leakKgS = 0 } = parts.injectors[c] ?? {};
    if (dose < 0.87) return "small";
    return leakKgS > 0.02e-3 ? "large" : "equal";
  },
};

function coilOf({ engine, coils }: SimulatedEngine, c: number) {
  return coils[engine.groupOf[c] ?? 0];
}

function controlOf({ engine, controls }: SimulatedEngine, c: number): SimulatedControl {
  return controls[engine.groupOf[c] ?? 0] ?? { still: 0, shaken: 0 };
}

/** All that goes through the connector of a cylinder: its feed, and the triggers of the coils on it. */
function controlsOf(parts: SimulatedEngine, c: number): readonly SimulatedControl[] {
  const { engine, feeds } = parts;
  const at = engine.connectors.findIndex(({ cylinders }) => cylinders.includes(c));
  const triggers = (engine.connectors[at]?.cylinders ?? []).map((each) => controlOf(parts, each));
  const feed = feeds[at];
  return feed ? [feed, ...triggers] : triggers;
}

function isCarbonised(path: SimulatedPath | undefined): boolean {
  return (path?.arcV ?? Infinity) < CARBONISED_V;
}

function gasketM2({ gaskets }: SimulatedEngine, c: number): number {
  return gaskets
    .filter(({ pair }) => pair.includes(c))
    .reduce((sum, { areaM2 }) => sum + areaM2, 0);
}

/**
 * What passes the orifice of the tester leaves through the leaks. Both flows grow alike with the supply, so
 * one atmosphere stands for it; the leaks are choked. Halving finds the share of it that the cylinder holds.
 */
function leakDown(parts: SimulatedEngine, c: number): number {
  const { valveM2 = 0, ringM2 = 0 } = parts.cylinders[c] ?? {};
  const out = leakedAir(valveM2 + ringM2 + gasketM2(parts, c), 0);
  let low = 0;
  let high = 1;
  for (let i = 0; i < 30; i++) {
    const held = (low + high) / 2;
    if (leakedAir(ORIFICE_M2, held * ATMOSPHERE_PA) > held * out) low = held;
    else high = held;
  }
  return leakage(1, low);
}

/** Upstream of the tester, engine hot: the coil must bring nearly what a sound one brings. */
function stressOf({ parts }: SimulatedState, c: number): string {
  const regime = SIMULATED_REGIMES.hotIdle;
  const g = parts.engine.groupOf[c] ?? 0;
  const { still, shaken } = controlOf(parts, c);
  const isSilent = silentShare(parts, regime, g) > 0.3 || still + shaken * regime.shaking > 0.5;
  const asked = STRESS_SHARE * coilVolts({ ...parts, strength: 1, feedOhm: 0 }, regime.supplyV);
  const upstream = [parts.leads[c], parts.towers[c], parts.coilLegs[c], parts.rotor];
  const arc = Math.min(...upstream.map((path) => path?.arcV ?? Infinity));
  const open = upstream.reduce((sum, path) => sum + (path?.breakV ?? 0), 0);
  const given = (sparkNeeds(parts, regime).coilV[g] ?? 0) - open;
  return isSilent || Math.min(arc, given) < asked ? "fails" : "holds";
}

/** The lamp sees current in the cable: none where the coil is dark or the way open, or where it leaves before. */
function strobeOf({ parts, drive }: SimulatedState, c: number): string {
  const regime = SIMULATED_REGIMES.hotIdle;
  const { still, shaken } = controlOf(parts, c);
  const off = silentShare(parts, regime, parts.engine.groupOf[c] ?? 0);
  const isOpen = [parts.leads[c], parts.boots[c]].some((path) => path?.breakV === Infinity);
  const leavesBefore = [parts.towers[c], parts.coilLegs[c]].some(
    (p) => (p?.arcV ?? Infinity) < Infinity,
  );
  const dark = leavesBefore
    ? (drive.hotIdle.dark[c] ?? 0)
    : Math.max(off, still + shaken * regime.shaking);
  if (isOpen || dark > 0.7) return "dark";
  return dark > SEEN ? "skips" : "steady";
}

/** Burn lines, revved up now and then: what it takes to jump, and how long what is left burns. */
function burnLine({ parts, drive }: SimulatedState, c: number): string {
  const needs = sparkNeeds(parts, SIMULATED_REGIMES.hotIdle);
  const own = needs.plugV[c] ?? 0;
  const mean = needs.plugV.reduce((a, b) => a + b, 0) / needs.plugV.length;
  // A leak to ground, or soot, takes the current before the gap does.
  const shunted = (needs.shuntOhm[c] ?? Infinity) < 1e6;
  if (shunted || (needs.arcV[c] ?? Infinity) < 1.3 * own) return "low-long";
  if ((drive.hotIdle.mixture.lambda[c] ?? 1) > 1.15) return "spiky-end";
  // Over a fifth above the others is excess gap or resistance (common practice).
  const isHigh = own + (needs.breakV[c] ?? 0) > 1.2 * mean;
  if (isHigh) return "high-short";
  return own < 0.75 * mean ? "low-long" : "like-others";
}
