// How do the rules of driving travel? What decides, and the line that says so, comes first; what would change
// it and what never to do comes when the drive screen opens.
import type { DriveRuleRow } from "@half-order/core";

export type DriveOutline = Omit<DriveRuleRow, "lifts" | "never" | "grounds">;
export type DriveRest = Pick<DriveRuleRow, "lifts" | "never" | "grounds">;

export function outlineOfRule({ lifts, never, grounds, ...outline }: DriveRuleRow): DriveOutline {
  return outline;
}

export function restOfRule({ lifts, never, grounds }: DriveRuleRow): DriveRest {
  return { lifts, never, grounds };
}

/** A rule that decides as the whole one does, until the rest of it is filled in. */
export function fromOutlineOfRule(outline: DriveOutline): DriveRuleRow {
  return { ...outline, lifts: "", never: [], grounds: { basis: "memory", confidence: "low" } };
}
