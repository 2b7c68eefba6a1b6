// Trouble codes (generic, of the public fault-code standard) and what they say about cylinders.
import type { Grounds } from "./schema.ts";

/** Last three digits minus 300 is the cylinder: P0301 is 1, P0312 is 12. */
export const MISFIRE_CODES = { from: "P0301", to: "P0312", minus: 300, several: "P0300" } as const;

export interface CodeFamily {
  /** Option of the finding `codes`. */
  readonly option: string;
  /** Single codes, or `first-last` where all between belong. */
  readonly codes: readonly string[];
  /** The code names a cylinder: its last three digits minus `minus`, in steps of `step`, from 1 on. */
  readonly cylinder?: readonly {
    readonly codes: string;
    readonly minus: number;
    readonly step: number;
  }[];
}

/** Numbers of the generic codes: published in the public standard, known here from restatements. */
export const CODE_GROUNDS: Grounds = { basis: "common practice", confidence: "high" };

export const CODE_FAMILIES: readonly CodeFamily[] = [
  {
    option: "lean",
    codes: ["P0171", "P0174", "P2177", "P2179", "P2187", "P2189", "P2191", "P2193"],
  },
  {
    option: "rich",
    codes: ["P0172", "P0175", "P2178", "P2180", "P2188", "P2190", "P2192", "P2194"],
  },
  { option: "coil-circuit", codes: ["P0350-P0362", "P2300-P2335"] },
  {
    option: "injector-circuit",
    codes: ["P0201-P0212", "P0261-P0296"],
    cylinder: [
      { codes: "P0201-P0212", minus: 201, step: 1 },
      { codes: "P0261-P0296", minus: 261, step: 3 },
    ],
  },
  { option: "air-metering", codes: ["P0068", "P0100-P0109"] },
  { option: "crank", codes: ["P0335-P0339", "P0370-P0379", "P0385-P0389"] },
  { option: "cam", codes: ["P0340-P0349", "P0365-P0369", "P0390-P0394"] },
  { option: "timing", codes: ["P0008-P0009", "P0016-P0019"] },
  { option: "knock", codes: ["P0325-P0334"] },
  { option: "throttle", codes: ["P0120-P0124", "P0220-P0224", "P2135"] },
  { option: "coolant-sensor", codes: ["P0115-P0119", "P0125", "P0128"] },
  { option: "oxygen-sensor", codes: ["P0130-P0141", "P0150-P0161", "P2195-P2198"] },
  { option: "catalyst", codes: ["P0420", "P0430"] },
  { option: "egr", codes: ["P0400-P0406", "P0489-P0490"] },
  { option: "purge", codes: ["P0441", "P0443-P0445", "P0458-P0459", "P0496-P0497"] },
  { option: "idle", codes: ["P0505-P0507", "P050D"] },
  { option: "voltage", codes: ["P0560-P0563"] },
  { option: "fuel-pressure", codes: ["P0087-P0088", "P0190-P0194", "P0627-P0629"] },
  { option: "low-fuel", codes: ["P0313"] },
  { option: "cold-start", codes: ["P0316"] },
  { option: "fuel-cut", codes: ["P0363"] },
  { option: "not-learned", codes: ["P0315"] },
  { option: "control-unit", codes: ["P0606", "P0685"] },
];

/**
 * From the cylinders that really miss to the codes that are stored. Estimates; they rest on the rule
 * that a monitor may name one cylinder alone above 90 % of the misfires and must set the code for
 * several when two have more than 10 % each.
 */
export const CODES_FROM_MISFIRE = {
  grounds: { basis: "memory", confidence: "low" } satisfies Grounds,
  /** One cylinder misses: its code; another cylinder's; only P0300; none yet. */
  one: { own: 0.92, other: 0.03, onlySeveral: 0.01, none: 0.04 },
  /** A fixed set of two or more: all of them; some; only P0300; none yet. */
  set: { all: 0.58, some: 0.24, onlySeveral: 0.1, none: 0.08 },
  /** At random: only P0300; several cylinders; one; none. */
  random: { onlySeveral: 0.55, several: 0.3, one: 0.07, none: 0.08 },
  /** Nothing really misses. */
  nothing: { none: 0.93, onlySeveral: 0.05, one: 0.02 },
  /** Chance that P0300 stands beside codes of cylinders. */
  severalBeside: { one: 0.13, set: 0.45, random: 0.6 },
  /** Share of cases in which the codes follow none of this: each cylinder named or not at random. */
  noise: { share: 0.02, named: 0.25 },
} as const;

/** From the cylinders that really miss to counts by cylinder: a Dirichlet-multinomial. */
export const COUNTS_FROM_MISFIRE = {
  grounds: { basis: "memory", confidence: "low" } satisfies Grounds,
  /** Below this sum the counter says only that little was counted. */
  fewest: 5,
  /** Chance of so little, by what really happens. */
  littleCounted: { nothing: 0.92, misfire: 0.12 },
  /** Share of the counts that falls on cylinders which do not miss. */
  strays: 0.05,
  /** Counters are two bytes wide and end here. */
  mostCounted: 65_535,
  /** Sum of the Dirichlet weights: how closely the shares follow what really happens. */
  firmness: 6,
} as const;
