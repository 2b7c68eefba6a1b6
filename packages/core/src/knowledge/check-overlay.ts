// Does an overlay fit the tables that it is laid over? Every problem at once, with the path to the
// bad field. The shape is the wire format's business: here a field is of its kind.
import { type Problem, pointer } from "../units/problem.ts";
import { PROBABILITY_FLOOR } from "../units/weight.ts";
import { changedFault } from "./change.ts";
import {
  checkGrounds,
  DOTTED,
  groundless,
  MOST_MINUTES,
  problem,
  range,
  unknown,
} from "./check-number.ts";
import { checkRepairOverlay } from "./check-repair.ts";
import { checkSpeech } from "./check-speech.ts";
import type { Knowledge } from "./knowledge.ts";
import { type FaultChange, type FaultRow, type Overlay, type Shares, UNSAID } from "./schema.ts";

/** Hypotheses end at three faults, so no more than about 0.38 of them can have exactly two. */
const MOST_TWO_FAULTS = 0.3;

/** Problems of an overlay; an empty list when it can be laid over the base. */
export function checkOverlay(base: Knowledge, overlay: Overlay): readonly Problem[] {
  const { twoFaultsShare, newFaults = [] } = overlay;
  const world: World = {
    base,
    faults: new Map([...base.faults, base.somethingElse].map((row) => [row.id, row])),
    wearable: new Set([...base.faults, ...newFaults].map(({ id }) => id)),
    checks: new Set(base.checks.map(({ id }) => id)),
  };
  return [
    ...checkGrounds(overlay.grounds, pointer("grounds")),
    ...(twoFaultsShare === undefined
      ? []
      : range(twoFaultsShare, PROBABILITY_FLOOR, MOST_TWO_FAULTS, pointer("twoFaultsShare"))),
    ...Object.entries(overlay.faults ?? {}).flatMap(([id, change]) =>
      checkChange(world, id, change),
    ),
    ...newFaults.flatMap((row, i) => checkNew(world, newFaults, row, i)),
    ...checkShares(base, overlay),
    ...Object.entries(overlay.checks ?? {}).flatMap(([id, { minutes, grounds }]) => {
      const path = pointer("checks", id);
      if (!world.checks.has(id)) return [unknown("check", id, path, [...world.checks])];
      return [
        ...checkGrounds(grounds, `${path}/grounds`),
        ...(minutes === undefined ? [] : range(minutes, 0, MOST_MINUTES, `${path}/minutes`)),
      ];
    }),
    ...checkRepairOverlay(base, overlay, world.wearable),
  ];
}

/** On every kind of ignition that had a fault before, one must be left. */
function checkShares(
  base: Knowledge,
  { faults = {}, newFaults = [] }: Overlay,
): readonly Problem[] {
  const before = base.faults.map(({ shares }) => shares);
  const after = base.faults.map(({ id, shares }) => ({ ...shares, ...faults[id]?.shares }));
  const all = [...after, ...newFaults.map(({ shares }) => shares)];
  const kinds = new Set(before.flatMap((shares) => Object.keys(shares) as (keyof Shares)[]));
  const isIn = (shares: Shares, kind: keyof Shares): boolean => (shares[kind] ?? 0) > 0;
  const empty = [...kinds].filter(
    (kind) =>
      before.some((shares) => isIn(shares, kind)) && !all.some((shares) => isIn(shares, kind)),
  );
  if (empty.length === 0) return [];
  const message = `With these shares no fault is left where the ignition is ${empty.join(", ")}.`;
  return [problem("shares-empty", "/faults", message, "Leave at least one share above 0.")];
}

interface World {
  readonly base: Knowledge;
  readonly faults: ReadonlyMap<string, FaultRow>;
  /** Ids that a fault may wear out: known ones and new ones. */
  readonly wearable: ReadonlySet<string>;
  readonly checks: ReadonlySet<string>;
}

function checkChange(world: World, id: string, change: FaultChange): readonly Problem[] {
  const path = pointer("faults", id);
  const row = world.faults.get(id);
  if (!row) return [unknown("fault", id, path, [...world.faults.keys()])];
  if (row === world.base.somethingElse) {
    const said = (["risks", "signs", "wears"] as const).filter((field) => change[field]);
    if (said.length > 0) return said.map((field) => speaks(`${path}/${field}`));
  }
  return checkRow(world, change, changedFault(row, change, UNSAID), path);
}

function checkNew(
  world: World,
  all: readonly FaultRow[],
  row: FaultRow,
  i: number,
): readonly Problem[] {
  const path = pointer("newFaults", i);
  return [
    ...checkId(world, all, row.id, i),
    // A row that was not read by the wire format may lack them whatever its type says.
    ...(row.grounds === undefined ? [groundless("fault", `${path}/grounds`)] : []),
    ...Object.entries(row.groundsOf ?? {}).flatMap(([of, grounds]) =>
      checkGrounds(grounds, path + pointer("groundsOf", of)),
    ),
    ...checkRow(world, row, row, path),
  ];
}

function checkId(
  world: World,
  all: readonly FaultRow[],
  id: string,
  i: number,
): readonly Problem[] {
  const path = pointer("newFaults", i, "id");
  if (!DOTTED.test(id)) {
    const message = `${JSON.stringify(id)} is no id of a fault.`;
    const hint = "Write a family, a dot and the fault in small letters, such as coil.wrong-part.";
    return [problem("id-wrong", path, message, hint)];
  }
  const isTaken = world.faults.has(id) || world.base.findings.has(id) || world.checks.has(id);
  if (isTaken) {
    const hint = `Choose another id; a known fault is changed under "faults".`;
    return [problem("id-taken", path, `There is a row ${JSON.stringify(id)} already.`, hint)];
  }
  if (all.findIndex((row) => row.id === id) === i) return [];
  return [problem("id-taken", path, `${JSON.stringify(id)} is there twice.`, "Keep one of them.")];
}

/** What is given, as it is and in the row that comes out of it. */
function checkRow(
  world: World,
  given: FaultChange,
  row: FaultRow,
  path: string,
): readonly Problem[] {
  const { shares = {}, reach, shows, regimes = {}, wears = [], firstCheck } = given;
  return [
    ...checkGrounds(given.grounds, `${path}/grounds`),
    ...each(shares, (share, kind) => range(share, 0, 1000, `${path}/shares/${kind}`)),
    ...(reach ? checkReach(reach, `${path}/reach`) : []),
    ...(shows === undefined ? [] : range(shows, 0, 1, `${path}/shows`)),
    ...each(regimes, (chance, regime) => range(chance, 0, 1, `${path}/regimes/${regime}`)),
    ...checkSpeech(world.base.findings, given, row, path),
    ...wears.flatMap(({ fault, times, grounds }, i) => {
      const at = `${path}/wears/${i}`;
      return [
        ...(world.wearable.has(fault) && fault !== row.id
          ? []
          : [unknown("other fault", fault, `${at}/fault`, [...world.wearable])]),
        ...range(times, PROBABILITY_FLOOR, 30, `${at}/times`),
        ...checkGrounds(grounds, `${at}/grounds`),
      ];
    }),
    ...(firstCheck === undefined || world.checks.has(firstCheck)
      ? []
      : [unknown("check", firstCheck, `${path}/firstCheck`, [...world.checks])]),
  ];
}

function checkReach(reach: FaultRow["reach"], path: string): readonly Problem[] {
  const off = each({ ...reach }, (chance, to) => range(chance, 0, 1, `${path}/${to}`));
  if (off.length > 0) return off;
  const sum = Object.values(reach).reduce((total, chance) => total + chance, 0);
  if (Math.abs(sum - 1) < 1e-6) return [];
  const message = `The ways to reach cylinders add up to ${Number(sum.toFixed(4))}.`;
  const hint = 'They are all there are and add up to 1; "none" is one of them.';
  return [problem("sum-wrong", path, message, hint)];
}

function each(
  numbers: Readonly<Partial<Record<string, number>>>,
  look: (value: number, key: string) => readonly Problem[],
): readonly Problem[] {
  return Object.entries(numbers).flatMap(([key, value = Number.NaN]) => look(value, key));
}

function speaks(path: string): Problem {
  const message = "What is not in the catalogue says nothing about any finding.";
  return problem("not-changeable", path, message, "Leave it out, or describe it as a new fault.");
}
