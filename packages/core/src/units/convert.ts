// How much is that in the other unit? Every factor is exact by definition: the inch is 25.4 mm, the pound
// 0.45359237 kg, the mile 5,280 ft (international yard and pound agreement, 1959), standard gravity
// 9.80665 m/s² (3rd General Conference on Weights and Measures, 1901).
import { InputError } from "./problem.ts";

interface UnitRow {
  readonly of: "length" | "torque" | "pressure" | "temperature";
  /** Base units (m, N·m, kPa, °C) in one of this unit. */
  readonly factor: number;
  /** Reading of this unit at the zero of the base. */
  readonly zero?: number;
}

const INCH_M = 0.0254;
const FOOT_M = 12 * INCH_M;
const POUND_FORCE_N = 0.45359237 * 9.80665;

const UNITS = {
  mm: { of: "length", factor: 1e-3 },
  /** A thousandth of an inch. */
  thou: { of: "length", factor: INCH_M / 1000 },
  in: { of: "length", factor: INCH_M },
  km: { of: "length", factor: 1000 },
  mi: { of: "length", factor: 5280 * FOOT_M },
  N·m: { of: "torque", factor: 1 },
  lb·ft: { of: "torque", factor: POUND_FORCE_N * FOOT_M },
  lb·in: { of: "torque", factor: POUND_FORCE_N * INCH_M },
  kgf·m: { of: "torque", factor: 9.80665 },
  kPa: { of: "pressure", factor: 1 },
  bar: { of: "pressure", factor: 100 },
  psi: { of: "pressure", factor: POUND_FORCE_N / INCH_M ** 2 / 1000 },
  "°C": { of: "temperature", factor: 1 },
  "°F": { of: "temperature", factor: 5 / 9, zero: 32 },
} as const satisfies Readonly<Record<string, UnitRow>>;

export type Unit = keyof typeof UNITS;

/** The units that a unit can be converted to. */
export type UnitLike<U extends Unit> = {
  [V in Unit]: (typeof UNITS)[V]["of"] extends (typeof UNITS)[U]["of"] ? V : never;
}[Unit];

/**
 * A value in another unit of the same kind; temperatures are readings, not differences. Throws an
 * `InputError` for a value that is no finite number, an unknown unit, or units of different kinds.
 */
export function convert<U extends Unit>(value: number, from: U, to: UnitLike<U>): number {
  const [a, b] = [rowOf(from, "from"), rowOf(to, "to")];
  if (!Number.isFinite(value)) {
    const message = `${value} cannot be converted.`;
    throw new InputError([
      { code: "value-not-finite", path: "/value", message, hint: "Write a finite number." },
    ]);
  }
  if (a.of !== b.of) {
    const message = `${from} is a unit of ${a.of}, ${to} one of ${b.of}.`;
    throw new InputError([
      { code: "unit-mismatch", path: "/to", message, hint: `Choose a unit of ${a.of}.` },
    ]);
  }
  // The same unit gives the same digits.
  if (a === b) return value;
  return ((value - (a.zero ?? 0)) * a.factor) / b.factor + (b.zero ?? 0);
}

function rowOf(unit: string, path: string): UnitRow {
  if (Object.hasOwn(UNITS, unit)) return UNITS[unit as Unit];
  const message = `The unit ${JSON.stringify(unit)} is not known.`;
  const hint = `Write one of ${Object.keys(UNITS).join(", ")}.`;
  throw new InputError([{ code: "unit-unknown", path: `/${path}`, message, hint }]);
}
