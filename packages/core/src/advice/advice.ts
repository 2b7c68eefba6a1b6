// What comes out of the advice room: the next step, what else could be done, and what each would mean.
import type { CylinderName } from "../engine/profile.ts";
import type { Finding } from "../knowledge/answer.ts";
import type { PutBackLine } from "../service/put-back.ts";
import type { Opening } from "./access.ts";

/** One way in which a check may come out. */
export interface CheckOutcome {
  /** The answers that make it; empty for "anything else". */
  readonly answers: readonly Finding[];
  readonly probability: number;
  /**
   * The part that would then lead, with the probability that it failed in whatever way; left out where the engine
   * then runs right and is to be proven. Of parts that differ in nothing but their cylinder, the first.
   */
  readonly leader?: {
    /** As in `Ranking.components`. */
    readonly component: string;
    /** Its likeliest way of failing, and where. */
    readonly fault: string;
    readonly place: string;
    /** The part with those alike, or the fault where it is the only way. */
    readonly name: string;
    readonly probability: number;
  };
}

/** A check at a place of this engine. */
export interface NextCheck {
  readonly kind: "check";
  readonly check: string;
  readonly name: string;
  /** Cylinders at which to look; empty for a check of the whole engine. */
  readonly cylinders: readonly CylinderName[];
  /** What must come off first and is not off yet. */
  readonly opens: readonly Opening[];
  readonly minutes: number;
  /** Minutes that it is expected to save, its own already taken off; may be negative. */
  readonly worthMinutes: number;
  /** What it tells of which fault it is, bits. */
  readonly tellsBits: number;
  /** Ids of cautions that are about this place and the state of the engine, to be read first. */
  readonly cautions: readonly string[];
  /** What it takes off, unplugs or cuts, to be put back before the next start, in the order of the hand. */
  readonly putBack: readonly PutBackLine[];
  readonly outcomes: readonly CheckOutcome[];
}

/** A repair at a place of this engine. */
export interface NextRepair {
  readonly kind: "repair";
  readonly repair: string;
  readonly name: string;
  readonly cylinders: readonly CylinderName[];
  readonly opens: readonly Opening[];
  /** Work, without the price of parts. */
  readonly minutes: number;
  /** Price of the parts in the user's money; in a made-up unit where no prices were given. */
  readonly partsPrice: number;
  /** Chance that the engine runs right after it. */
  readonly cures: number;
  /** Ids of cautions that are about this place, to be read first. */
  readonly cautions: readonly string[];
  /** True where it is made already: start the engine, and note its result among the repairs. */
  readonly isMade?: true;
  /** Why it comes before anything that the costs would put first. */
  readonly because?: string;
}

/** Hand it to somebody who has what it takes: nothing at hand pays against that. */
export interface NextCall {
  readonly kind: "call";
}

export type NextStep = NextCheck | NextRepair | NextCall;

/** Something that would tell or mend, and why it is not offered. */
export interface Withheld {
  readonly id: string;
  readonly name: string;
  /**
   * `spare`: it would settle it, and wants a good part to try, which is not said to be there. `rest`: the
   * answers so far say that the engine must stay off.
   */
  readonly why: "tool" | "spare" | "skill" | "place" | "rest";
}

export interface Next {
  /** What pays most now. */
  readonly step: NextStep;
  /** From here until the engine runs right, minutes; parts and a call are counted at the user's hour rate. */
  readonly expectedMinutes: number;
  /** The same without any further check: repairs in the order that costs least. */
  readonly expectedMinutesWithoutChecks: number;
  /** Chance that repairs alone, in the best order, end at a professional's. */
  readonly callChance: number;
  /** Chance that something of all that can be done with what is at hand would mend it, whatever it costs. */
  readonly mendable: number;
  /** What an hour of the user's time is taken to be worth: as given, else the usual rate. */
  readonly hourRate: number;
  /** Checks worth looking at, best first. */
  readonly checks: readonly NextCheck[];
  /** Repairs in the order in which they would be tried if nothing more were checked. */
  readonly repairs: readonly NextRepair[];
  /** What tools, skill, place or the state of the engine rule out, most telling first. */
  readonly withheld: readonly Withheld[];
}
