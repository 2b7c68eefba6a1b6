// What exactly is broken? The figures of the parts that differ from sound ones, for who wants to know what
// was drawn. The bounds of sound parts are those of `soundEngine`.
import type { SimulatedEngine, SimulatedPath } from "./simulated-engine.ts";

/** Which figure of a part, and in what unit. */
export const BROKEN_FIGURES = [
  "plug.gapM",
  "plug.edge",
  "plug.arcV",
  "boot.arcV",
  "lead.arcV",
  "tower.arcV",
  "coil-leg.arcV",
  "rotor.arcV",
  "boot.breakV",
  "lead.breakV",
  "plug.shuntOhm",
  "well.water",
  "coil.strength",
  "coil.off",
  "coil.offCold",
  "coil.offHot",
  "trigger.still",
  "trigger.shaken",
  "feed.still",
  "feed.shaken",
  "supply.ohm",
  "supply.still",
  "supply.shaken",
  "injector.dose",
  "injector.leakKgS",
  "fuel.pressure",
  "fuel.pumpFlow",
  "runner.areaM2",
  "hose.areaM2",
  "valve.areaM2",
  "rings.areaM2",
  "gasket.areaM2",
  "crank.offHot",
] as const;

export type BrokenFigureName = (typeof BROKEN_FIGURES)[number];

/** One figure that is not that of a sound part; `Infinity` volts: nothing jumps it. */
export interface BrokenFigure {
  readonly figure: BrokenFigureName;
  readonly value: number;
  /** Cylinders, by index, that it belongs to; empty for the whole engine. */
  readonly cylinders: readonly number[];
  /** Leaks only: share of the voltage left when wet. */
  readonly wetShare?: number;
}

const SOUND = { strength: 0.92, dose: 0.97, pumpFlow: 1.4, valveM2: 0.4e-6, ringM2: 0.6e-6 };
/** Sound plugs have grown by no more. */
const WORN_M = 0.21e-3;
/** Nor have their edges rounded further. */
const WORN_EDGE = 1.12;

/** The figures that are not those of sound parts. */
export function brokenFigures(parts: SimulatedEngine): readonly BrokenFigure[] {
  return [
    ...ofPaths(parts),
    ...ofCylinders(parts),
    ...ofCoils(parts),
    ...of([], "supply.ohm", parts.feedOhm, parts.feedOhm > 0),
    ...of([], "supply.still", parts.supply.still, parts.supply.still > 0),
    ...of([], "supply.shaken", parts.supply.shaken, parts.supply.shaken > 0),
    ...of([], "fuel.pressure", parts.fuelPressure, parts.fuelPressure < 1),
    ...of([], "fuel.pumpFlow", parts.pumpFlow, parts.pumpFlow < SOUND.pumpFlow),
    ...of([], "hose.areaM2", parts.hoseM2, parts.hoseM2 > 0),
    ...of([], "crank.offHot", parts.crankOffHot, parts.crankOffHot > 0),
    ...of([], "rotor.arcV", parts.rotor.arcV, parts.rotor.arcV < Infinity, parts.rotor.wetShare),
    ...parts.gaskets.map(({ pair, areaM2 }) => ({
      figure: "gasket.areaM2" as const,
      value: areaM2,
      cylinders: pair,
    })),
  ];
}

function ofPaths(parts: SimulatedEngine): readonly BrokenFigure[] {
  const leaks = (
    figure: BrokenFigureName,
    paths: readonly SimulatedPath[],
  ): readonly BrokenFigure[] =>
    paths.flatMap(({ arcV, wetShare }, c) => of([c], figure, arcV, arcV < Infinity, wetShare));
  const breaks = (
    figure: BrokenFigureName,
    paths: readonly SimulatedPath[],
  ): readonly BrokenFigure[] =>
    paths.flatMap(({ breakV }, c) => of([c], figure, breakV, breakV > 0));
  return [
    ...leaks("plug.arcV", parts.plugs),
    ...leaks("boot.arcV", parts.boots),
    ...leaks("lead.arcV", parts.leads),
    ...leaks("tower.arcV", parts.towers),
    ...leaks("coil-leg.arcV", parts.coilLegs),
    ...breaks("boot.breakV", parts.boots),
    ...breaks("lead.breakV", parts.leads),
  ];
}

function ofCylinders(parts: SimulatedEngine): readonly BrokenFigure[] {
  const { nominalGapM } = parts;
  return parts.engine.names.flatMap((_, c) => {
    const { gapM = nominalGapM, edge = 1, shuntOhm = Infinity } = parts.plugs[c] ?? {};
    const { dose = 1, leakKgS = 0 } = parts.injectors[c] ?? {};
    const { runnerM2 = 0, valveM2 = 0, ringM2 = 0 } = parts.cylinders[c] ?? {};
    const water = parts.wellWater[c] ?? 0;
    const isOff = gapM > nominalGapM + WORN_M || gapM < nominalGapM;
    return [
      ...of([c], "plug.gapM", gapM, isOff),
      ...of([c], "plug.edge", edge, edge > WORN_EDGE),
      ...of([c], "plug.shuntOhm", shuntOhm, shuntOhm < Infinity),
      ...of([c], "well.water", water, water > 0),
      ...of([c], "injector.dose", dose, dose < SOUND.dose),
      ...of([c], "injector.leakKgS", leakKgS, leakKgS > 0),
      ...of([c], "runner.areaM2", runnerM2, runnerM2 > 0),
      ...of([c], "valve.areaM2", valveM2, valveM2 > SOUND.valveM2),
      ...of([c], "rings.areaM2", ringM2, ringM2 > SOUND.ringM2),
    ];
  });
}

function ofCoils(parts: SimulatedEngine): readonly BrokenFigure[] {
  const { groups, connectors } = parts.engine;
  const coils = groups.flatMap((group, g) => {
    const { strength = 1, offCold = 0, offHot = 0 } = parts.coils[g] ?? {};
    const { still = 0, shaken = 0 } = parts.controls[g] ?? {};
    return [
      ...of(group, "coil.strength", strength, strength < SOUND.strength),
      ...of(group, "coil.off", offHot, offHot > 0 && offHot === offCold),
      ...of(group, "coil.offCold", offCold, offHot !== offCold),
      ...of(group, "coil.offHot", offHot, offHot !== offCold),
      ...of(group, "trigger.still", still, still + shaken > 0),
      ...of(group, "trigger.shaken", shaken, shaken > 0),
    ];
  });
  const feeds = connectors.flatMap(({ cylinders }, k) => {
    const { still = 0, shaken = 0 } = parts.feeds[k] ?? {};
    return [
      ...of(cylinders, "feed.still", still, still > 0),
      ...of(cylinders, "feed.shaken", shaken, shaken > 0),
    ];
  });
  return [...coils, ...feeds];
}

function of(
  cylinders: readonly number[],
  figure: BrokenFigureName,
  value: number,
  isBroken: boolean,
  wetShare?: number,
): readonly BrokenFigure[] {
  const wet = wetShare === undefined ? {} : { wetShare };
  return isBroken ? [{ figure, value, cylinders, ...wet }] : [];
}
