// Do the firing order, the intervals, the banks and the neighbours of a profile name each cylinder
// as they should?
import { type Problem, pointer } from "../units/problem.ts";
import { cylinderNames, isLabel, sayNames } from "./cylinder-name.ts";
import { CYCLE_DEG } from "./firing-order.ts";
import type { CylinderName, EngineProfile } from "./profile.ts";

/** Degrees by which intervals that people round may miss 720. */
const SUM_SLACK_DEG = 0.01;

/** Lists that together should name every cylinder once, and how to speak of them. */
export interface Cover {
  /** Starts the codes of the problems: `order` gives `order-repeats`. */
  readonly word: string;
  /** What the lists are to a reader: "the firing order". */
  readonly subject: string;
  readonly path: string;
  readonly lists: readonly (readonly CylinderName[])[];
  /** JSON Pointer to entry `j` of list `i`. */
  readonly at: (i: number, j: number) => string;
}

/** Cylinders unknown, named twice, or (unless `mayForget`) forgotten by the lists. */
export function checkCover(
  cover: Cover,
  names: readonly CylinderName[],
  mayForget = false,
): readonly Problem[] {
  const problems: Problem[] = [];
  const seen = new Set<CylinderName>();
  const missing = missingFrom(cover.lists.flat(), names);
  cover.lists.forEach((list, i) => {
    list.forEach((name, j) => {
      if (!names.includes(name)) problems.push(unknownCylinder(name, cover.at(i, j), names));
      else if (seen.has(name)) problems.push(repeated(cover, name, cover.at(i, j), missing));
      seen.add(name);
    });
  });
  if (missing.length > 0 && !mayForget) {
    problems.push({
      code: `${cover.word}-forgets`,
      path: cover.path,
      message: `Missing from ${cover.subject}: ${sayNames(missing)}.`,
      hint: `Name each of ${sayNames(names)} exactly once.`,
    });
  }
  return problems;
}

function repeated(
  { word, subject }: Cover,
  name: CylinderName,
  path: string,
  missing: readonly CylinderName[],
): Problem {
  return {
    code: `${word}-repeats`,
    path,
    message: `Cylinder ${name} stands in ${subject} a second time.`,
    hint:
      missing.length > 0
        ? `Name each cylinder once; still missing: ${sayNames(missing)}.`
        : "Remove the second mention.",
  };
}

/** The problem of a name that no cylinder of this engine has. */
function unknownCylinder(
  name: CylinderName,
  path: string,
  names: readonly CylinderName[],
): Problem {
  const isQuoted = typeof name === "string" && names.includes(Number(name));
  return {
    code: "cylinder-unknown",
    path,
    message: `This engine has no cylinder named ${JSON.stringify(name)}.`,
    hint: isQuoted
      ? `Write ${Number(name)} without quotes.`
      : `Its cylinders are ${sayNames(names)}: write one of these.`,
  };
}

function missingFrom(
  list: readonly CylinderName[],
  names: readonly CylinderName[],
): readonly CylinderName[] {
  return names.filter((name) => !list.includes(name));
}

/** The firing order names every cylinder once. */
export function checkOrder(profile: EngineProfile): readonly Problem[] {
  const order = profile.firingOrder;
  if (!order) return [];
  const names = cylinderNames(profile);
  const at = (_: number, j: number): string => pointer("firingOrder", j);
  const path = "/firingOrder";
  const cover = { word: "order", subject: "the firing order", path, lists: [order], at };
  const problems = checkCover(cover, names, true);
  if (order.length === profile.cylinders) return problems;
  const missing = missingFrom(order, names);
  const length: Problem = {
    code: "order-length",
    path,
    message: `The firing order has ${order.length} entries for ${profile.cylinders} cylinders.`,
    hint:
      missing.length > 0
        ? `Write the whole order; not in it: ${sayNames(missing)}.`
        : "Write each cylinder once, or correct the number of cylinders.",
  };
  return [length, ...problems];
}

/** The intervals are positive, one for each firing, and close the cycle. */
export function checkIntervals(profile: EngineProfile): readonly Problem[] {
  const intervals = profile.firingIntervals;
  if (!intervals) return [];
  const path = "/firingIntervals";
  const problems = [...checkPositive(intervals)];
  if (!profile.firingOrder) {
    const message = "Intervals say nothing without the firing order that they belong to.";
    const hint = "Add firingOrder, or leave them out.";
    problems.push({ code: "intervals-without-order", path, message, hint });
  }
  if (intervals.length !== profile.cylinders) {
    const message = `${intervals.length} intervals were given for ${profile.cylinders} firings.`;
    const hint = "Write one for each cylinder of the order, the last leading back to the first.";
    problems.push({ code: "intervals-count", path, message, hint });
  }
  const sum = intervals.reduce((a, b) => a + b, 0);
  if (!(Math.abs(sum - CYCLE_DEG) <= SUM_SLACK_DEG)) {
    const message = `The intervals add up to ${sum}°, but a cycle has ${CYCLE_DEG}°.`;
    const hint = `Correct them so that they make ${CYCLE_DEG}.`;
    problems.push({ code: "intervals-sum", path, message, hint });
  }
  return problems;
}

function checkPositive(intervals: readonly number[]): readonly Problem[] {
  return intervals.flatMap((degrees, i): readonly Problem[] => {
    if (degrees > 0 && Number.isFinite(degrees)) return [];
    const path = pointer("firingIntervals", i);
    const message = `An interval of ${degrees}° cannot be: each firing comes after the one before.`;
    const hint = "Write the crank degrees to the next firing, more than 0.";
    return [{ code: "interval-not-positive", path, message, hint }];
  });
}

/** The banks name every cylinder once, and there are as many as the layout has. */
export function checkBanks(profile: EngineProfile): readonly Problem[] {
  const { banks, cylinders } = profile;
  if (!banks) return checkLayout(profile);
  const path = "/banks";
  const names = cylinderNames(profile);
  const at = (i: number, j: number): string => pointer("banks", i, j);
  const problems = [
    ...checkLayout(profile),
    ...checkEmpty(banks, "bank", (i) => pointer("banks", i)),
    ...checkCover({ word: "bank", subject: "the banks", path, lists: banks, at }, names),
  ];
  // Labels are learnt from the banks themselves, so only their number can show one forgotten.
  if (names.some(isLabel) && names.length !== cylinders) {
    problems.push({
      code: names.length < cylinders ? "bank-forgets" : "bank-too-many",
      path,
      message: `The banks name ${names.length} cylinders, but the engine has ${cylinders}.`,
      hint: "Name each cylinder in one bank, or correct the number of cylinders.",
    });
  }
  return problems;
}

/** An inline engine has one bank, the others two. */
function checkLayout({ layout, banks, cylinders }: EngineProfile): readonly Problem[] {
  if (!layout) return [];
  const expected = layout === "inline" ? 1 : 2;
  const problems: Problem[] = [];
  if (cylinders < expected) {
    const message = `An engine of layout "${layout}" has two banks, too many for one cylinder.`;
    const hint = 'Write "inline", or correct the number of cylinders.';
    problems.push({ code: "layout-needs-two", path: "/layout", message, hint });
  }
  if (banks && banks.length !== expected) {
    const message = `${banks.length} banks were given, but the layout "${layout}" has ${expected}.`;
    const hint =
      expected === 1 ? "Put all cylinders in one bank." : "Write one list of cylinders a side.";
    problems.push({ code: "bank-count", path: "/banks", message, hint });
  }
  return problems;
}

/** Lists without a single entry. */
export function checkEmpty(
  lists: readonly (readonly unknown[])[],
  word: string,
  at: (i: number) => string,
): readonly Problem[] {
  return lists.flatMap((list, i) =>
    list.length > 0
      ? []
      : [
          {
            code: `${word}-empty`,
            path: at(i),
            message: `This ${word} names no cylinder.`,
            hint: "Name its cylinders, or take it out.",
          },
        ],
  );
}

/** Neighbours are two different cylinders of this engine, each pair given once. */
export function checkNeighbours(profile: EngineProfile): readonly Problem[] {
  const names = cylinderNames(profile);
  const seen = new Set<string>();
  return (profile.neighbours ?? []).flatMap((pair, i): readonly Problem[] => {
    const path = pointer("neighbours", i);
    const unknown = pair.flatMap((name, j) =>
      names.includes(name) ? [] : [unknownCylinder(name, pointer("neighbours", i, j), names)],
    );
    if (unknown.length > 0) return unknown;
    const [a, b] = pair;
    const key = [names.indexOf(a), names.indexOf(b)].sort((x, y) => x - y).join();
    const isRepeat = seen.has(key);
    seen.add(key);
    const message = a === b ? `Cylinder ${a} cannot be its own neighbour.` : undefined;
    if (message) {
      const hint = "Write the two different cylinders that stand side by side.";
      return [{ code: "neighbours-same", path, message, hint }];
    }
    if (!isRepeat) return [];
    const again = `Cylinders ${a} and ${b} are already given as neighbours.`;
    return [{ code: "neighbours-repeat", path, message: again, hint: "Remove this pair." }];
  });
}
