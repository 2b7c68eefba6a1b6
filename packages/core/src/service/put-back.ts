// What must be put back, and how, before the first start after a repair?
import { checkProfile } from "../engine/check-profile.ts";
import type { EngineProfile, Range } from "../engine/profile.ts";
import { ACCESS_ROWS } from "../knowledge/access.ts";
import type { AtHand } from "../knowledge/answer.ts";
import { holdsTool } from "../knowledge/at-hand.ts";
import { COVER_PUT_BACK, PUT_BACK } from "../knowledge/put-back.ts";
import type { PutBackRow } from "../knowledge/schema.ts";
import { suitsEngine } from "../knowledge/suits.ts";
import { convert } from "../units/convert.ts";
import { nearest } from "../units/nearest.ts";
import { InputError, type Problem, pointer } from "../units/problem.ts";

/** The units in which a user reads gap and torque. */
export interface ShopUnits {
  readonly gap: "mm" | "thou" | "in";
  readonly torque: "N·m" | "lb·ft" | "lb·in" | "kgf·m";
}

export interface PutBackLine {
  readonly id: string;
  /** What the hand does, with the profile's figures in the user's units. */
  readonly say: string;
  /** The line wants a figure that the profile does not hold: it must come from the maker's manual. */
  readonly isFigureMissing: boolean;
  /** Ids of cautions. */
  readonly cautions: readonly string[];
}

const METRIC: ShopUnits = { gap: "mm", torque: "N·m" };

/** Digits after the point, as gauges and wrenches are marked. */
const DIGITS = { mm: 2, thou: 0, in: 3, N·m: 0, lb·ft: 1, lb·in: 0, kgf·m: 1 } as const;

/**
 * The steps with these ids, in the order in which the hand does them, each once; steps that the
 * ignition kind has no part for are left out. `tools` are those at hand; while nobody has told, none is
 * taken to be lacking. Throws an `InputError` when the profile is not sound or an id is not known (`/0` is
 * the first id).
 */
export function putBackList(
  profile: EngineProfile,
  ids: readonly string[],
  units: ShopUnits = METRIC,
  tools?: AtHand["tools"],
): readonly PutBackLine[] {
  const problems = [...checkProfile(profile), ...ids.flatMap(unknownStep)];
  if (problems.length > 0) throw new InputError(problems);
  return rows()
    .filter((row) => ids.includes(row.id) && suitsEngine(profile, row))
    .sort((a, b) => a.order - b.order)
    .map((row) => lineOf(row, profile, { units, tools }));
}

/** What a check or a repair takes off, unplugs or cuts. */
interface StepOff {
  readonly access?: readonly string[];
  readonly putBack?: readonly string[];
}

/**
 * All that must be put back after a check or a repair: its own steps, and those of what comes off before a hand
 * gets at the part, as `putBackList` tells them. Throws an `InputError` as that does.
 */
export function putBackAfter(
  profile: EngineProfile,
  step: StepOff,
  units?: ShopUnits,
  tools?: AtHand["tools"],
): readonly PutBackLine[] {
  return putBackList(profile, stepsAfter(profile, step), units, tools);
}

function stepsAfter(
  profile: EngineProfile,
  { access = [], putBack = [] }: StepOff,
): readonly string[] {
  const { covers = [] } = profile;
  const off = ACCESS_ROWS.filter((row) => access.includes(row.id) && suitsEngine(profile, row));
  const underCover = off.length > 0 && covers.length > 0;
  return [...putBack, ...off.flatMap((row) => row.putBack), ...(underCover ? COVER_PUT_BACK : [])];
}

/** The rows by their shape alone: which of them hold figures or kinds is not the types' business. */
function rows(): readonly PutBackRow[] {
  return PUT_BACK;
}

function unknownStep(id: string, i: number): readonly Problem[] {
  const known = rows().map((row) => row.id);
  if (known.includes(id)) return [];
  const near = nearest(id, known, Number.POSITIVE_INFINITY).slice(0, 2);
  return [
    {
      code: "put-back-unknown",
      path: pointer(i),
      message: `There is no step ${JSON.stringify(id)} in the put-back list.`,
      hint: `Did you mean ${near.map((each) => `"${each}"`).join(" or ")}?`,
    },
  ];
}

interface Hand {
  readonly units: ShopUnits;
  readonly tools: AtHand["tools"];
}

function lineOf(
  row: PutBackRow,
  { figures = {}, fuelling }: EngineProfile,
  { units, tools }: Hand,
): PutBackLine {
  const gap = sayRange(figures.plugGapMm, "mm", units.gap);
  const torque = sayRange(figures.plugTorqueNm, "N·m", units.torque);
  const isFigureMissing =
    (row.say.includes("{gap}") && gap === undefined) ||
    (row.say.includes("{torque}") && torque === undefined);
  const words = (fuelling === "carburettor" && row.carburettor) || row.say;
  const told = isFigureMissing ? (row.without ?? words) : words;
  const say = row.lacking && !holdsTool(tools, row.lacking.tool) ? row.lacking.say : told;
  return {
    id: row.id,
    say: say.replace("{gap}", gap ?? "").replace("{torque}", torque ?? ""),
    isFigureMissing,
    cautions: row.cautions ?? [],
  };
}

/** "1.00 to 1.10 mm"; one figure where both ends read alike. */
function sayRange(
  range: Range | undefined,
  from: "mm" | "N·m",
  to: ShopUnits["gap"] | ShopUnits["torque"],
): string | undefined {
  if (!range) return undefined;
  const [low, high] = range.map((value) =>
    convert<"mm" | "N·m">(value, from, to).toFixed(DIGITS[to]),
  );
  return low === high ? `${low} ${to}` : `${low} to ${high} ${to}`;
}
