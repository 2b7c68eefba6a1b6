// A workshop's own numbers laid over the tables: what it says counts, all else stays.
import { InputError } from "../units/problem.ts";
import { changedCheck, changedFault, changedRepair } from "./change.ts";
import { checkOverlay } from "./check-overlay.ts";
import type { Knowledge } from "./knowledge.ts";
import {
  type CheckRow,
  type FaultRow,
  type Grounds,
  type Overlay,
  type RepairRow,
  UNSAID,
} from "./schema.ts";

/**
 * Knowledge with the overlay in it, for `rank`, `why` and `provenance`; the base stays as it is, and
 * overlays may be laid over one another. Shares count against one another, so they need not add up to
 * 1,000 afterwards. Throws an `InputError` with every problem when the overlay does not fit the base.
 */
export function overlayKnowledge(base: Knowledge, overlay: Overlay): Knowledge {
  const problems = checkOverlay(base, overlay);
  if (problems.length > 0) throw new InputError(problems);
  const { grounds = UNSAID, newFaults = [], newRepairs = [], twoFaultsShare } = overlay;
  const faults = new Map(Object.entries(overlay.faults ?? {}));
  const checks = new Map(Object.entries(overlay.checks ?? {}));
  const repairs = new Map(Object.entries(overlay.repairs ?? {}));
  const ofFault = (row: FaultRow): FaultRow => withChange(row, faults, changedFault, grounds);
  const ofCheck = (row: CheckRow): CheckRow => withChange(row, checks, changedCheck, grounds);
  const ofRepair = (row: RepairRow): RepairRow => withChange(row, repairs, changedRepair, grounds);
  return {
    ...base,
    faults: [...base.faults.map(ofFault), ...newFaults],
    somethingElse: ofFault(base.somethingElse),
    checks: base.checks.map(ofCheck),
    repairs: [...base.repairs.map(ofRepair), ...newRepairs],
    ...(twoFaultsShare === undefined ? {} : { twoFaultsShare, twoFaultsGrounds: grounds }),
  };
}

function withChange<Row extends { readonly id: string }, Change>(
  row: Row,
  changes: ReadonlyMap<string, Change>,
  changed: (row: Row, change: Change, grounds: Grounds) => Row,
  grounds: Grounds,
): Row {
  const change = changes.get(row.id);
  return change === undefined ? row : changed(row, change, grounds);
}
