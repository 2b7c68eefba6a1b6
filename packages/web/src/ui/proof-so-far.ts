// How far is the repair proven that last seemed to cure?
import { type ProofPlan, type ProofResult, proofResult } from "@half-order/core";
import { repairs } from "../state/case.ts";
import { provenIndex } from "../state/proof.ts";
import { drivesOf } from "../state/work.ts";
import { useMending } from "./repair-mending.ts";

export interface ProofSoFar {
  readonly plan: ProofPlan;
  /** `undefined` before the first drive. */
  readonly result: ProofResult | undefined;
}

/** How many drives have proven it, all of them clean; `undefined` before. */
export function useProven(): number | undefined {
  const result = useProof()?.result;
  return result?.result === "cured" ? result.cleanTrials : undefined;
}

/** `undefined` until it has been worked out, and where no drive is noted or could be planned. */
export function useProof(): ProofSoFar | undefined {
  const index = provenIndex(repairs.value, undefined);
  const repair = repairs.value[index];
  const drives = repair ? drivesOf(repair.when ?? String(index)) : [];
  // As it looked before the repair.
  const plan = useMending(drives.length > 0 ? repair : undefined, index)?.mending?.proof;
  return plan && { plan, result: proofResult(plan, drives) };
}
