// Which files of knowledge does the build put beside the page's scripts?
import { CHECKS, FAULTS, FINDINGS, KNOWLEDGE } from "@half-order/core";
import { outlineOf, packFaults, wordsOf } from "./src/packed/pack.ts";

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
  return {
    "asked.json": {
      findings: FINDINGS.map((row) => (row.first === undefined ? outlineOf(row) : row)),
      checks: CHECKS.map((row) => ({ ...row, steps: [] })),
    },
    "faults.json": { ...packFaults(faults, FINDINGS), others: first },
    "later.json": {
      findings: FINDINGS.filter(({ first }) => first === undefined),
      others: { repairs, access, company },
    },
    "fault-words.json": words.faults,
    "steps.json": words.steps,
  };
}
