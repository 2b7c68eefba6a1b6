// What would change the first place? Which single number, moved how far; and how often it holds when all
// numbers are a little off.
import type { Compiled } from "../compile/compile.ts";
import { instanceKey } from "../compile/prior.ts";
import type { CylinderName, EngineProfile } from "../engine/profile.ts";
import { posterior } from "../inference/posterior.ts";
import { type Flip, flip, type Weight } from "../inference/sensitivity.ts";
import { shakenModel } from "../inference/shake.ts";
import type { Finding } from "../knowledge/answer.ts";
import { KNOWLEDGE, type Knowledge } from "../knowledge/knowledge.ts";
import { type Random, randomOf } from "../units/random.ts";
import { partsOf } from "./rank.ts";

export interface SensitivityOptions {
  /** Of the shaking; the same seed gives the same answer. Default 1. */
  readonly seed?: number;
  /** How often all weights are shaken; 0 leaves the stability out. Default 100. */
  readonly shakes?: number;
  readonly knowledge?: Knowledge;
}

/** A single number that would change the first place, and how far it must move. */
export interface NamedFlip {
  /** `prior`: how common the fault is; `answer`: how likely the answer is with it. */
  readonly of: "prior" | "answer";
  /** The fault whose number moves, `fault@place`; its type at all places moves with it. */
  readonly fault: string;
  /** For an answer: which. */
  readonly finding?: string;
  readonly cylinder?: CylinderName;
  /** Odds (`prior`) or a probability (`answer`), now and where the first place changes hands. */
  readonly from: number;
  readonly to: number;
  /** Decibans of odds between the two; the sign says whether it rises or falls. */
  readonly moveDb: number;
  /** `fault@place` that is then first. */
  readonly first: string;
}

export interface Stability {
  readonly shakes: number;
  /** Part of the shakes in which the first place stays. */
  readonly first: number;
  /** Part of the shakes in which the first three stay the first three, in any order. */
  readonly firstThree: number;
}

export interface Sensitivity {
  /** The two that lead, as `fault@place`. */
  readonly leading: readonly string[];
  /** Nearest first; what no value can change is left out. */
  readonly flips: readonly NamedFlip[];
  readonly stability: Stability;
}

/** All weights are shaken by a factor of two: standard deviation in natural log-odds. */
const SHAKE_SIGMA = Math.LN2;

const SHAKES = 100;
/** Probability left unsearched: first places are hardly ever so close, and rough is faster. */
const ROUGH = { tolerance: 1e-4 } as const;

/**
 * How far the first place rests on single numbers, and on all of them.
 *
 * Looked at: how common the two leading faults are, and for each answer how likely it is with each of
 * the two (for what only sees which cylinders miss: at the set that they make most often). Reads the
 * engine that fits best where it is known in part. Pure; all chance comes from the seed.
 *
 * Cost: one posterior a shake, and three to thirty a number looked at. Eight answers and 100 shakes took
 * 5 s on a four-cylinder engine and 10 s on a V6 (one core): not to be run at each answer.
 * Throws an `InputError` with all problems when the profile or a finding cannot be used.
 */
export function sensitivity(
  profile: EngineProfile,
  findings: readonly Finding[],
  { seed = 1, shakes = SHAKES, knowledge = KNOWLEDGE }: SensitivityOptions = {},
): Sensitivity {
  const [part] = partsOf(profile, findings, knowledge, ROUGH.tolerance);
  const { compiled, posterior: now } = part as { compiled: Compiled; posterior: Ranked };
  const leading = firstFaults(now, 2);
  const leaveOut = [compiled.instances.length - 1];
  const flips = leading
    .flatMap((fault) => weightsOf(compiled, fault))
    .flatMap(({ weight, fault, answer }) => {
      const found = flip(compiled.model, weight, { posterior: ROUGH, leaveOut });
      return found ? [named(compiled, findings, { fault, answer, found })] : [];
    });
  return {
    leading: leading.map((fault) => nameOf(compiled, fault)),
    flips: nearestEach(flips),
    stability: stabilityOf(compiled, now, shakes, randomOf(seed)),
  };
}

/** Nearest first; of several numbers about one answer and fault (each code is one) the nearest. */
function nearestEach(flips: readonly NamedFlip[]): readonly NamedFlip[] {
  const told = new Set<string>();
  return [...flips]
    .sort((a, b) => Math.abs(a.moveDb) - Math.abs(b.moveDb))
    .filter(({ of, fault, finding, cylinder }) => {
      const key = [of, fault, finding, cylinder].join(" ");
      return !told.has(key) && told.add(key);
    });
}

interface Ranked {
  readonly fault: Float64Array;
}

/** The likeliest faults; "something else", the last, holds no place. */
function firstFaults({ fault }: Ranked, count: number): readonly number[] {
  return [...fault.keys()]
    .slice(0, -1)
    .sort((f, g) => (fault[g] as number) - (fault[f] as number) || f - g)
    .slice(0, count);
}

interface Looked {
  readonly weight: Weight;
  readonly fault: number;
  /** Position among the caller's findings; undefined for how common the fault is. */
  readonly answer?: number;
}

function weightsOf({ model, instances }: Compiled, fault: number): readonly Looked[] {
  const type = instances[fault]?.fault;
  const alike = [...instances.keys()].filter((f) => instances[f]?.fault === type);
  const prior: Looked = { weight: { kind: "prior", faults: alike }, fault };
  const signs = model.observations.flatMap(({ value, answer }, observation): readonly Looked[] => {
    const own = value[fault] as number;
    // Where a fault is silent, or has nothing to do with a sign, there is no number to move.
    if (own <= 0) return [];
    const faults = alike.filter((f) => value[f] === own);
    return [{ weight: { kind: "sign", observation, faults }, fault, answer }];
  });
  const set = usualSet(model, fault);
  const sets = model.misfireObservations.map(({ answer }, observation): Looked => {
    return { weight: { kind: "set", observation, set }, fault, answer };
  });
  return [prior, ...signs, ...sets];
}

/** The set of cylinders that a fault makes miss most often. */
function usualSet({ atomStart, atomChance, atomSet }: Compiled["model"], fault: number): number {
  const start = atomStart[fault] as number;
  const chances = atomChance.subarray(start, atomStart[fault + 1]);
  return atomSet[start + chances.indexOf(Math.max(...chances))] as number;
}

function named(
  compiled: Compiled,
  findings: readonly Finding[],
  { fault, answer, found }: { fault: number; answer: number | undefined; found: Flip },
): NamedFlip {
  const finding = answer === undefined ? undefined : findings[answer];
  return {
    of: finding ? "answer" : "prior",
    fault: nameOf(compiled, fault),
    ...(finding ? { finding: finding.finding } : {}),
    ...(finding?.cylinder === undefined ? {} : { cylinder: finding.cylinder }),
    from: found.from,
    to: found.to,
    moveDb: found.moveDb,
    first: nameOf(compiled, found.first),
  };
}

function stabilityOf(
  { model, instances }: Compiled,
  now: Ranked,
  shakes: number,
  random: Random,
): Stability {
  const numbers = new Map<string, number>();
  const typeOf = instances.map(({ fault: { id } }) => {
    numbers.set(id, numbers.get(id) ?? numbers.size);
    return numbers.get(id) as number;
  });
  const three = firstFaults(now, 3);
  let [first, firstThree] = [0, 0];
  for (let shake = 0; shake < shakes; shake++) {
    const shaken = shakenModel(model, typeOf, { sigma: SHAKE_SIGMA, random });
    const then = firstFaults(posterior(shaken, ROUGH), 3);
    if (then[0] === three[0]) first++;
    if (then.every((fault) => three.includes(fault))) firstThree++;
  }
  const part = (count: number): number => (shakes > 0 ? count / shakes : 0);
  return { shakes, first: part(first), firstThree: part(firstThree) };
}

function nameOf({ instances }: Compiled, fault: number): string {
  return instanceKey(instances[fault] as Compiled["instances"][number]);
}
