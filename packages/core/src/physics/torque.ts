// What reaches the plug of the torque that the wrench shows, and how tight should it be?
import type { Figures, Range } from "../engine/profile.ts";
import { radians } from "./cylinder.ts";

/** Newton metres in each unit of torque; exact by the definitions of pound, inch and standard gravity. */
export const NEWTON_METRES = {
  N·m: 1,
  lbf·ft: 0.45359237 * 9.80665 * 0.3048,
  lbf·in: 0.45359237 * 9.80665 * 0.0254,
  kgf·m: 9.80665,
} as const;

export type TorqueUnit = keyof typeof NEWTON_METRES;

/** A torque in another unit. */
export function convertTorque(value: number, from: TorqueUnit, to: TorqueUnit): number {
  return (value * NEWTON_METRES[from]) / NEWTON_METRES[to];
}

/**
 * Output speed over input speed of one universal joint bent by an angle, at an input angle counted from
 * where the input yoke lies in the plane of the bend: cos b/(1 − sin²b·cos²θ) (drive-shaft makers'
 * technical pages). The torque ratio is its inverse.
 */
export function jointSpeedRatio(bendDeg: number, inputDeg: number): number {
  const b = radians(bendDeg);
  return Math.cos(b) / (1 - (Math.sin(b) * Math.cos(radians(inputDeg))) ** 2);
}

/** Between which torques a fastener sees a torque sent through one bent joint, in the same unit. */
export function jointTorqueBounds(torque: number, bendDeg: number): Range {
  const cos = Math.cos(radians(bendDeg));
  return [torque * cos, torque / cos];
}

/** Swing of the output speed, (highest − lowest)/mean: tan b·sin b. */
export function jointFluctuation(bendDeg: number): number {
  return Math.tan(radians(bendDeg)) * Math.sin(radians(bendDeg));
}

/** Most that the output runs ahead of or behind the input, degrees. */
export function jointLagDeg(bendDeg: number): number {
  const cos = Math.cos(radians(bendDeg));
  return (Math.atan((1 - cos) / (2 * Math.sqrt(cos))) * 180) / Math.PI;
}

/** A crow-foot or an offset extension on a torque wrench. */
export interface CrowFoot {
  /** From the centre of the drive to the hand. */
  readonly leverM: number;
  /** From the centre of the drive to the centre of the fastener. */
  readonly offsetM: number;
  /** 0 in line with the lever, 90 square to it, 180 back under the hand. */
  readonly angleDeg?: number;
}

/**
 * What to set on the wrench so that the fastener gets a torque, in the same unit: T·L/(L + E·cos φ) (tool
 * makers' sheets). An extension along the axis of the drive changes nothing. `undefined` when the
 * fastener lies under the hand and no force turns it.
 */
export function crowFootSetting(torque: number, crowFoot: CrowFoot): number | undefined {
  const { leverM, offsetM, angleDeg = 0 } = crowFoot;
  const reach = leverM + offsetM * Math.cos(radians(angleDeg));
  return reach > 0 ? (torque * leverM) / reach : undefined;
}

/** Nut factors of steel threads (bolting handbooks: T = K·d·F). */
export const NUT_FACTORS = {
  dry: [0.2, 0.25],
  "zinc-and-light-oil": [0.18, 0.22],
  oiled: [0.15, 0.18],
  "anti-seize": [0.12, 0.16],
} as const satisfies Record<string, Range>;

/** Torque that clamps with a force, N·m. */
export function torqueForClamp(nutFactor: number, threadM: number, clampN: number): number {
  return nutFactor * threadM * clampN;
}

/** Force that a torque clamps with, N. Grease on a plug chart's dry thread overstretches it. */
export function clampForce(nutFactor: number, threadM: number, torqueNm: number): number {
  return torqueNm / (nutFactor * threadM);
}

type Thread = NonNullable<Figures["plugThread"]>;
type Seat = NonNullable<Figures["plugSeat"]>;
type HeadMetal = NonNullable<Figures["headMetal"]>;

/** One line of the plug chart. */
export interface PlugTorque {
  readonly thread: Thread;
  readonly seat: Seat;
  readonly torqueNm: Readonly<Record<HeadMetal, Range>>;
}

/**
 * Torque of plugs with dry threads, N·m (one plug maker's installation chart). The plug's own sheet and
 * the service manual go before it.
 */
export const PLUG_TORQUES: readonly PlugTorque[] = [
  { thread: "M18", seat: "gasket", torqueNm: { iron: [34, 44], aluminium: [34, 44] } },
  { thread: "M14", seat: "gasket", torqueNm: { iron: [24, 34], aluminium: [24, 29] } },
  { thread: "M12", seat: "gasket", torqueNm: { iron: [15, 24], aluminium: [15, 20] } },
  { thread: "M10", seat: "gasket", torqueNm: { iron: [10, 15], aluminium: [10, 12] } },
  { thread: "M8", seat: "gasket", torqueNm: { iron: [8, 10], aluminium: [8, 10] } },
  { thread: "M18", seat: "taper", torqueNm: { iron: [20, 29], aluminium: [20, 29] } },
  { thread: "M14", seat: "taper", torqueNm: { iron: [15, 24], aluminium: [10, 20] } },
];

/** Turns after finger-tight where no torque wrench fits (a retailer's and makers' pages). */
export const PLUG_TURNS = {
  "gasket.new": [1 / 2, 3 / 4],
  "gasket.used": [1 / 12, 1 / 12],
  taper: [1 / 16, 1 / 16],
} as const satisfies Record<string, Range>;

/** The chart's torque for a plug, N·m; `undefined` when the chart has no such plug. */
export function plugTorque(thread: Thread, seat: Seat, head: HeadMetal): Range | undefined {
  return PLUG_TORQUES.find((row) => row.thread === thread && row.seat === seat)?.torqueNm[head];
}
