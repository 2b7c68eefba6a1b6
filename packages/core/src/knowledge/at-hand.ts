// What work costs where nobody has said, and what a place does not allow.
import type { AtHand } from "./answer.ts";
import type { Grounds, PartsPrice, Tool } from "./schema.ts";
import { FORMER_TOOLS } from "./tool.ts";

export type Where = NonNullable<AtHand["where"]>;

interface PlaceLimit {
  /** Longest step, minutes, access included. */
  readonly mostMinutes: number;
  /** Cautions (ids) of steps that are not done there. */
  readonly without: readonly string[];
  /** No repair that needs a part: nobody carries one there, and no shop is near (common practice). */
  readonly isWithoutParts?: true;
}

/** A coil rail or pack known to be good: hardly anybody has one lying there (common practice). */
export const SPARE: Tool = "spare coils";

/** Whether a tool lies ready; bare hands do always, and while nobody has told all does but a spare part. */
export function holdsTool(tools: AtHand["tools"], tool: Tool): boolean {
  if (tools === undefined) return tool !== SPARE;
  return tool === "none" || toolsIn(tools).includes(tool);
}

/** The tools with what former words for several of them stood for. */
export function toolsIn(tools: NonNullable<AtHand["tools"]>): readonly Tool[] {
  return tools.flatMap((tool): readonly Tool[] => (tool === "gauge" ? FORMER_TOOLS.gauge : [tool]));
}

/** Hazard is a hard stop, never a price: what a place rules out is not offered there. */
export const PLACE_LIMITS: Readonly<Record<Where, PlaceLimit>> = {
  roadside: { mostMinutes: 20, without: ["fuel-pressure", "lifting"], isWithoutParts: true },
  driveway: { mostMinutes: 240, without: [] },
  workshop: { mostMinutes: Number.POSITIVE_INFINITY, without: [] },
};

/** A step, as far as a place can rule it out; `minutes` with what must come off first where that is known. */
export interface PlacedStep {
  readonly minutes: number;
  readonly cautions: readonly string[];
  readonly parts?: PartsPrice;
}

/** Whether a place lets a step be done there. */
export function allowsStep(
  where: Where,
  { minutes, cautions, parts = "none" }: PlacedStep,
): boolean {
  const { mostMinutes, without, isWithoutParts } = PLACE_LIMITS[where];
  if (isWithoutParts && parts !== "none") return false;
  return minutes <= mostMinutes && !cautions.some((caution) => without.includes(caution));
}

/** Of one currency unit each; only their ratio to the price of an hour counts. */
export const USUAL_PRICE: Readonly<Record<Exclude<PartsPrice, "none">, number>> = {
  small: 10,
  medium: 60,
  large: 250,
};

/** What an hour of the user's own time is worth, in the same unit. */
export const USUAL_HOUR_RATE = 25;

/** What a professional asks for finding and mending it all, in the same unit. */
export const USUAL_CALL_PRICE = 450;

/**
 * When less than this part of what may be wrong can be mended with what is at hand, whatever it costs, it is
 * handed over at once: chances like that are not worth standing beside the road for.
 */
export const LEAST_MENDABLE = 0.1;

/** Minutes until it is seen whether the engine runs right after a repair. */
export const TRIAL_MINUTES = 5;

export const AT_HAND_GROUNDS: Grounds = { basis: "memory", confidence: "low" };
