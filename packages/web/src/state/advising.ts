// What may the page ask the thread beside rankings, and what comes back? May one drive, what pays next, how is it
// mended, how firm is the first place.
import type {
  AtHand,
  CylinderName,
  DriveAdvice,
  Mending,
  Next,
  Problem,
  Sensitivity,
  ShopUnits,
} from "@half-order/core";

/** A repair at a place of the engine. */
export interface Wanted {
  readonly repair: string;
  readonly cylinder?: CylinderName;
}

export type AdviceQuestion =
  | {
      readonly kind: "drive";
      /** Also what would change the answer, and what never to do. */
      readonly isInFull: boolean;
    }
  | {
      readonly kind: "next";
      readonly atHand: AtHand;
      /** Ids of what is off the engine already. */
      readonly open: readonly string[];
      /** Ids of checks that are put off. */
      readonly putOff: readonly string[];
      /** After this the best plan so far is taken. */
      readonly patienceMs: number;
    }
  | {
      readonly kind: "mend";
      readonly wanted: Wanted;
      readonly atHand: AtHand;
      readonly open: readonly string[];
      readonly units: ShopUnits;
    }
  | {
      readonly kind: "sensitivity";
      /** How often all weights are shaken; 0 leaves it out. */
      readonly shakes: number;
    }
  /** The repairs of the question, by name. */
  | { readonly kind: "names" };

export interface Advice {
  readonly drive?: DriveAdvice;
  readonly next?: Next;
  readonly mending?: Mending;
  readonly sensitivity?: Sensitivity;
  readonly names?: readonly string[];
  /** What is wrong with the case; then there is nothing else. */
  readonly problems?: readonly Problem[];
}
