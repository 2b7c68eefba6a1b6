// How are a few kilometres to safety covered, and where does that end?
import type { Range } from "../engine/profile.ts";
import type { Grounds } from "./schema.ts";

const HABIT: Grounds = { basis: "common practice", confidence: "medium" };
const ESTIMATE: Grounds = { basis: "memory", confidence: "low" };

/** How to cover the few kilometres to safety, and where that ends. */
export interface LimpHome {
  readonly limits: {
    /** All limits are estimates: that others went further proves nothing for the next car. */
    readonly isEstimate: true;
    readonly maxSpeedKmh: number;
    readonly maxDistanceKm: number;
    readonly rpm: Range;
    /** Stop so often to smell and look. */
    readonly lookEveryMin: number;
    readonly grounds: Grounds;
  };
  readonly steps: readonly string[];
  /** Cutting the fuel of a dead cylinder, for those who can do it safely; none where no injector can be cut. */
  readonly fuelCut?: {
    readonly steps: readonly string[];
    readonly never: readonly string[];
    readonly cautions: readonly string[];
  };
  /** What must not be done, as in the drive rules. */
  readonly never: readonly string[];
  /** Do not even set out: call a tow. */
  readonly towInstead: readonly string[];
  readonly afterwards: readonly string[];
  readonly grounds: Grounds;
}

const SMELL_OIL =
  "Smell the oil on the dipstick and look at its level: petrol in it means an oil change before the next drive.";

export const LIMP_HOME: Required<LimpHome> = {
  limits: {
    isEstimate: true,
    maxSpeedKmh: 60,
    maxDistanceKm: 10,
    rpm: [2000, 3000],
    lookEveryMin: 3,
    grounds: ESTIMATE,
  },
  steps: [
    "Gentle throttle at moderate revs; do not let it lug. Little cylinder pressure needs little spark voltage.",
    "Windows open, heater on, air conditioner off.",
    "Set passengers and trailer down first where that is safe.",
    "Stop every few minutes: smell, look underneath, look at the gauges.",
    "Any new smell, smoke, noise or a blinking lamp ends the drive.",
  ],
  fuelCut: {
    steps: [
      "Only with the engine off and cool, the dead cylinder known and its injector plug in easy reach.",
      "Unplug that injector; with a dead double coil both injectors of its cylinders.",
      "It sets a code, and some cars then cut their power. The mixture readings stay wrong until it is plugged in again.",
      "Some control units cut the fuel by themselves; then there is nothing to do.",
    ],
    never: [
      "unplug it on a running engine",
      "do this on an engine that injects straight into the cylinder",
      "do this where petrol is wet around the rail",
      "open a fuel line instead",
    ],
    cautions: ["traffic", "hot-parts", "fuel", "moving-parts"],
  },
  never: [
    "unplug a coil or pull a cable instead: the fuel stays on, and an open cable ruins the coil and shocks people",
    "park over dry grass or rubbish afterwards",
  ],
  towInstead: [
    "It is dark, or this is a tunnel or a motorway.",
    "You are alone, unwell or unsure.",
    "There is no safe place to stop and look on the way.",
    "The lamp blinks again at light throttle.",
  ],
  afterwards: [
    SMELL_OIL,
    "The control unit may have switched injectors off by itself: restart before calling one dead.",
    "Expect codes of the catalyst and of the oxygen sensors. Clear and read again before blaming those parts.",
  ],
  grounds: HABIT,
};

const { fuelCut: _, ...WITHOUT_CUT } = LIMP_HOME;

/** The same with a carburettor: no injector to unplug, no electronics that cut one or store a code. */
export const LIMP_HOME_OLDER: LimpHome = { ...WITHOUT_CUT, afterwards: [SMELL_OIL] };
