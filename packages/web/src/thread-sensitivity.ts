// The thread's side of one question: how firm is the first place? Fetched when somebody first asks.
import {
  type EngineProfile,
  type Finding,
  type RepairDone,
  type Sensitivity,
  sensitivity,
} from "@half-order/core";

/** What the library says, with its own seed: the same case gives the same figures as the command. */
export function sensitivityOf(
  profile: EngineProfile,
  findings: readonly Finding[],
  repairs: readonly RepairDone[],
  shakes: number,
): Sensitivity {
  return sensitivity(profile, findings, { repairs, shakes });
}
