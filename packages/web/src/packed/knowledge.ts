// Stands in for the tables put together where the page is built; only the thread that weighs loads it.
import { CAUTIONS, type FaultRow, type Knowledge } from "@half-order/core";
import address from "#packed/faults.json?url";
import { fillFindings, onFilled } from "./asked.ts";
import { CHECKS } from "./check.ts";
import { fetched } from "./fetched.ts";
import { FINDINGS } from "./finding.ts";
import { type PackedFaults, unpackFaults } from "./pack.ts";

type Others = Omit<Knowledge, "faults" | "findings" | "checks" | "cautions" | "repairs" | "access">;

const packed = await fetched<PackedFaults & { readonly others: Others }>(address);

export const FAULTS: readonly FaultRow[] = unpackFaults(packed, FINDINGS);

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

/** Fills in what a first ranking can do without; rejects when it cannot be had now. */
export async function fillKnowledge(): Promise<void> {
  await fillFindings();
}
