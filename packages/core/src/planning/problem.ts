// What has to be known to say what to do next? Chances, costs and what each step shows; no engine.

/**
 * A thing that does not run, and what can be done about it. Costs are in one unit (minutes, money)
 * and at least 0. All arrays "by state" have the length of `chance`. The work ends when a trial shows
 * that it runs; whether that can be believed of a fault that comes and goes is for the caller to judge.
 *
 * Only to tell states apart, give each a repair that costs more than all tests together, the same for
 * all, and take that cost off again.
 */
export interface PlanProblem {
  /** By state: probability, adding up to 1. A state says all that is wrong; states exclude one another. */
  readonly chance: Float64Array;
  readonly tests: readonly PlanTest[];
  readonly repairs: readonly PlanRepair[];
  /** What it costs to hand it to someone who certainly mends it; left out: there is nobody to call. */
  readonly callCost?: number;
  /** By access (a cover, a lift): what opening it costs, paid by the first step that needs it. */
  readonly accessCost?: readonly number[];
  /**
   * Cost of seeing whether it runs after a repair (default 0). Above 0, several repairs may be done
   * before one trial.
   */
  readonly trialCost?: number;
}

/** What a step asks of the place where it is done. */
export interface PlanAccess {
  /** Accesses that must be open for it; those still closed are opened and paid for. */
  readonly access?: readonly number[];
  /** Accesses that it leaves open without being paid for: its own cost holds that work. */
  readonly opens?: readonly number[];
}

/** Something to look at or measure, once. It changes nothing but what is known. */
export interface PlanTest extends PlanAccess {
  readonly cost: number;
  /** [outcome][state]: P(outcome | state). Over the outcomes each state adds up to 1. */
  readonly outcomes: readonly Float64Array[];
}

/** Something to mend, once. Whether it runs afterwards is seen, at the cost of a trial. */
export interface PlanRepair extends PlanAccess {
  /** Paid whenever it is done; with `lookCost`, paid only when looking shows that this was it. */
  readonly cost: number;
  /**
   * Look first, repair only what is found bad: the cost of looking, always paid. A look that finds
   * nothing needs no trial. Such a component is looked at even when it is the last one left; to have
   * the last one inferred, give the look as a test and the repair as a repair.
   */
  readonly lookCost?: number;
  /** By state: chance that all of it runs right after the repair. Keep it 0 where the repair is no use. */
  readonly cures: Float64Array;
  /** Where a repair mends a part of what is wrong: what a state becomes when it does not run yet. */
  readonly turns?: readonly PlanTurn[];
}

/** A repair in state `from` leaves state `to` with this chance. cures[from] and its turns add up to at most 1. */
export interface PlanTurn {
  readonly from: number;
  readonly to: number;
  readonly chance: number;
}

/** One thing to do. */
export type Step =
  | { readonly kind: "test"; readonly test: number }
  /** `thenTry` false: do another repair before seeing whether it runs. */
  | { readonly kind: "repair"; readonly repair: number; readonly thenTry: boolean }
  | { readonly kind: "call" };

/** What is known and done by now. Made by `startOf`, `afterOutcome` and `afterRepair`. */
export interface PlanState {
  /** By state: probability that this is wrong now; adds up to 1 − `mended`. */
  readonly chance: Float64Array;
  /** Probability that it runs already, unseen, because no trial followed the last repair; else 0. */
  readonly mended: number;
  /** True between a repair and its trial: then only further repairs, the last one tried, may follow. */
  readonly untried: boolean;
  /** By test, by repair, by access: 1 when done, when open. */
  readonly tested: Uint8Array;
  readonly repaired: Uint8Array;
  readonly open: Uint8Array;
}

/** How long to think: until the best plan is proven, or one of these says that it is enough. */
export interface PlanOptions {
  /** Asked between pieces of work; true ends the search. The first look ahead is always done. */
  readonly isEnough?: () => boolean;
  /** Most situations to weigh up (default 100,000); 0: only those one step ahead. */
  readonly maxWork?: number;
  /** Also settle which other first steps are exactly as good (default false). */
  readonly settleTies?: boolean;
  /**
   * By test: of those worth about as much as the best (nine tenths of it), the one with the smallest number
   * comes first. Left out: the one worth most, by however little.
   */
  readonly prefer?: (test: number) => number;
}

/** What to do next, and why. */
export interface Plan {
  /** Undefined when nothing is left that could help and there is nobody to call. */
  readonly step: Step | undefined;
  /** Every first step as cheap as `step`, so far as was looked; with `settleTies` and `isOptimal`, all. */
  readonly ties: readonly Step[];
  /** Expected cost until it runs, of a plan that was found; never above that of `repairOrder`. */
  readonly expectedCost: number;
  /** No plan can cost less than this. */
  readonly atLeast: number;
  /** The two are equal: the plan is proven best. */
  readonly isOptimal: boolean;
  /** Situations weighed up to find it. */
  readonly work: number;
  /** Probability that all that could help has been done and it still does not run; 0 if one can call. */
  readonly unmended: number;
  /** Repairs by probability per cost, made up to date after each; the call, where it comes, is the last. */
  readonly repairOrder: readonly OrderedStep[];
  /** Expected cost of doing only that. */
  readonly repairOrderCost: number;
  /** Cheapest plan found that begins with something else than a test. */
  readonly untestedCost: number;
  /** By test not done yet. */
  readonly byTest: readonly TestWorth[];
}

/** A step of the repair order. */
export interface OrderedStep {
  readonly step: Step;
  /** Probability that the work gets as far as this step. */
  readonly reached: number;
  /** Probability that it is this step that makes it run. */
  readonly cured: number;
}

/** What a test is worth now. */
export interface TestWorth {
  readonly test: number;
  /** Untested cost − (its cost + expected cost after its answer): above 0 it saves more than it costs. */
  readonly worth: number;
  /** By outcome: its probability now. */
  readonly outcomeChance: Float64Array;
}
