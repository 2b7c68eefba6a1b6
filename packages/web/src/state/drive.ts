// May the engine of the open case be driven? Asked after each answer, and never kept waiting by a plan.
import type { DriveAdvice } from "@half-order/core";
import { batch, computed, effect, signal } from "@preact/signals";
import { caseId, findings, profile } from "./case.ts";
import { ticked } from "./draft.ts";
import { Thinker } from "./thinker.ts";
import { thread } from "./thinking.ts";

/** The last answer; it stays while the next one is worked out, but not for another case. */
export const drive = signal<DriveAdvice | undefined>(undefined);
/** True when there can be no answer: an answer of before would be no answer now. */
export const isDriveUnknown = signal(false);
/** Whether somebody reads the answer in full, whether it is there in full, and whether that failed. */
const wantsAll = signal(false);
export const isInFull = signal(false);
export const isRestMissing = signal(false);

/** Asks for the answer in full from now on. */
export function followDriveInFull(): void {
  isRestMissing.value = false;
  wantsAll.value = true;
  followDrive();
}

const warner = computed(() => (thread.value === undefined ? undefined : new Thinker(thread.value)));
/** By then the first screen stands, and no thread takes the processor from it. */
const CALM_MS = 3000;
// Not left to the first answer: by then the thread has its tables.
effect(() => {
  const thinker = warner.value;
  const timer = setTimeout(() => thinker?.start(), CALM_MS);
  return () => clearTimeout(timer);
});
let isFollowing = false;

/** Keeps `drive` true to the open case from now on. */
export function followDrive(): void {
  if (isFollowing) return;
  isFollowing = true;
  let last: string | undefined;
  effect(() => {
    const inFull = wantsAll.value;
    const [id, known] = [caseId.value, profile.value];
    const given = [...findings.value, ...ticked.value];
    const thinker = warner.value;
    if (id !== last) {
      drive.value = undefined;
      isInFull.value = false;
      isDriveUnknown.value = false;
    }
    last = id;
    if (!known || !thinker) return;
    const tell = (advice: DriveAdvice | undefined): void => {
      if (caseId.peek() !== id) return;
      // Most answers change nothing here, and what is the same need not be drawn again.
      const isSame = JSON.stringify(advice) === JSON.stringify(drive.peek());
      if (advice && isSame && isInFull.peek() === inFull) return;
      batch(() => {
        drive.value = advice;
        isInFull.value = inFull && advice !== undefined;
        isDriveUnknown.value = advice === undefined;
      });
    };
    const question = { kind: "drive", isInFull: inFull } as const;
    thinker.ask({ profile: known, findings: given, repairs: [], advice: question }).then(
      ({ advice }) => tell(advice?.drive),
      () => {
        // Said where the answer would stand; what it rests on may be had even so.
        if (!inFull) return tell(undefined);
        isRestMissing.value = true;
        wantsAll.value = false;
      },
    );
  });
}
