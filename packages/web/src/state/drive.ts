// May the engine of the open case be driven? Asked after each answer, and never kept waiting by a plan.
import type { DriveAdvice } from "@half-order/core";
import { effect, signal } from "@preact/signals";
import { caseId, findings, profile } from "./case.ts";
import { Thinker } from "./thinker.ts";
import { thread } from "./thinking.ts";

/** The last answer; it stays while the next one is worked out, but not for another case. */
export const drive = signal<DriveAdvice | undefined>(undefined);
/** True when there can be no answer: an answer of before would be no answer now. */
export const isDriveUnknown = signal(false);

let warner: Thinker | undefined;
let isFollowing = false;

/** Keeps `drive` true to the open case from now on. */
export function followDrive(): void {
  if (isFollowing) return;
  isFollowing = true;
  let last: string | undefined;
  effect(() => {
    const [id, known, given, script] = [caseId.value, profile.value, findings.value, thread.value];
    if (id !== last) {
      drive.value = undefined;
      isDriveUnknown.value = false;
    }
    last = id;
    if (!known || script === undefined) return;
    warner ??= new Thinker(script);
    const tell = (advice: DriveAdvice | undefined): void => {
      if (caseId.peek() !== id) return;
      drive.value = advice;
      isDriveUnknown.value = advice === undefined;
    };
    warner.ask({ profile: known, findings: given, repairs: [], advice: { kind: "drive" } }).then(
      ({ advice }) => tell(advice?.drive),
      // Said where the answer would stand.
      () => tell(undefined),
    );
  });
}
