// The proving drives of a repair: which repair is to be proven, and what the drives make of its result.
import type { ProofResult, RepairDone, RepairResult, TrialOutcome } from "@half-order/core";

/** How a drive may have gone, in the order of the buttons. */
export const DRIVES = {
  clean: { misfire: "none" },
  less: { misfire: "less" },
  same: { misfire: "same" },
  code: { misfire: "none", isCodeBack: true },
} as const satisfies Readonly<Record<string, TrialOutcome>>;

export type DriveName = keyof typeof DRIVES;

export function nameOfDrive({ misfire, isCodeBack = false }: TrialOutcome): DriveName {
  if (misfire !== "none") return misfire;
  return isCodeBack ? "code" : "clean";
}

/** The repair to prove: the one that is asked for, else the last that seemed to cure. */
export function provenIndex(repairs: readonly RepairDone[], asked: string | undefined): number {
  const index = Number(asked ?? "");
  if (asked !== undefined && Number.isInteger(index) && repairs[index]) return index;
  return repairs.findLastIndex(({ result }) => result === "cured");
}

/** What the drives say against the repair; `undefined` while all were clean. */
export function failureOf(
  result: ProofResult | undefined,
): "came-back" | "better" | "same" | undefined {
  if (!result || result.trialsLeft !== undefined || result.result === "cured") return undefined;
  return result.result;
}

/** The result that the repair has after its drives: it seemed cured before the first. */
export function resultAfter(result: ProofResult | undefined): RepairResult {
  return failureOf(result) ?? "cured";
}
