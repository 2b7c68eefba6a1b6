// Which checks mend something by the way, and which swaps prove a part: what their answers leave to do?
import type { Finding } from "./answer.ts";
import type { Grounds } from "./schema.ts";

/** An answer after which a repair counts as made, whether it was meant as one or not. */
export interface MadeByCheckRow {
  readonly finding: string;
  /** Left out: whatever the answer. */
  readonly option?: string;
  /** Ids of repairs; the first that suits the engine was made. */
  readonly repairs: readonly string[];
  /** The finding that tells how the engine ran afterwards; without its answer only a start can tell. */
  readonly toldBy?: string;
  /** The option of `toldBy` that says that it runs right now. */
  readonly curedBy?: string;
  readonly grounds: Grounds;
}

const HABIT: Grounds = { basis: "common practice", confidence: "medium" };

export const MADE_BY_CHECK: readonly MadeByCheckRow[] = [
  {
    finding: "boot.seat",
    option: "high",
    repairs: ["repair.boots-home", "repair.leads-home"],
    grounds: HABIT,
  },
  {
    finding: "connector.lock",
    option: "loose",
    repairs: ["repair.connector-home"],
    toldBy: "connector.push",
    curedBy: "cured",
    grounds: HABIT,
  },
  {
    finding: "connector.push",
    repairs: ["repair.connector-home"],
    toldBy: "connector.push",
    curedBy: "cured",
    grounds: HABIT,
  },
  {
    finding: "wells-dried",
    repairs: ["repair.well-dry"],
    toldBy: "wells-dried",
    curedBy: "yes",
    grounds: HABIT,
  },
  // Whoever fits another rail, pack or coil presses its connector home.
  {
    finding: "swap.rail",
    repairs: ["repair.connector-home"],
    toldBy: "swap.rail",
    grounds: HABIT,
  },
  {
    finding: "swap.coil",
    repairs: ["repair.connector-home"],
    toldBy: "swap.coil",
    grounds: HABIT,
  },
];

/** Does one of these answers say that the engine runs right, by what a check set right? */
export function saysCured(answers: readonly Pick<Finding, "finding" | "answer">[]): boolean {
  return MADE_BY_CHECK.some(({ toldBy, curedBy }) =>
    answers.some(({ finding, answer }) => finding === toldBy && answer === curedBy),
  );
}

/** What is done with the engine once something was mended, by what is known of it; `resting`: while it should not run. */
export const TRIAL = {
  cautions: ["moving-parts", "exhaust-gas"],
  /** A check mended it by the way, and nobody has started the engine since. */
  check: {
    say: "Start the engine and see whether it runs right now, as when the fault shows",
    resting:
      "Start the engine for a minute at most, without driving, and see whether it runs right now",
    because:
      "A check has set this right by the way. It may have been the fault, so try before any further check.",
  },
  /** A repair without a result. */
  repair: {
    say: "Start the engine and see whether it runs right now, as when the fault shows",
    resting:
      "Start the engine for a minute at most, without driving, and see whether it runs right now",
    because: "This was mended and not tried yet, so try before any further check.",
  },
  /** The last repair, or what a check set right by the way, seems to have cured it. */
  cured: {
    say: "Prove that it is mended: drive as when the fault shows",
    resting:
      "Let it idle for a minute. Only if it stays even and no lamp blinks, prove it on a drive as when the fault shows",
    because:
      "It runs right since this was mended. Only clean drives prove it, so nothing else is looked for.",
  },
} as const;

/** An answer that tells which of two parts carried the fault. */
export interface ProvenBySwapRow {
  readonly finding: string;
  readonly option: string;
  /** Ids of repairs; the first that suits the engine renews the part. */
  readonly repairs: readonly string[];
  /** The good part came from elsewhere, so it lies there or is fitted already. */
  readonly hasPart?: true;
  /** What becomes of the part that is good and of the one that is not. */
  readonly say: string;
  readonly grounds: Grounds;
}

export const PROVEN_BY_SWAP: readonly ProvenBySwapRow[] = [
  {
    finding: "swap.rail",
    option: "cured",
    repairs: ["repair.rail", "repair.pack"],
    hasPart: true,
    say: "The misfire is gone with the good part. Fit the old one once more: if the misfire returns, the old one carried it. Then renew that one, or keep the good one in. If it stays away, it was the connector.",
    grounds: HABIT,
  },
  {
    finding: "swap.coil",
    option: "moved",
    repairs: ["repair.coil-single", "repair.coil-double"],
    say: "The misfire went with the coil. Put the good coil back in its own place and renew the one that carried the misfire.",
    grounds: HABIT,
  },
  {
    finding: "swap.plug",
    option: "moved",
    repairs: ["repair.plug-one"],
    say: "The misfire went with the plug. Put the good plug back in its own place and renew the one that carried the misfire.",
    grounds: HABIT,
  },
  {
    finding: "swap.boot",
    option: "moved",
    repairs: ["repair.boot-one"],
    say: "The misfire went with the boot. Put the good boot back in its own place and renew the one that carried the misfire.",
    grounds: HABIT,
  },
  {
    finding: "swap.lead",
    option: "moved",
    repairs: ["repair.lead-one"],
    say: "The misfire went with the cable. Put the good cable back in its own place and renew the one that carried the misfire.",
    grounds: HABIT,
  },
  {
    finding: "swap.injector",
    option: "moved",
    repairs: ["repair.injector-one"],
    say: "The misfire went with the injector. Leave the good one where it is or put it back with new seals, and renew the one that carried the misfire.",
    grounds: HABIT,
  },
];

/** From this chance that the renewed part cures on, a swap is conclusive. */
export const CONCLUSIVE = {
  leastCures: 0.6,
  grounds: { basis: "memory", confidence: "low" },
} as const;
