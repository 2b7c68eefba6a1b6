// Do a workshop's own numbers about repairs, and its new repairs, fit the tables?
import { type Problem, pointer } from "../units/problem.ts";
import { PROBABILITY_FLOOR } from "../units/weight.ts";
import {
  checkGrounds,
  DOTTED,
  groundless,
  MOST_MINUTES,
  problem,
  range,
  unknown,
} from "./check-number.ts";
import type { Knowledge } from "./knowledge.ts";
import { PUT_BACK } from "./put-back.ts";
import type { Overlay, RepairChange, RepairRow } from "./schema.ts";

/** No repair is sure: the new part can be bad, or sit badly. */
const MOST_WORKS = 1 - PROBABILITY_FLOOR;
const MOST_SKILL = 4;
const WHAT = { access: "access", cautions: "caution", putBack: "put-back step" } as const;

/** Problems of the changed and of the new repairs; `faults` are the ids that a repair may mend. */
export function checkRepairOverlay(
  base: Knowledge,
  { repairs = {}, newRepairs = [] }: Overlay,
  faults: ReadonlySet<string>,
): readonly Problem[] {
  return [
    ...Object.entries(repairs).flatMap(([id, change]) => {
      const path = pointer("repairs", id);
      const row = base.repairs.find((repair) => repair.id === id);
      return row
        ? checkChange(row, change, path)
        : [unknown("repair", id, path, ids(base.repairs))];
    }),
    ...newRepairs.flatMap((row, i) => checkNew(base, newRepairs, i, row, faults)),
  ];
}

function checkChange(row: RepairRow, change: RepairChange, path: string): readonly Problem[] {
  const mended = row.mends.map(({ fault }) => fault);
  const { grounds, minutes, works = {} } = change;
  return [
    ...checkGrounds(grounds, `${path}/grounds`),
    ...(minutes === undefined ? [] : range(minutes, 0, MOST_MINUTES, `${path}/minutes`)),
    ...Object.entries(works).flatMap(([fault, chance]) => {
      const at = path + pointer("works", fault);
      return mended.includes(fault)
        ? range(chance, PROBABILITY_FLOOR, MOST_WORKS, at)
        : [unknown("mended fault", fault, at, mended)];
    }),
  ];
}

function checkNew(
  base: Knowledge,
  all: readonly RepairRow[],
  i: number,
  row: RepairRow,
  faults: ReadonlySet<string>,
): readonly Problem[] {
  const path = pointer("newRepairs", i);
  const named = (field: "access" | "cautions" | "putBack", known: readonly string[]) =>
    (row[field] ?? []).flatMap((id, k) =>
      known.includes(id) ? [] : [unknown(WHAT[field], id, `${path}/${field}/${k}`, known)],
    );
  return [
    ...checkId(base, all, row.id, `${path}/id`),
    // A row that was not read by the wire format may lack them whatever its type says.
    ...(row.grounds === undefined ? [groundless("repair", `${path}/grounds`)] : []),
    ...checkGrounds(row.grounds, `${path}/grounds`),
    ...Object.entries(row.groundsOf ?? {}).flatMap(([of, grounds]) =>
      checkGrounds(grounds, path + pointer("groundsOf", of)),
    ),
    ...checkMends(row, path, faults),
    ...range(row.minutes, 0, MOST_MINUTES, `${path}/minutes`),
    ...range(row.skill, 0, MOST_SKILL, `${path}/skill`),
    ...named("access", ids(base.access)),
    ...named("cautions", ids(base.cautions)),
    ...named("putBack", ids(PUT_BACK)),
  ];
}

function checkMends(row: RepairRow, path: string, faults: ReadonlySet<string>): readonly Problem[] {
  if (row.mends.length === 0) {
    const hint = 'Write [{"fault": "coil.weak", "works": 0.9}] with what it mends.';
    return [problem("mends-missing", `${path}/mends`, "This repair mends nothing.", hint)];
  }
  return row.mends.flatMap(({ fault, works }, k) => [
    ...(faults.has(fault)
      ? []
      : [unknown("fault", fault, `${path}/mends/${k}/fault`, [...faults])]),
    ...range(works, PROBABILITY_FLOOR, MOST_WORKS, `${path}/mends/${k}/works`),
  ]);
}

function checkId(
  base: Knowledge,
  all: readonly RepairRow[],
  id: string,
  path: string,
): readonly Problem[] {
  if (!DOTTED.test(id)) {
    const message = `${JSON.stringify(id)} is no id of a repair.`;
    const hint =
      "Write a family, a dot and the repair in small letters, such as repair.solder-pin.";
    return [problem("id-wrong", path, message, hint)];
  }
  const taken = [...base.repairs, ...base.faults, ...base.checks, ...base.access];
  const isTaken = taken.some((row) => row.id === id) || base.findings.has(id);
  if (!isTaken && all.filter((row) => row.id === id).length === 1) return [];
  const hint = 'Choose another id; a known repair is changed under "repairs".';
  return [problem("id-taken", path, `There is a row ${JSON.stringify(id)} already.`, hint)];
}

function ids(rows: readonly { readonly id: string }[]): readonly string[] {
  return rows.map(({ id }) => id);
}
