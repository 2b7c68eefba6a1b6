// What voltage does a gap need? Paschen's law shows the shape, two fits for uniform fields give the
// numbers, and a fit made on engines shows how far real plugs stay below them at full load.

/** A gap and the gas in it. */
export interface Gap {
  readonly gapM: number;
  readonly pressurePa: number;
  readonly temperatureK: number;
}

/** Constants of a gas in Paschen's law. */
export interface TownsendGas {
  /** Ionisation at saturation, 1/(Pa·m). */
  readonly saturationPerPaM: number;
  /** V/(Pa·m). */
  readonly fieldVPerPaM: number;
  /** Electrons that each ion frees from the cathode. */
  readonly secondaryYield: number;
}

/** A fit a·x + b·√x for uniform fields, kV; x is density times gap in the unit of the fit. */
export interface UniformFit {
  readonly linearKV: number;
  readonly rootKV: number;
  /** What x is for one centimetre at 1013.25 hPa and 293 K. */
  readonly perCentimetre: number;
}

const ATMOSPHERE_PA = 101_325;
const TORR_PA = ATMOSPHERE_PA / 760;
const TORR_CM = TORR_PA * 0.01;
const REFERENCE_K = 293;

/**
 * Air: 15 /(Torr·cm), 365 V/(Torr·cm) (an amateur radio society's page on Paschen's law; the same in
 * kPa in an online formula collection); the yield 0.01 is a usual choice. They hold for 100 to 800 V a
 * cm and Torr (from memory); a plug gap in open air is at 59, so plugs are better served by the fits.
 */
export const AIR: TownsendGas = {
  saturationPerPaM: 15 / TORR_CM,
  fieldVPerPaM: 365 / TORR_CM,
  secondaryYield: 0.01,
};

/**
 * The lowest voltage that was measured to break air down: 327 V at 7.5 µm and one atmosphere (a
 * high-voltage handbook page). No constants fit both this and gaps of millimetres, so it stands alone.
 */
export const MEASURED_AIR_MINIMUM = {
  volts: 327,
  gapM: 7.5e-6,
  pressurePa: ATMOSPHERE_PA,
} as const;

/**
 * The uniform-field fits of the high-voltage textbooks (Kuffel, Zaengl & Kuffel; Meek & Craggs), both
 * from memory. `barCentimetre` comes within 3 % of sphere-gap tables from 0.5 to 10 mm, and is used
 * unless the other is asked for; `relativeDensity` reads 2 to 8 % low.
 */
export const UNIFORM_FITS = {
  barCentimetre: { linearKV: 24.36, rootKV: 6.72, perCentimetre: 1.01325 },
  relativeDensity: { linearKV: 24.22, rootKV: 6.08, perCentimetre: 1 },
} as const satisfies Record<string, UniformFit>;

/** A factor on the voltage a plug needs: the value to use and the range that sources give. */
export interface Effect {
  readonly factor: number;
  readonly range: readonly [low: number, high: number];
}

/**
 * What the electrodes do to the voltage needed. The directions are published (plug makers' manuals and
 * bulletins: a hot negative centre frees electrons easily, a thin wire crowds the field); the sizes are
 * from memory and differ widely between texts.
 */
export const ELECTRODE_EFFECTS = {
  /** Centre electrode positive, as on one plug of each pair on a double coil. */
  reversedPolarity: { factor: 1.15, range: [1.1, 1.4] },
  /** Centre electrode of 0.4 to 0.6 mm in place of 2.5 mm. */
  fineWire: { factor: 0.85, range: [0.75, 0.9] },
} as const satisfies Record<string, Effect>;

/** Which of the effects act on a plug. */
export interface Electrode {
  readonly isReversed?: boolean;
  readonly isFineWire?: boolean;
}

/** Where `engineBreakdown` may be asked: our bounds around the cases it was tried on. */
export const ENGINE_RANGE = {
  gapM: [0.5e-3, 1.5e-3],
  /** Relative density, as of `relativeDensity`. */
  density: [2, 10],
} as const;

/**
 * Points against points, 25 °C, one atmosphere: what an adjustable point-gap tester shows (table of the
 * American electrical engineers' institute, reprinted on a hobby page). Points need far less than balls.
 */
const POINT_GAP_TABLE = [
  { gapM: 0.0085, volts: 10e3 },
  { gapM: 0.0175, volts: 20e3 },
  { gapM: 0.0269, volts: 30e3 },
  { gapM: 0.0381, volts: 40e3 },
] as const;

/**
 * Breakdown voltage by Paschen's law, V, from pressure (as if at 20 °C) times gap, Pa·m. `undefined` to
 * the left of the curve, where the formula has no solution.
 */
export function paschen(pressureGapPaM: number, gas: TownsendGas = AIR): number | undefined {
  const { saturationPerPaM: A, fieldVPerPaM: B, secondaryYield: g } = gas;
  const divisor = Math.log(A * pressureGapPaM) - Math.log(Math.log(1 + 1 / g));
  return divisor > 0 ? (B * pressureGapPaM) / divisor : undefined;
}

/** The lowest point of Paschen's curve: where its slope is zero. */
export function paschenMinimum(gas: TownsendGas = AIR): {
  readonly pressureGapPaM: number;
  readonly volts: number;
} {
  const { saturationPerPaM: A, fieldVPerPaM: B, secondaryYield: g } = gas;
  const pressureGapPaM = (Math.E / A) * Math.log(1 + 1 / g);
  return { pressureGapPaM, volts: B * pressureGapPaM };
}

/** Gas density against air at 1013.25 hPa and 20 °C; older tables refer to 25 °C (298 K). */
export function relativeDensity(
  pressurePa: number,
  temperatureK: number,
  referenceK = REFERENCE_K,
): number {
  return (pressurePa / ATMOSPHERE_PA) * (referenceK / temperatureK);
}

/**
 * Voltage that a gap between smooth, blunt electrodes needs, V. Sparks see density, not pressure, so a
 * hot gas counts as a thin one. For a plug at full load an upper estimate.
 */
export function uniformBreakdown(gap: Gap, fit: UniformFit = UNIFORM_FITS.barCentimetre): number {
  const x =
    fit.perCentimetre * relativeDensity(gap.pressurePa, gap.temperatureK) * (gap.gapM * 100);
  return 1000 * (fit.linearKV * x + fit.rootKV * Math.sqrt(x));
}

/**
 * Voltage a plug in a firing engine needs, V: 4.3 + 136 p/T + 324 (p/T)·d kV with bar, kelvin and mm, after
 * Pashley, Stone & Roberts, SAE 2000-01-0245 (from memory). `undefined` outside `ENGINE_RANGE`: its
 * fixed 4.3 kV is far too much for the thin gas of an exhaust stroke.
 */
export function engineBreakdown(gap: Gap): number | undefined {
  const density = relativeDensity(gap.pressurePa, gap.temperatureK);
  if (!isWithin(gap.gapM, ENGINE_RANGE.gapM) || !isWithin(density, ENGINE_RANGE.density)) {
    return undefined;
  }
  const barPerK = gap.pressurePa / 1e5 / gap.temperatureK;
  return 1000 * (4.3 + 136 * barPerK + 324 * barPerK * gap.gapM * 1000);
}

/**
 * Between which voltages the need of a plug lies, V: the uniform fit and, where it may be asked, the
 * engine fit, each with the electrode's effects.
 */
export function plugDemand(
  gap: Gap,
  electrode: Electrode = {},
): readonly [lowV: number, highV: number] {
  const effect =
    (electrode.isReversed ? ELECTRODE_EFFECTS.reversedPolarity.factor : 1) *
    (electrode.isFineWire ? ELECTRODE_EFFECTS.fineWire.factor : 1);
  const uniform = uniformBreakdown(gap) * effect;
  const engine = (engineBreakdown(gap) ?? uniformBreakdown(gap)) * effect;
  return [Math.min(uniform, engine), Math.max(uniform, engine)];
}

/** Voltage that jumps a gap between needle points in open air, V; `undefined` outside 8.5–38.1 mm. */
export function pointGapVolts(gapM: number): number | undefined {
  const upper = POINT_GAP_TABLE.findIndex((row) => gapM <= row.gapM);
  const high = POINT_GAP_TABLE[upper];
  const low = POINT_GAP_TABLE[Math.max(0, upper - 1)];
  if (!high || !low || gapM < POINT_GAP_TABLE[0].gapM) return undefined;
  if (high === low) return high.volts;
  const share = (gapM - low.gapM) / (high.gapM - low.gapM);
  return low.volts + share * (high.volts - low.volts);
}

function isWithin(value: number, [low, high]: readonly [number, number]): boolean {
  return value >= low && value <= high;
}
