// What does each level of driving ask of the driver, how are a few kilometres to safety covered, and when
// does a cylinder count as missing?
import type { DriveLevelRow, Grounds } from "./schema.ts";

const ESTIMATE: Grounds = { basis: "memory", confidence: "low" };

/** When a cylinder counts as one that misses, for the rules about how many do. */
export const MISSING_CYLINDER = {
  grounds: ESTIMATE,
  /** Counts of this drive: fewer than these, and the cylinder is not taken for dead. One dead at idle
   *  gathers them in about ten seconds. */
  fewestCounts: 50,
  /** Part of all counts; the monitor rules name each cylinder above a tenth. */
  leastShare: 0.1,
} as const;

export const DRIVE_LEVEL_ROWS: readonly DriveLevelRow[] = [
  {
    level: "stop-now",
    say: "Stop now, where it is safe. Engine off.",
    steps: [
      "Ease off at once, hazard lamps on, out of the traffic.",
      "Stop away from dry grass, rubbish and other cars.",
      "Engine off, key out, everybody out and behind the barrier.",
      "Call for a tow, or the fire service when anything burns.",
    ],
  },
  {
    level: "do-not-drive",
    say: "Do not drive. Have it towed.",
    steps: [
      "Leave the engine off.",
      "If the place itself is dangerous, roll or push it to the nearest safe spot, no further.",
      "Call for a tow to a workshop or home.",
    ],
  },
  {
    level: "to-safety-only",
    say: "A few gentle kilometres to a safe place, no further.",
    steps: [
      "Take the nearest safe place, workshop or home, whichever comes first.",
      "Light throttle only: no motorway, no hills, no trailer.",
      "Mend it before the next drive.",
    ],
  },
  {
    level: "drive-gently",
    say: "Drive gently to a check, within days.",
    steps: [
      "Light throttle and low load until it is mended.",
      "Watch the lamp: when it blinks, ease off and stop.",
      "Read the codes and counts before anybody clears them.",
    ],
  },
  {
    level: "normal-care",
    say: "Drive with normal care and have it looked at within the week.",
    steps: [
      "Watch the lamp: when it blinks, ease off and stop.",
      "Read pending codes too; a lamp that is off does not mean that nothing is stored.",
    ],
  },
];
