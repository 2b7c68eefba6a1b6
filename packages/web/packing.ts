// Which files of knowledge does the build put beside the page's scripts?
import {
  CHECKS,
  DRIVE_RULES,
  FAULTS,
  FINDINGS,
  KNOWLEDGE,
  LIMP_HOME,
  LIMP_HOME_OLDER,
} from "@half-order/core";
import { allLines, firstLines, outlineOf, packFaults, wordsOf } from "./src/packed/pack.ts";
import { outlineOfRule, restOfRule } from "./src/packed/pack-drive.ts";

/** By file name, what is in it. */
export function packedFiles(): Readonly<Record<string, unknown>> {
  const { faults, findings, checks, cautions, ...others } = KNOWLEDGE;
  const odd = Object.entries(others).filter(([, value]) => value instanceof Map);
  if (odd.length > 0) throw new Error(`No file can hold ${odd.map(([name]) => name).join(", ")}.`);
  // What a ranking of the first answers can do without comes later.
  const { repairs, access, company, ...rest } = others;
  const isFirst = (id: string): boolean => findings.get(id)?.first !== undefined;
  const first = { ...rest, company: company.filter(({ finding }) => isFirst(finding)) };
  const words = wordsOf(FAULTS, CHECKS);
  const packed = packFaults(faults, FINDINGS);
  return {
    "asked.json": {
      findings: FINDINGS.map((row) => (row.first === undefined ? outlineOf(row) : row)),
    },
    "faults.json": {
      ...firstLines(packed, FINDINGS),
      drive: DRIVE_RULES.map(outlineOfRule),
      others: first,
    },
    "lines.json": {
      ...allLines(packed),
      drive: DRIVE_RULES.map(restOfRule),
      limpHome: LIMP_HOME,
      limpHomeOlder: LIMP_HOME_OLDER,
    },
    "later.json": {
      findings: FINDINGS.filter(({ first }) => first === undefined),
      checks: CHECKS.map((row) => ({ ...row, steps: [] })),
      others: { repairs, access, company },
    },
    "fault-words.json": words.faults,
    "steps.json": words.steps,
  };
}
