// How does a fault come into a car's life? A few plain physical stories, each with what it does to the
// onset, the work done before and how far the plugs have run. Grounds: the way the damage grows. Shares are
// round numbers by the authors and are no part of any ranking.
import type { Random } from "../units/random.ts";

/** A story, and how its outcomes are shared out. */
export interface SimulatedStory {
  readonly grounds: string;
  readonly onset: Readonly<Record<string, number>>;
  /** Work done shortly before, each with the share of cars that had it. */
  readonly work: Readonly<Record<string, number>>;
  /** How far the plugs have run, km. */
  readonly plugKm: readonly [low: number, high: number];
}

const ANY_PLUGS = [2_000, 110_000] as const;

export const SIMULATED_STORIES = {
  wear: {
    grounds:
      "Electrodes and deposits grow by the kilometre, so nobody sees a day on which it began.",
    onset: { months: 5, weeks: 4, driving: 1 },
    work: {},
    plugKm: [50_000, 160_000],
  },
  ageing: {
    grounds:
      "Rubber, resin and windings age with heat over years and give way within days to months.",
    onset: { weeks: 4, months: 2, driving: 3, start: 1 },
    work: {},
    plugKm: ANY_PLUGS,
  },
  sudden: {
    grounds: "A winding, a wire or a driver is whole until it breaks.",
    onset: { driving: 7, start: 2, weeks: 1 },
    work: {},
    plugKm: ANY_PLUGS,
  },
  "plug-work": {
    grounds: "A plug is cracked or bent by the socket or a fall: when it was fitted.",
    onset: { "after-work": 7, driving: 2, weeks: 1 },
    work: { plugs: 0.85, "coils-off": 0.3 },
    plugKm: [100, 9_000],
  },
  handling: {
    grounds: "A contact or plug that was taken off and not pushed home backs out within days.",
    onset: { "after-work": 5, driving: 4, weeks: 1 },
    work: { "connector-off": 0.35, "coils-off": 0.4, plugs: 0.2 },
    plugKm: ANY_PLUGS,
  },
  water: {
    grounds: "Water comes with rain or a wash.",
    onset: { "after-wet": 8, start: 2 },
    work: { wash: 0.4 },
    plugKm: ANY_PLUGS,
  },
  "short-trips": {
    grounds: "A nose that never gets hot gathers soot over weeks; a cold start floods it at once.",
    onset: { start: 5, weeks: 4, driving: 1 },
    work: {},
    plugKm: ANY_PLUGS,
  },
  slow: {
    grounds: "Deposits, seats and rings change over thousands of kilometres.",
    onset: { months: 6, weeks: 3, driving: 1 },
    work: {},
    plugKm: ANY_PLUGS,
  },
  heat: {
    grounds: "A gasket burns through after the head was too hot, sometimes without notice.",
    onset: { "after-overheating": 4, driving: 4, weeks: 2 },
    work: {},
    plugKm: ANY_PLUGS,
  },
} as const satisfies Record<string, SimulatedStory>;

export type SimulatedStoryName = keyof typeof SIMULATED_STORIES;

/** Work that has nothing to do with the fault, in one car of so many. */
const OTHER_WORK: Readonly<Record<string, number>> = {
  battery: 0.04,
  "air-filter": 0.04,
  plugs: 0.05,
  accessory: 0.02,
};

/** What the owner tells of a story. */
export interface SimulatedHistory {
  readonly onset: string;
  readonly work: readonly string[];
  readonly plugKm: number;
}

/** One life of a story. */
export function drawHistory(name: SimulatedStoryName, random: Random): SimulatedHistory {
  const story: SimulatedStory = SIMULATED_STORIES[name];
  const onsets = Object.keys(story.onset);
  const onset = onsets[random.choice(Object.values(story.onset))] ?? "driving";
  const drawn = { ...OTHER_WORK, ...story.work };
  const work = Object.keys(drawn).filter((key) => random.uniform() < (drawn[key] ?? 0));
  const [low, high] = story.plugKm;
  const plugKm = low + (high - low) * random.uniform();
  // New plugs have not run far.
  return { onset, work, plugKm: work.includes("plugs") ? Math.min(plugKm, 500) : plugKm };
}
