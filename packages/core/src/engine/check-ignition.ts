// Do the coils of a profile suit its engine: who fires with whom, where the coils sit, and which
// connector feeds them?
import { type Problem, pointer } from "../units/problem.ts";
import { checkCover, checkEmpty } from "./check-cylinder.ts";
import { sayNames } from "./cylinder-name.ts";
import { firesInPairs, firingGroups, groupSize } from "./firing-group.ts";
import {
  areCompanions,
  companionsOf,
  mismatchDeg,
  pairingMismatchDeg,
  pairingObstacle,
  sayDegrees,
} from "./firing-order.ts";
import type { CylinderName, EngineProfile } from "./profile.ts";

/** What the checks of the ignition build on. */
export interface IgnitionCase {
  readonly profile: EngineProfile;
  readonly names: readonly CylinderName[];
  /** Cylinder indices in firing order; left out when the order is unknown or faulty. */
  readonly order?: readonly number[];
  /** By cylinder, crank degrees; there whenever `order` is. */
  readonly angles?: readonly number[];
}

/** All checks of the ignition. */
export function checkIgnition(ignitionCase: IgnitionCase): readonly Problem[] {
  const groupProblems = checkGroups(ignitionCase);
  const groups = groupProblems.length > 0 ? undefined : groupNames(ignitionCase);
  return [
    ...checkPairing(ignitionCase),
    ...groupProblems,
    ...checkCoilOn(ignitionCase, groups),
    ...checkConnectors(ignitionCase, groups),
  ];
}

/** Firing groups by name: those given, else those of the order; `undefined` when not known. */
function groupNames(ignitionCase: IgnitionCase): readonly (readonly CylinderName[])[] | undefined {
  const { profile, names, order, angles } = ignitionCase;
  if (profile.firingGroups) return profile.firingGroups;
  if (!order || !angles) return undefined;
  const groups = firingGroups(profile, order, companionsOf(angles, profile.pairingToleranceDeg));
  return groups.map((group) => group.map((c) => names[c] ?? c));
}

/** Double coils need an engine whose cylinders can be paired. */
function checkPairing({ profile, angles }: IgnitionCase): readonly Problem[] {
  if (!firesInPairs(profile.ignition)) return [];
  const isOdd = profile.cylinders % 2 === 1;
  const tolerance = profile.pairingToleranceDeg ?? 0;
  if (!isOdd && !(angles && companionsOf(angles, tolerance).includes(undefined))) return [];
  const mismatch = angles ? pairingMismatchDeg(angles) : 0;
  const obstacle = angles && pairingObstacle(angles);
  const instead = 'Write "coil-per-plug" or "distributor" as ignition';
  return [
    {
      code: "not-pairable",
      path: "/ignition",
      message:
        `The ignition "${profile.ignition}" fires two cylinders with each coil. ` +
        (obstacle ?? `${profile.cylinders} cylinders cannot be paired: the count is odd.`),
      hint: isOdd
        ? `${instead}, or correct the number of cylinders.`
        : `${instead}; if the maker pairs them anyway, set pairingToleranceDeg to ` +
          `${Math.ceil(mismatch)} or more (it is ${tolerance}).`,
    },
  ];
}

/** The given groups cover the engine, have the size that the coils ask for, and are companions. */
function checkGroups(ignitionCase: IgnitionCase): readonly Problem[] {
  const { profile, names } = ignitionCase;
  const groups = profile.firingGroups;
  if (!groups) return [];
  const path = "/firingGroups";
  const at = (i: number, j: number): string => pointer("firingGroups", i, j);
  const cover = { word: "group", subject: "the firing groups", path, lists: groups, at };
  const size = groupSize(profile.ignition, profile.cylinders);
  return [
    ...checkCover(cover, names),
    ...groups.flatMap((group, i) =>
      group.length === size ? checkPair(ignitionCase, group, i) : [wrongSize(profile, group, i)],
    ),
  ];
}

function wrongSize(profile: EngineProfile, group: readonly CylinderName[], i: number): Problem {
  const size = groupSize(profile.ignition, profile.cylinders);
  const wanted = new Map([
    ["distributor", `one group of all ${size} cylinders, since one coil serves them all`],
    ["coil-per-plug", "a group of one for each cylinder, since each has its own coil"],
  ]).get(profile.ignition);
  return {
    code: "group-size",
    path: pointer("firingGroups", i),
    message: `The group has ${group.length}, but a "${profile.ignition}" coil fires ${size}.`,
    hint: `Write ${wanted ?? "pairs of companions, two a coil"}, or leave the groups out.`,
  };
}

function checkPair(
  { profile, names, angles }: IgnitionCase,
  group: readonly CylinderName[],
  i: number,
): readonly Problem[] {
  const [a = -1, b = -1] = group.map((name) => names.indexOf(name));
  if (!angles || !firesInPairs(profile.ignition) || a < 0 || b < 0 || a === b) return [];
  const [angleA = 0, angleB = 0] = [angles[a], angles[b]];
  if (areCompanions(angleA, angleB, profile.pairingToleranceDeg)) return [];
  const companions = companionsOf(angles, profile.pairingToleranceDeg);
  const partners = [a, b].flatMap((c) => {
    const companion = companions[c];
    return companion === undefined ? [] : [`the companion of ${names[c]} is ${names[companion]}`];
  });
  const off = sayDegrees(mismatchDeg(angleA, angleB));
  return [
    {
      code: "group-not-companions",
      path: pointer("firingGroups", i),
      message: `Cylinders ${sayNames(group)} are ${off} off 360° apart: one coil cannot fire both.`,
      hint:
        partners.length > 0
          ? `By the firing order ${sayNames(partners)}.`
          : "Neither has a companion within the tolerance: check the order and its intervals.",
    },
  ];
}

/** On a hybrid one plug of each pair carries the coil. */
function checkCoilOn(
  { profile, names }: IgnitionCase,
  groups: readonly (readonly CylinderName[])[] | undefined,
): readonly Problem[] {
  const coilOn = profile.coilOn;
  if (!coilOn) return [];
  const path = "/coilOn";
  if (profile.ignition !== "hybrid") {
    const message = `Coils on one plug of each pair belong to "hybrid", not "${profile.ignition}".`;
    const hint = 'Leave coilOn out, or write "hybrid" as ignition.';
    return [{ code: "coil-on-not-hybrid", path, message, hint }];
  }
  const at = (_: number, j: number): string => pointer("coilOn", j);
  const subject = "the plugs that carry a coil";
  const cover = { word: "coil-on", subject, path, lists: [coilOn], at };
  const covering = checkCover(cover, names, true);
  if (!groups) {
    const wanted = Math.floor(profile.cylinders / 2);
    if (coilOn.length === wanted) return covering;
    const message = `${coilOn.length} coils for ${profile.cylinders} cylinders: there are ${wanted}.`;
    const hint = "Name one cylinder of each pair: the one whose plug carries the coil.";
    return [...covering, { code: "coil-on-count", path, message, hint }];
  }
  const pairs = groups.flatMap((group) => {
    const carried = group.filter((name) => coilOn.includes(name)).length;
    if (carried === 1) return [];
    const message = `${carried === 0 ? "Neither" : "Each"} of ${sayNames(group)} carries a coil.`;
    return [
      { code: "coil-on-pair", path, message, hint: "Name exactly one cylinder of each pair." },
    ];
  });
  return [...covering, ...pairs];
}

/** The connectors feed each coil once and never half of one. */
function checkConnectors(
  { profile, names }: IgnitionCase,
  groups: readonly (readonly CylinderName[])[] | undefined,
): readonly Problem[] {
  const connectors = profile.connectors;
  if (!connectors) return [];
  const path = "/connectors";
  const feedsPath = (i: number): string => pointer("connectors", i, "feeds");
  const at = (i: number, j: number): string => `${feedsPath(i)}/${j}`;
  const lists = connectors.map((connector) => connector.feeds);
  const cover = { word: "connector", subject: "the connectors", path, lists, at };
  const split = (groups ?? []).flatMap((group) =>
    lists.flatMap((feeds, i): readonly Problem[] => {
      const fed = group.filter((name) => feeds.includes(name));
      const rest = group.filter((name) => !feeds.includes(name));
      const isElsewhere = rest.some((name) => lists.some((other) => other.includes(name)));
      if (fed.length === 0 || rest.length === 0 || !isElsewhere) return [];
      return [
        {
          code: "connector-splits",
          path: feedsPath(i),
          message: `It feeds ${sayNames(fed)} but not ${sayNames(rest)}, on the same coil.`,
          hint: `Put ${sayNames(group)} on one connector.`,
        },
      ];
    }),
  );
  return [
    ...checkEmpty(lists, "connector", feedsPath),
    ...checkCover(cover, names),
    // One report a coil is enough: the second connector is the other half of the same mistake.
    ...split.filter((p, i) => split.findIndex((q) => q.hint === p.hint) === i),
  ];
}
