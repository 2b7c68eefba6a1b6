// Stands in for the tables put together where the page is built; only the thread that weighs loads it.
import {
  CAUTIONS,
  type DriveRuleRow,
  type FaultRow,
  type Knowledge,
  type LimpHome,
} from "@half-order/core";
import address from "#packed/faults.json?url";
import linesAddress from "#packed/lines.json?url";
import { CHECKS, FINDINGS, fillFindings, onFilled } from "./asked.ts";
import { fetched } from "./fetched.ts";
import { type PackedFaults, type PackedLines, unpackFaults, unpackLines } from "./pack.ts";
import { type DriveOutline, type DriveRest, fromOutlineOfRule } from "./pack-drive.ts";

interface First extends PackedFaults {
  readonly drive: readonly DriveOutline[];
  readonly others: Omit<
    Knowledge,
    "faults" | "findings" | "checks" | "cautions" | "repairs" | "access"
  >;
}

interface Rest extends PackedLines {
  readonly drive: readonly DriveRest[];
  readonly limpHome: Required<LimpHome>;
  readonly limpHomeOlder: LimpHome;
}

const packed = await fetched<First>(address);

export const DRIVE_RULES: readonly DriveRuleRow[] = packed.drive.map(fromOutlineOfRule);

const faults: FaultRow[] = [...unpackFaults(packed, FINDINGS)];

/** Empty until they are filled in: the drive answer says no more than its level. */
export const LIMP_HOME = {} as Required<LimpHome>;
export const LIMP_HOME_OLDER = {} as LimpHome;

/** With the signs and risks of the first questions alone and without what only older engines have, until filled in. */
export const FAULTS: readonly FaultRow[] = faults;

export const KNOWLEDGE: Knowledge = {
  repairs: [],
  access: [],
  ...packed.others,
  faults: FAULTS,
  findings: new Map(FINDINGS.map((row) => [row.id, row])),
  checks: CHECKS,
  cautions: CAUTIONS,
};

// Whoever asks for all findings: a case that is read from a file holds repairs too.
onFilled(({ others }) => Object.assign(KNOWLEDGE, others));

let whole: Promise<void> | undefined;

/** Fills in what a first ranking can do without, once; rejects when it cannot be had now. */
export function fillKnowledge(): Promise<void> {
  whole ??= Promise.all([fetched<Rest>(linesAddress), fillFindings()]).then(([rest]) => {
    Object.assign(LIMP_HOME, rest.limpHome);
    Object.assign(LIMP_HOME_OLDER, rest.limpHomeOlder);
    for (const bare of rest.older) {
      faults.push({ ...bare, about: "", mend: "", signs: [], risks: [] });
    }
    unpackLines(rest, FINDINGS).forEach((lines, i) => {
      Object.assign(FAULTS[i] ?? {}, lines);
    });
    rest.drive.forEach((words, i) => {
      Object.assign(DRIVE_RULES[i] ?? {}, words);
    });
  });
  whole.catch(() => {
    whole = undefined;
  });
  return whole;
}
