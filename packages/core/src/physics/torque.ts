// What reaches the plug of the torque that the wrench shows, and how tight should it be?
import { checkFigures } from "../engine/check-figures.ts";
import type { Figures, Range } from "../engine/profile.ts";
import { InputError } from "../units/problem.ts";
import { radians } from "./cylinder.ts";

/**
 * Output speed over input speed of one universal joint bent by an angle, at an input angle counted from
 * where the input yoke lies in the plane of the bend: cos b/(1 − sin²b·cos²θ) (drive-shaft makers'
 * technical pages). The torque ratio is its inverse.
 */
export function jointSpeedRatio(bendDeg: number, inputDeg: number): number {
  const b = radians(bendDeg);
  return Math.cos(b) / (1 - (Math.sin(b) * Math.cos(radians(inputDeg))) ** 2);
}

/**
 * Between which torques a fastener sees a torque sent through one bent joint, in the same unit. Throws an
 * `InputError` for a torque below 0 or a bend outside 0..90°.
 */
export function jointTorqueBounds(torque: number, bendDeg: number): Range {
  refuseUnless("torque", torque, torque >= 0);
  refuseUnless("bendDeg", bendDeg, bendDeg >= 0 && bendDeg < 90);
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
 * fastener lies under the hand and no force turns it. Throws an `InputError` for a length or torque that
 * is none.
 */
export function crowFootSetting(torque: number, crowFoot: CrowFoot): number | undefined {
  const { leverM, offsetM, angleDeg = 0 } = crowFoot;
  refuseUnless("torque", torque, torque >= 0);
  refuseUnless("leverM", leverM, leverM > 0);
  refuseUnless("offsetM", offsetM, offsetM >= 0);
  refuseUnless("angleDeg", angleDeg, true);
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

export type ThreadState = keyof typeof NUT_FACTORS;

/**
 * Torque that clamps a lubricated thread as hard as a torque meant for dry threads would, in the same
 * unit: lowest and highest over the handbooks' factors. Trade advice for anti-seize on plugs, 20 to 30 %
 * less, lies at its upper end. It shows why grease matters and sets no wrench: one plug maker wants no
 * lubricant at all, so the plug's own sheet decides. Throws an `InputError` for a torque below 0.
 */
export function lubricatedTorque(dryTorque: number, state: ThreadState): Range {
  refuseUnless("dryTorque", dryTorque, dryTorque >= 0);
  if (state === "dry") return [dryTorque, dryTorque];
  const [dryLow, dryHigh] = NUT_FACTORS.dry;
  const [low, high] = NUT_FACTORS[state];
  return [(dryTorque * low) / dryHigh, Math.min(dryTorque, (dryTorque * high) / dryLow)];
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

/** How the service manual's plug torque stands to the chart. */
export interface PlugTorqueCheck {
  /** The chart's range; where the head metal is not known, over both metals. */
  readonly chartNm: Range;
  readonly isWithin: boolean;
  /** How far the figure's lower end lies under the chart's, N·m; 0 when it does not. */
  readonly underNm: number;
  /** How far its upper end lies over the chart's, N·m; 0 when it does not. */
  readonly overNm: number;
}

/**
 * Is the plug torque of a profile plausible for its thread, seat and head? Off the chart means: look it
 * up once more, a unit or a digit may have slipped; the manual's figure still holds. `undefined` when
 * torque, thread or seat is missing or the chart has no such plug. Throws an `InputError` for figures that
 * are no figures.
 */
export function plugTorqueCheck(figures: Figures): PlugTorqueCheck | undefined {
  const problems = checkFigures(figures);
  if (problems.length > 0) throw new InputError(problems);
  const { plugTorqueNm, plugThread, plugSeat, headMetal } = figures;
  if (!plugTorqueNm || !plugThread || !plugSeat) return undefined;
  const metals = headMetal ? [headMetal] : (["iron", "aluminium"] as const);
  const charts = metals.flatMap((metal) => {
    const chart = plugTorque(plugThread, plugSeat, metal);
    return chart ? [chart] : [];
  });
  if (charts.length === 0) return undefined;
  const chartNm: Range = [
    Math.min(...charts.map(([low]) => low)),
    Math.max(...charts.map(([, high]) => high)),
  ];
  const underNm = Math.max(0, chartNm[0] - plugTorqueNm[0]);
  const overNm = Math.max(0, plugTorqueNm[1] - chartNm[1]);
  return { chartNm, isWithin: underNm === 0 && overNm === 0, underNm, overNm };
}

function refuseUnless(name: string, value: number, isInside: boolean): void {
  if (isInside && Number.isFinite(value)) return;
  const message = `${name} cannot be ${value}.`;
  const hint = "Write lengths above 0, torques of 0 or more, bends from 0 up to 90 degrees.";
  throw new InputError([{ code: "torque-input", path: `/${name}`, message, hint }]);
}
