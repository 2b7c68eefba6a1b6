// Which files of knowledge does the build put beside the page's scripts?
import { CHECKS, FAULTS, FINDINGS, KNOWLEDGE } from "@half-order/core";
import { outlineOf, packFaults, wordsOf } from "./src/packed/pack.ts";

/** By file name, what is in it. */
export function packedFiles(): Readonly<Record<string, unknown>> {
  const { faults, findings, checks, cautions, ...others } = KNOWLEDGE;
  const odd = Object.entries(others).filter(([, value]) => value instanceof Map);
  if (odd.length > 0) throw new Error(`No file can hold ${odd.map(([name]) => name).join(", ")}.`);
  const { repairs, access, ...first } = others;
  const words = wordsOf(FAULTS, CHECKS);
  return {
    "asked.json": {
      findings: FINDINGS.map((row) => (row.first === undefined ? outlineOf(row) : row)),
      checks: CHECKS.map((row) => ({ ...row, steps: [] })),
    },
    "faults.json": { ...packFaults(faults, FINDINGS), others: first },
    "later.json": {
      findings: FINDINGS.filter(({ first }) => first === undefined),
      others: { repairs, access },
    },
    "fault-words.json": words.faults,
    "steps.json": words.steps,
  };
}
