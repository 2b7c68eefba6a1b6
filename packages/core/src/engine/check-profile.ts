// Is what a user wrote of an engine sound? Finds everything wrong at once and says how to mend it.
import { InputError, type Problem } from "../units/problem.ts";
import { checkBuild } from "./check-build.ts";
import { checkCovers } from "./check-cover.ts";
import { checkBanks, checkIntervals, checkNeighbours, checkOrder } from "./check-cylinder.ts";
import { checkFigures } from "./check-figures.ts";
import { checkIgnition, type IgnitionCase } from "./check-ignition.ts";
import { checkShape } from "./check-shape.ts";
import { cylinderNames } from "./cylinder-name.ts";
import { firingAngles } from "./firing-order.ts";
import { type EngineProfile, IGNITION_KINDS } from "./profile.ts";

/** Generic misfire codes stop at cylinder 12; with 16 a ranking still takes less than a second. */
export const MAX_CYLINDERS = 16;

/**
 * Every problem of a profile, each with the JSON Pointer of its field; empty when it is sound. Of its
 * shape only what the sense hangs on is checked: that it is an object and its lists are lists. A missing
 * firing order is no problem here.
 */
export function checkProfile(profile: EngineProfile): readonly Problem[] {
  const shape = checkShape(profile);
  if (shape.length > 0) return shape;
  const counted = [...checkCount(profile), ...checkKind(profile), ...checkBuild(profile)];
  const rest = [...checkTolerance(profile), ...checkFigures(profile.figures)];
  // Without a believable count or kind every cylinder would look wrong.
  if (counted.length > 0) return [...counted, ...rest];
  const order = checkOrder(profile);
  const intervals = checkIntervals(profile);
  const isSound = order.length + intervals.length === 0;
  return [
    ...order,
    ...intervals,
    ...checkBanks(profile),
    ...checkNeighbours(profile),
    ...checkCovers(profile),
    ...checkIgnition(isSound ? timed(profile) : { profile, names: cylinderNames(profile) }),
    ...rest,
  ];
}

/**
 * The firing order as far as it is known: the one given; of a single cylinder the only one. Throws an
 * `InputError` for what is no profile.
 */
export function knownOrder(profile: EngineProfile): EngineProfile["firingOrder"] {
  const shape = checkShape(profile);
  if (shape.length > 0) throw new InputError(shape);
  return profile.firingOrder ?? (profile.cylinders === 1 ? cylinderNames(profile) : undefined);
}

function timed(profile: EngineProfile): IgnitionCase {
  const names = cylinderNames(profile);
  const order = knownOrder(profile)?.map((name) => names.indexOf(name));
  // Labels that banks and order do not share are reported elsewhere.
  if (!order || order.length !== names.length) return { profile, names };
  return { profile, names, order, angles: firingAngles(order, profile.firingIntervals) };
}

function checkCount({ cylinders }: EngineProfile): readonly Problem[] {
  if (Number.isInteger(cylinders) && cylinders >= 1 && cylinders <= MAX_CYLINDERS) return [];
  const message = Number.isNaN(cylinders)
    ? "The number of cylinders is not a number."
    : `An engine with ${cylinders} cylinders cannot be ranked.`;
  const hint = `Write a whole number from 1 to ${MAX_CYLINDERS}.`;
  return [{ code: "cylinders-count", path: "/cylinders", message, hint }];
}

function checkKind({ ignition }: EngineProfile): readonly Problem[] {
  if (IGNITION_KINDS.includes(ignition)) return [];
  const message = `The ignition ${JSON.stringify(ignition)} is not known.`;
  const hint = `Write one of ${IGNITION_KINDS.join(", ")}.`;
  return [{ code: "ignition-unknown", path: "/ignition", message, hint }];
}

function checkTolerance({ pairingToleranceDeg: tolerance }: EngineProfile): readonly Problem[] {
  if (tolerance === undefined || (tolerance >= 0 && tolerance <= 180)) return [];
  const message = `A pairing tolerance of ${tolerance}° cannot be used.`;
  const hint = "Write crank degrees from 0 to 180, or leave it out for exact companions.";
  return [{ code: "tolerance-range", path: "/pairingToleranceDeg", message, hint }];
}
