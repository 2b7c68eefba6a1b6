// What a set of plugs looked like when it came out or went in: the record that the next service is held to.
import { checkProfile } from "../engine/check-profile.ts";
import { cylinderNames } from "../engine/cylinder-name.ts";
import type { CylinderName, EngineProfile } from "../engine/profile.ts";
import { KNOWLEDGE } from "../knowledge/knowledge.ts";
import { type Problem, pointer } from "../units/problem.ts";
import { checkDay } from "./day.ts";

/** One plug as it was found. */
export interface PlugEntry {
  readonly cylinder: CylinderName;
  readonly gapMm?: number;
  /** An option of the finding `plug.look`. */
  readonly look?: string;
  readonly torqueNm?: number;
  /** The number on the plug. */
  readonly part?: string;
}

/** What goes on from a record; what is left out nobody has said. */
export interface PlugCourse {
  /** New plugs went in on that day, or the same ones went back. */
  readonly wentIn?: "new" | "same";
  /** How far the car is driven. */
  readonly kmPerYear?: number;
  /** ISO 8601 day on which the plugs that went back were new. */
  readonly fittedOn?: string;
}

/** The plugs of an engine on one day. */
export interface PlugRecord {
  /** ISO 8601 day. */
  readonly when: string;
  readonly odometerKm: number;
  readonly plugs: readonly PlugEntry[];
  /** The gap with which these plugs went in. */
  readonly newGapMm?: number;
  /** The odometer at which they went in. */
  readonly fittedAtKm?: number;
  readonly course?: PlugCourse;
}

/** No gap of a running engine is wider; a number above is in another unit. */
const WIDEST_GAP_MM = 5;

/** Every problem of a record on this engine, with the JSON Pointer of its field. */
export function checkRecord(profile: EngineProfile, record: PlugRecord): readonly Problem[] {
  const { when, odometerKm, plugs, newGapMm, fittedAtKm, course } = record;
  const names = cylinderNames(profile);
  return [
    ...checkProfile(profile),
    ...checkDay("/when", when),
    ...checkDistance("/odometerKm", odometerKm),
    ...checkFitted(fittedAtKm, odometerKm),
    ...checkGap("/newGapMm", newGapMm),
    ...checkCourse(when, course),
    ...plugs.flatMap((plug, i) => [
      ...checkCylinder(plug, i, plugs, names),
      ...checkGap(pointer("plugs", i, "gapMm"), plug.gapMm),
      ...checkTorque(pointer("plugs", i, "torqueNm"), plug.torqueNm),
      ...checkLook(pointer("plugs", i, "look"), plug.look),
    ]),
  ];
}

/** Problems of a distance in km. */
export function checkDistance(path: string, km: number): readonly Problem[] {
  if (Number.isFinite(km) && km >= 0) return [];
  const message = `${km} is no distance in kilometres.`;
  return [{ code: "distance-wrong", path, message, hint: "Write kilometres, 0 or more." }];
}

/** Problems of a distance in a year. */
export function checkPace(path: string, kmPerYear: number | undefined): readonly Problem[] {
  if (kmPerYear === undefined || (Number.isFinite(kmPerYear) && kmPerYear >= 1)) return [];
  const hint = "Write kilometres in a year, 1 or more, or leave it out.";
  return [{ code: "pace-wrong", path, message: `${kmPerYear} is no yearly distance.`, hint }];
}

function checkCourse(when: string, { kmPerYear, fittedOn }: PlugCourse = {}): readonly Problem[] {
  const path = "/course/fittedOn";
  const wrong = fittedOn === undefined ? [] : checkDay(path, fittedOn);
  const message = `The plugs that went back on ${when} were new on ${fittedOn}, after it.`;
  const hint = "Write the day on which these plugs first went in, or leave it out.";
  const isLater = wrong.length === 0 && fittedOn !== undefined && fittedOn > when;
  return [
    ...checkPace("/course/kmPerYear", kmPerYear),
    ...wrong,
    ...(isLater ? [{ code: "fitted-later", path, message, hint }] : []),
  ];
}

function checkFitted(fittedAtKm: number | undefined, odometerKm: number): readonly Problem[] {
  if (fittedAtKm === undefined) return [];
  const wrong = checkDistance("/fittedAtKm", fittedAtKm);
  if (wrong.length > 0 || !(fittedAtKm > odometerKm)) return wrong;
  return [
    {
      code: "fitted-later",
      path: "/fittedAtKm",
      message: `The plugs went in at ${fittedAtKm} km, after the ${odometerKm} km of this record.`,
      hint: "Exchange the two, or correct the one with a digit wrong.",
    },
  ];
}

function checkGap(path: string, gapMm: number | undefined): readonly Problem[] {
  if (gapMm === undefined || (gapMm >= 0 && gapMm <= WIDEST_GAP_MM)) return [];
  return [
    {
      code: "gap-wrong",
      path,
      message: `${gapMm} mm is no gap of a plug.`,
      hint: `Write millimetres, 0 to ${WIDEST_GAP_MM}; 40 thousandths of an inch are 1.02 mm.`,
    },
  ];
}

function checkTorque(path: string, torqueNm: number | undefined): readonly Problem[] {
  if (torqueNm === undefined || (Number.isFinite(torqueNm) && torqueNm > 0)) return [];
  const message = `${torqueNm} N·m is no torque.`;
  return [{ code: "torque-wrong", path, message, hint: "Write newton metres above 0." }];
}

function checkLook(path: string, look: string | undefined): readonly Problem[] {
  const known = Object.keys(KNOWLEDGE.findings.get("plug.look")?.options ?? {});
  if (look === undefined || known.includes(look)) return [];
  const message = `${JSON.stringify(look)} is no look of a plug.`;
  return [{ code: "look-unknown", path, message, hint: `Write one of ${known.join(", ")}.` }];
}

function checkCylinder(
  { cylinder }: PlugEntry,
  i: number,
  plugs: readonly PlugEntry[],
  names: readonly CylinderName[],
): readonly Problem[] {
  const path = pointer("plugs", i, "cylinder");
  const isSame = (other: CylinderName): boolean => String(other) === String(cylinder);
  if (!names.some(isSame)) {
    const message = `This engine has no cylinder ${cylinder}.`;
    const hint = `Write one of ${names.join(", ")}.`;
    return [{ code: "cylinder-unknown", path, message, hint }];
  }
  if (plugs.findIndex((plug) => isSame(plug.cylinder)) === i) return [];
  const message = `Cylinder ${cylinder} is there twice.`;
  return [{ code: "cylinder-twice", path, message, hint: "Keep one plug for each cylinder." }];
}
