// The shapes of the knowledge: what a fault, a finding, a check and a caution state about themselves.
// Nothing here names a cylinder: rows speak of "own", "group", "neighbours"; the engine does the rest.
import type { PlaceKind } from "../engine/place.ts";
import type { Build, IgnitionKind } from "../engine/profile.ts";
import type { Tool } from "./tool.ts";

export type { Tool };

/** Where a number comes from. A work that can be looked up, the trade's habit, or somebody's estimate. */
export type Basis = "published" | "common practice" | "memory";

export type Confidence = "high" | "medium" | "low";

/** What stands behind the numbers of a row or a block; the nearest one given holds. */
export interface Grounds {
  readonly basis: Basis;
  readonly confidence: Confidence;
  /** Needed when published: key into the cited works. */
  readonly source?: string;
}

/**
 * Grounds of single numbers that rest on something else than their row or block, by path in the row
 * (`shares.rail`, `risks.work.times.leads`). The tables need none; a workshop's own numbers bring them.
 */
export type GroundsOf = Readonly<Record<string, Grounds>>;

/** Moments at which a fault may show, and how hard it then shows, 0 (not at all) to 1 (fully). */
export interface Regimes {
  readonly coldStart: number;
  readonly coldIdle: number;
  readonly hotIdle: number;
  readonly cruise: number;
  readonly pull: number;
  readonly wet: number;
  readonly bumps: number;
}

export type Regime = keyof Regimes;

/**
 * How likely a fault makes which cylinders miss, seen from its place; adds up to 1.
 * - `own`: its cylinder; one of them where the place has several
 * - `group`: all cylinders that its coil fires. Without double coils this counts as `own`
 *   (at a place with more than one cylinder: as all of them)
 * - `companions`: its cylinder and the one 360° away, whatever the ignition
 * - `mate`: only the other cylinder that its coil fires; without double coils this counts as `own`
 * - `neighbours`: its cylinder and one beside it; the two of a `neighbours` place
 * - `consecutive`: its cylinder and the next in the firing order
 * - `all`: all cylinders of its place at once (random, where these are all of the engine)
 * - `two`: any two cylinders; `bank`: a whole bank; `elsewhere`: one cylinder outside its place
 * - `random`: all or changing cylinders, no fixed set; `none`: no cylinder really misses
 */
export interface Reach {
  readonly own?: number;
  readonly group?: number;
  readonly all?: number;
  readonly companions?: number;
  readonly mate?: number;
  readonly neighbours?: number;
  readonly consecutive?: number;
  readonly two?: number;
  readonly bank?: number;
  readonly elsewhere?: number;
  readonly random?: number;
  readonly none?: number;
}

/** Of 1,000 engines of a kind that come in with a misfire or rough idle, how many have the fault.
 *  A kind left out cannot have it; `hybrid` left out takes the mean of `pack` and `rail`. */
export type Shares = Readonly<Partial<Record<IgnitionKind, number>>>;

/** Something known beforehand multiplies the odds of the fault. */
export interface RiskRow<Id extends string = string, Option extends string = string> {
  readonly finding: Id;
  /** By option of the finding: odds multiplier (above 1 likelier, below 1 less likely). */
  readonly times: Readonly<Partial<Record<Option, number>>>;
  readonly grounds?: Grounds;
}

/**
 * What the fault makes seen. For a `choice` finding: probabilities of options (what is left is spread
 * as in the background). For `presence` and `several`: chance that this fault causes the sign.
 */
export interface SignRow<Id extends string = string, Option extends string = string> {
  readonly finding: Id;
  readonly gives: Readonly<Partial<Record<Option, number>>>;
  readonly grounds?: Grounds;
}

/** The fault wears out another part at the same cylinders: odds multiplier of the two together. */
export interface WearRow {
  readonly fault: string;
  readonly times: number;
  readonly grounds?: Grounds;
}

/** Engines built otherwise than the row says cannot have the fault; left out, all can. */
export interface FaultRow<Risk extends RiskRow = RiskRow, Sign extends SignRow = SignRow>
  extends Build {
  /** Dotted address that reads aloud, `family.what`; never changes its meaning. */
  readonly id: string;
  /** Short name; `{at}` stands for the place in words ("coil of 2 and 5, one half dead"). */
  readonly name: string;
  /** What it is and why it makes a cylinder miss, one to three sentences for a beginner. */
  readonly about: string;
  readonly at: PlaceKind;
  /** The part one would mend or buy; faults of one part at one place are one component. */
  readonly part: { readonly name: string; readonly at: PlaceKind };
  /** For every number of the row that does not bring its own. */
  readonly grounds: Grounds;
  readonly groundsOf?: GroundsOf;
  readonly shares: Shares;
  readonly reach: Reach;
  /** Chance that it shows at a given moment: 1 a hard fault, 0.3 an intermittent one. */
  readonly shows: number;
  readonly regimes: Regimes;
  readonly risks: readonly Risk[];
  readonly signs: readonly Sign[];
  readonly wears?: readonly WearRow[];
  readonly firstCheck: string;
  /** What mends it, in a few words. */
  readonly mend: string;
}

/** How a finding's answer is given. */
export type FindingKind =
  | "choice" // one option
  | "presence" // yes or no
  | "several" // any number of options; those not named count as not there
  | "codes" // stored trouble codes
  | "counts"; // a number for each cylinder

export interface OptionRow extends Build {
  /** Words on the button. */
  readonly say: string;
  /** A line under it, where the words need help. */
  readonly more?: string;
  /** `choice`: probability when no fault speaks (adds up to 1). Else: chance of the sign without cause. */
  readonly chance: number;
  /** Caution (id) that this answer calls for at once. */
  readonly caution?: string;
  /** Left out, as the build: offered on every engine. Only where options stand by themselves (`several`). */
  readonly suits?: readonly IgnitionKind[];
  /**
   * Of an answer about when the trouble is there (`choice`): which part of it is left for a look that is
   * `made` so. "Only when hot" leaves little for a look at a cold engine. All unless given.
   */
  readonly leaves?: Readonly<Partial<Record<LookMade, number>>>;
  /** Of a look that is `made` cold or at idle: the answer says that the trouble was brought about first. */
  readonly provoked?: true;
}

/** How a look is made, where not as the trouble asks: `cold`, engine standing or cranked; `idle`, running. */
export type LookMade = "cold" | "idle";

/** Classes of misfiring sets, for findings that see only how many cylinders miss and how. */
export type MisfireClass = "none" | "one" | "two" | "more" | "random";

/** The same seen from one cylinder: it misses, it is spared, or all miss at random. */
export type CylinderClass = "hit" | "spared" | "random";

/** How an option follows from the regimes of a fault. */
export interface RegimeRule {
  readonly of: readonly Regime[];
  readonly how: "most" | "least" | "mean";
  /** Default 1. */
  readonly times?: number;
}

/** Turns a measured number into an option. */
export interface ReadingRule {
  readonly unit: string;
  /** Which service-manual figure it is held against; without one the number is judged as it is. */
  readonly figure?: string;
  /** Handbook range where the profile has no figure. */
  readonly otherwise?: readonly [number, number];
  /** First step whose `under` is above the value. With a figure the value is first divided by the
   *  range (by its top when above, by its bottom when below, else 1). */
  readonly steps: readonly { readonly option: string; readonly under?: number }[];
  /** Lowest and highest reading that the thing or its meter can give; others are slips of the pen. */
  readonly possible: readonly [number, number];
}

export interface FindingRow extends Build {
  readonly id: string;
  /** The question as a person would ask it. */
  readonly ask: string;
  readonly help?: string;
  readonly topic: Topic;
  readonly kind: FindingKind;
  /** `engine`: one answer. Else each answer names a cylinder; `coil`: any cylinder the coil fires. */
  readonly scope: "engine" | "cylinder" | "coil" | "connector";
  readonly options: Readonly<Record<string, OptionRow>>;
  readonly grounds: Grounds;
  /** Seen at one moment only: an intermittent fault may not show. */
  readonly momentary?: boolean;
  /**
   * Of the times that a fault hides, the part in which a `momentary` look waits for it or brings it about.
   * None unless given.
   */
  readonly awaits?: number;
  /** Left out: made whenever the trouble is there, or of something that stays. */
  readonly made?: LookMade;
  /** Told by on-board diagnosis only: an engine without it says nothing here. */
  readonly throughPort?: true;
  /** Two like parts are exchanged: the option that says that the misfire travelled with the part. */
  readonly travels?: string;
  /** Depends on which cylinders miss. A fault with a sign for it then tells what is usual where it is
   *  the cause of the miss. */
  readonly byMisfire?:
    | Readonly<Record<MisfireClass, Readonly<Record<string, number>>>>
    | Readonly<Record<CylinderClass, Readonly<Record<string, number>>>>;
  /**
   * What a cylinder that misses does by itself, whatever makes it miss. A fault that states nothing
   * about the option gets it through its reach. `choice`: whole rows; else the options that it raises.
   */
  readonly afterMisfire?: Readonly<Record<MisfireClass, Readonly<Record<string, number>>>>;
  /** Tells how far back another finding lies: by option, which part of its pull towards a fault is left. */
  readonly fades?: { readonly of: string; readonly left: Readonly<Record<string, number>> };
  /** Follows from a fault's regimes unless the fault states a row of its own. */
  readonly byRegime?: Readonly<Record<string, RegimeRule>>;
  /** Power that sharpens `byRegime` (1 mild, 2 clear). For `presence`: chance at full intensity. */
  readonly sharpness?: number;
  /** Follows from `shows`: probability for a fault that never / always shows; linear between. */
  readonly byShows?: Readonly<Record<string, readonly [never: number, always: number]>>;
  readonly reading?: ReadingRule;
  /** Left out: asked for every ignition kind. */
  readonly suits?: readonly IgnitionKind[];
  /** Place among the six first questions. */
  readonly first?: number;
}

export const TOPICS = [
  "complaint",
  "lamp and codes",
  "when it happens",
  "sound, smell, smoke",
  "history",
  "plugs and wells",
  "live data",
  "measured",
  "tried",
] as const;

export type Topic = (typeof TOPICS)[number];

export interface CautionRow {
  readonly id: string;
  readonly say: string;
  /** Places that it is about, told also while the place is not known; left out: everywhere. */
  readonly where?: readonly ("roadside" | "driveway" | "workshop")[];
  /** Belongs to every check and repair that is done at these places, whatever the hand does; no row names it. */
  readonly everyStep?: true;
  /** Not told by a drive rule once the finding was answered so. */
  readonly unless?: { readonly finding: string; readonly is: readonly string[] };
}

export interface CheckRow extends Build {
  readonly id: string;
  /** What the hand does, as an order: "Press the coil connector home until it clicks". */
  readonly name: string;
  readonly steps: readonly string[];
  readonly minutes: number;
  readonly tool: Tool;
  /** 0 anyone … 4 professional. */
  readonly skill: number;
  readonly cautions: readonly string[];
  /** The findings its outcome answers. */
  readonly yields: readonly string[];
  readonly suits?: readonly IgnitionKind[];
  /** What must come off first; its minutes are not in `minutes`, and are paid once. */
  readonly access?: readonly string[];
  /** Steps of the put-back list (ids) for what it takes off, unplugs or cuts, beside those of `access`. */
  readonly putBack?: readonly string[];
  /** Chance that a brittle part breaks on the way; none unless given. */
  readonly breaks?: number;
  /** Only where each coil has a connector of its own: of a moulded block none comes off singly. */
  readonly coilsApart?: true;
  /** Looks at every cylinder, each judged by all the others. */
  readonly everyCylinder?: true;
  /** Made instead (id) where the engine has no diagnostic port to read this through, or is built otherwise. */
  readonly instead?: string;
  readonly grounds: Grounds;
  readonly groundsOf?: GroundsOf;
}

/** Something that comes off before a hand gets at a part, once for everything behind it. */
export interface AccessRow {
  readonly id: string;
  /** The state it leaves: "coil rail off". */
  readonly say: string;
  /** Off and on again, on an engine that is easy to reach. */
  readonly minutes: number;
  /** `cylinder`, `coil`: off at one of them only. */
  readonly at: "engine" | "bank" | "coil" | "cylinder";
  /** Steps of the put-back list (ids), wherever it came off. */
  readonly putBack: readonly string[];
  readonly suits?: readonly IgnitionKind[];
  readonly grounds: Grounds;
}

/** What the parts of a repair cost, roughly; a workshop lays its own prices over it. */
export type PartsPrice = "none" | "small" | "medium" | "large";

/** Something that is mended or renewed, and what that cures. */
export interface RepairRow extends Build {
  readonly id: string;
  /** What the hand does, as an order; `{at}` stands for the place in words. */
  readonly name: string;
  /** Where it is done; a repair of a `set` cures the faults of each of its parts. */
  readonly at: PlaceKind;
  /** Chance that the engine is cured of the fault by it. */
  readonly mends: readonly { readonly fault: string; readonly works: number }[];
  /** Work alone, without `access`, on an engine that is easy to reach. */
  readonly minutes: number;
  /** 0 anyone … 4 professional. */
  readonly skill: number;
  readonly tool: Tool;
  readonly parts: PartsPrice;
  readonly access?: readonly string[];
  readonly cautions: readonly string[];
  /** Steps of the put-back list (ids) that it calls for, beside those of `access`. */
  readonly putBack: readonly string[];
  readonly suits?: readonly IgnitionKind[];
  /** As for a check. */
  readonly coilsApart?: true;
  readonly grounds: Grounds;
  readonly groundsOf?: GroundsOf;
}

/** One step between the last bolt and the first start. */
export interface PutBackRow extends Build {
  readonly id: string;
  /** As an order; `{torque}` and `{gap}` stand for the figures of the profile. */
  readonly say: string;
  /** Said instead where the profile does not hold the figure. */
  readonly without?: string;
  /** Said instead on an engine with a carburettor. */
  readonly carburettor?: string;
  /** Done with a code reader: left out on an engine without a diagnostic port. */
  readonly throughPort?: true;
  /** Said instead where it is told what is at hand and this tool is not: how people do it without. */
  readonly lacking?: { readonly tool: Tool; readonly say: string };
  readonly suits?: readonly IgnitionKind[];
  readonly cautions?: readonly string[];
  /** Ascending: in which order the hand does it. */
  readonly order: number;
}

/** May one drive? Most cautious first. */
export const DRIVE_LEVELS = [
  "stop-now",
  "do-not-drive", // be towed
  "to-safety-only", // a few gentle kilometres
  "drive-gently", // to a check soon
  "normal-care",
] as const;

export type DriveLevel = (typeof DRIVE_LEVELS)[number];

/** What must have been looked at before it is said that one may drive: the first that an engine has. */
export const DRIVE_LOOKS = ["lamp", "alarm"] as const;

/**
 * When a drive rule holds. There is no "not" and no probability in it, so that one more answer can only
 * make the advice more cautious.
 * - `finding`: one of its answers is among `is` (a family of codes counts as an answer)
 * - `missing`: so many cylinders are known to miss, and at least this part of all
 */
export type DriveCondition =
  | { readonly finding: string; readonly is: readonly string[] }
  | { readonly missing: { readonly atLeast: number; readonly share?: number } }
  | { readonly all: readonly DriveCondition[] }
  | { readonly any: readonly DriveCondition[] };

export interface DriveRuleRow extends Build {
  readonly id: string;
  readonly level: DriveLevel;
  readonly when: DriveCondition;
  readonly reason: string;
  /** What would have to be otherwise before the rule no longer counts. */
  readonly lifts: string;
  /** What must not be done, as "Never …" would go on. */
  readonly never: readonly string[];
  readonly cautions: readonly string[];
  /** Until this was looked at, the engine is not turned even for a check. */
  readonly restsUntil?: (typeof DRIVE_LOOKS)[number];
  readonly grounds: Grounds;
}

/** What a level of driving means to the driver. */
export interface DriveLevelRow {
  readonly level: DriveLevel;
  readonly say: string;
  /** In this order. */
  readonly steps: readonly string[];
}

/** An answer makes it known that something must be put right with a repair, so that it lives. */
export interface CompanyRow {
  readonly finding: string;
  readonly option: string;
  /** Parts (see `FaultRow.part.name`) whose repair needs it. */
  readonly parts: readonly string[];
  /** Ids of repairs that put it right themselves. */
  readonly doneBy?: readonly string[];
  readonly say: string;
  readonly grounds: Grounds;
}

/** What changes in a known fault; every field may be left out, and what is left out stays. */
export interface FaultChange {
  /** For the numbers of this change that do not bring their own. */
  readonly grounds?: Grounds;
  readonly name?: string;
  readonly about?: string;
  /** The kinds that are named; the others stay. 0: this kind cannot have it. */
  readonly shares?: Shares;
  /** As a whole: it adds up to 1. */
  readonly reach?: Reach;
  readonly shows?: number;
  readonly regimes?: Readonly<Partial<Regimes>>;
  /** Option by option; a finding that the fault did not speak of is added. */
  readonly risks?: readonly RiskRow[];
  readonly signs?: readonly SignRow[];
  readonly wears?: readonly WearRow[];
  readonly firstCheck?: string;
  readonly mend?: string;
}

export interface CheckChange {
  readonly grounds?: Grounds;
  readonly minutes?: number;
}

/** What changes in a known repair. */
export interface RepairChange {
  readonly grounds?: Grounds;
  readonly minutes?: number;
  readonly parts?: PartsPrice;
  /** By fault that the repair mends already: chance that it is cured. */
  readonly works?: Readonly<Record<string, number>>;
}

/** What stands behind a workshop's number that does not say. */
export const UNSAID: Grounds = { basis: "common practice", confidence: "low" };

/** A workshop's own numbers, to be laid over the tables. */
export interface Overlay {
  /** Whose numbers these are. */
  readonly title?: string;
  /** For every number that does not bring its own; `UNSAID` when left out. */
  readonly grounds?: Grounds;
  /** Part of all complaints that has exactly two unrelated faults. */
  readonly twoFaultsShare?: number;
  /** By id of a known fault. */
  readonly faults?: Readonly<Record<string, FaultChange>>;
  /** Whole rows. */
  readonly newFaults?: readonly FaultRow[];
  /** By id of a known check. */
  readonly checks?: Readonly<Record<string, CheckChange>>;
  /** By id of a known repair. */
  readonly repairs?: Readonly<Record<string, RepairChange>>;
  /** Whole rows. */
  readonly newRepairs?: readonly RepairRow[];
}
