// What a ranking tells: shapes only.
import type { CylinderName } from "../engine/profile.ts";
import type { Grounds } from "../knowledge/schema.ts";

/** A fault at a place, with what can be said about it. */
export interface RankedFault {
  /** Dotted id of the fault type, e.g. `coil.half-dead`. */
  readonly fault: string;
  /** Where it sits: `coil 2+5`, `leg 3`, `engine` … */
  readonly place: string;
  readonly cylinders: readonly CylinderName[];
  /** 0..1, that it is present (alone or with another fault). */
  readonly probability: number;
  /** Name with its place, for people. */
  readonly name: string;
  readonly about: string;
  /** Key into `components`. */
  readonly component: string;
  readonly mend: string;
  /** Id of the check that looks at it first. */
  readonly firstCheck: string;
}

/** A part at its place, whatever has failed in it. */
export interface RankedComponent {
  readonly component: string;
  readonly part: string;
  readonly cylinders: readonly CylinderName[];
  readonly probability: number;
}

export interface RankedCylinder {
  readonly cylinder: CylinderName;
  /** 0..1, that it misses steadily. */
  readonly misses: number;
}

/** Faults present together. */
export interface RankedHypothesis {
  readonly faults: readonly { readonly fault: string; readonly place: string }[];
  readonly probability: number;
}

/** Do the findings agree with one another? */
export interface Fit {
  /** Jensen's conflict in dB: above 0 the findings disagree, below they support one another. */
  readonly conflictDb: number;
  /** Given above 8 dB: the finding that disagrees most with the rest; look at it again first. */
  readonly suspect?: { readonly finding: string; readonly cylinder?: CylinderName };
}

/** One firing order that the engine, known in part, may have. */
export interface OrderCandidate {
  readonly firingOrder: readonly CylinderName[];
  readonly probability: number;
  /** First place of the ranking if this were the order. */
  readonly first: string;
}

/** Must be put right with the repair, so that the new part lives. */
export interface PutRight {
  readonly finding: string;
  /** Left out too where all cylinders share the thing. */
  readonly cylinder?: CylinderName;
  readonly say: string;
  readonly grounds: Grounds;
}

export interface Ranking {
  /** Ids of cautions that the answers call for at once. */
  readonly cautions: readonly string[];
  /** All faults, likeliest first. */
  readonly ranking: readonly RankedFault[];
  readonly components: readonly RankedComponent[];
  readonly cylinders: readonly RankedCylinder[];
  /** That cylinders miss at random, no fixed set. */
  readonly atRandom: number;
  /** That no cylinder really misses. */
  readonly noMisfire: number;
  /** The likeliest sets of faults. */
  readonly hypotheses: readonly RankedHypothesis[];
  /** That nothing in the catalogue fits. */
  readonly somethingElse: number;
  /** Proven bound on the probability of what was not searched. */
  readonly unsearched: number;
  /** Hypotheses visited. */
  readonly visited: number;
  /** Places looked at: faults of the catalogue at all their places. */
  readonly instances: number;
  readonly entropyBits: number;
  readonly fit: Fit;
  /** Faults that no answer so far tells apart (under 1 dB in all), as `fault@place`. */
  readonly ambiguity: readonly (readonly string[])[];
  readonly alsoPutRight: readonly PutRight[];
  /** Only for an engine known in part. */
  readonly orders?: readonly OrderCandidate[];
}

/** One line of the ledger: what a finding did to the odds of one fault. */
export interface LedgerLine {
  readonly finding: string;
  readonly cylinder?: CylinderName;
  /** dB it added, given the findings before it. */
  readonly weightDb: number;
  /** dB the odds would lose if only this answer were withdrawn. */
  readonly withoutDb: number;
  readonly grounds: Grounds;
}

/** Prior odds, weights and posterior odds of one fault in dB; the column adds up. */
export interface Ledger {
  readonly fault: string;
  readonly place: string;
  readonly priorDb: number;
  readonly lines: readonly LedgerLine[];
  readonly posteriorDb: number;
}
