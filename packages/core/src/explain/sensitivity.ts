// What would bring another part to the first place? Which single number, moved how far; and how often the
// place holds when all numbers are a little off.
import type { Compiled } from "../compile/compile.ts";
import { instanceKey } from "../compile/prior.ts";
import type { CylinderName, EngineProfile } from "../engine/profile.ts";
import { type Posterior, posterior } from "../inference/posterior.ts";
import { type Flip, type FlipOptions, flip, type Weight } from "../inference/sensitivity.ts";
import { shakerOf } from "../inference/shake.ts";
import type { Finding } from "../knowledge/answer.ts";
import type { DiagnosisModel, Observation } from "../model/diagnosis-model.ts";
import { type Random, randomOf } from "../units/random.ts";
import { PROBABILITY_FLOOR } from "../units/weight.ts";
import type { Part } from "./mixture.ts";
import { partsOf } from "./rank.ts";
import type { WhyOptions } from "./why.ts";

export interface SensitivityOptions extends WhyOptions {
  /** Of the shaking; the same seed gives the same answer. Default 1. */
  readonly seed?: number;
  /** How often all weights are shaken, at each size; 0 leaves the stability out. Default 100. */
  readonly shakes?: number;
}

/** A single number that would bring a fault of another part to the first place, and how far it must move. */
export interface NamedFlip {
  /** `prior`: how common the fault is; `answer`: how likely the answer is with it. */
  readonly of: "prior" | "answer";
  /** The fault whose number moves, `fault@place`; its type at all places moves with it. */
  readonly fault: string;
  /** For an answer: which. */
  readonly finding?: string;
  readonly cylinder?: CylinderName;
  /**
   * Odds (`prior`), or how likely the answer as it was given is with the fault (`answer`), now and where the
   * first place changes hands. Of what was looked for and not seen: how likely it is not to be seen.
   */
  readonly from: number;
  readonly to: number;
  /** Decibans of odds between the two; the sign says whether it rises or falls. */
  readonly moveDb: number;
  /** `fault@place` that is then first; never one of the part that is first now. */
  readonly first: string;
}

/** How well the ranking holds while all weights are shaken. */
export interface Stability {
  /** Standard deviation of the noise, in natural log-odds. */
  readonly sigma: number;
  readonly shakes: number;
  /** Part of the shakes in which the likeliest part stays the likeliest. */
  readonly first: number;
  /** Part of the shakes in which the likeliest single fault stays so, whatever its part. */
  readonly firstFault: number;
  /** Part of the shakes in which the three likeliest parts stay those three, in any order. */
  readonly firstThree: number;
}

export interface Sensitivity {
  /** The two parts that lead, each by its likeliest fault, as `fault@place`. */
  readonly leading: readonly string[];
  /** Nearest first; what no value can change is left out. */
  readonly flips: readonly NamedFlip[];
  /** By size of the noise; empty without shakes. */
  readonly stability: readonly Stability[];
}

/** Factors of 1.6 and 2.7 in odds on every number, as a rule. */
const SIGMAS: readonly number[] = [0.5, 1];

const SHAKES = 100;
/** Probability left unsearched: first places are hardly ever so close. */
const ROUGH = { tolerance: 1e-4 } as const;
/** Up to two faults together: ten times as fast, and hardly another answer. */
const PAIRS = { tolerance: 0, most: 2 } as const;

/**
 * How far the first place rests on single numbers, and on all of them.
 *
 * Counted by part, as `components` of a ranking: the first place is that of the part which most likely has
 * failed in whatever way, and it changes hands when another part, or the like part at another place, gets
 * ahead. A coil half dead or wholly dead is one coil to renew, and no rival to itself. Only `firstFault` of
 * the stability counts single faults.
 *
 * Looked at: how common the likeliest fault of each of the two leading parts is, and for each answer how
 * likely it is with each of the two (for what only sees which cylinders miss: at the set that they make most
 * often). Numbers that cannot change the first place are passed over. Reads the engine that fits best where
 * it is known in part. Pure; all chance comes from the seed.
 *
 * Worked out over up to two faults together, unless a third makes another part first. In seven cases
 * three faults moved no flip nearer than 10 dB by more than 0.11 dB, and none by more than 0.5 dB.
 * Throws an `InputError` with all problems when the profile or a finding cannot be used.
 */
export function sensitivity(
  profile: EngineProfile,
  findings: readonly Finding[],
  { seed = 1, shakes = SHAKES, ...options }: SensitivityOptions = {},
): Sensitivity {
  const [part] = partsOf(profile, findings, { ...options, ...ROUGH });
  const { compiled, posterior: ranked } = part as Part;
  const { component } = compiled.model;
  const [leader, second] = leadersOf(ranked, component);
  const pairs = posterior(compiled.model, PAIRS);
  const isSame = component[leadersOf(pairs, component)[0]] === component[leader];
  const now = isSame ? pairs : posterior(compiled.model, { tolerance: 0 });
  const how: FlipOptions = {
    now,
    most: isSame ? PAIRS.most : 3,
    of: "component",
    leaveOut: [component.at(-1) as number],
  };
  const flips = [leader, second]
    .flatMap((fault) => weightsOf(compiled, fault))
    .filter((looked) => looked.fault === leader || mayLead(compiled.model, looked, now))
    .flatMap(({ weight, fault, answer }) => {
      const found = flip(compiled.model, weight, how);
      if (!found) return [];
      const seen = isAbsence(compiled.model, weight) ? complement(found) : found;
      const said = { ...seen, first: likeliestIn(now, component, found.first) };
      return [named(compiled, findings, { fault, answer, found: said })];
    });
  const random = randomOf(seed);
  return {
    leading: [leader, second].map((fault) => nameOf(compiled, fault)),
    flips: nearestEach(flips),
    stability:
      shakes > 0 ? SIGMAS.map((sigma) => stabilityOf(compiled, sigma, shakes, random)) : [],
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

type Ranked = Pick<Posterior, "fault" | "component">;

/** The likeliest; "something else", the last, holds no place. */
function firstOf(chance: Float64Array, count: number): readonly number[] {
  return [...chance.keys()]
    .slice(0, -1)
    .sort((a, b) => (chance[b] as number) - (chance[a] as number) || a - b)
    .slice(0, count);
}

/** Of the three parts that lead the likeliest fault of each. */
function leadersOf(ranked: Ranked, component: Uint32Array): readonly [number, number, number] {
  const parts = firstOf(ranked.component, 3).map((part) => likeliestIn(ranked, component, part));
  return parts as unknown as [number, number, number];
}

function likeliestIn({ fault }: Ranked, component: Uint32Array, part: number): number {
  const own = [...fault.keys()].filter((f) => component[f] === part);
  return own.reduce((best, f) => ((fault[f] as number) > (fault[best] as number) ? f : best));
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
    // Where a fault is silent, or has nothing to do with a sign, there is no number to move; what tells
    // how the engine ran after a repair is no answer.
    if (own <= 0 || answer < 0) return [];
    const faults = alike.filter((f) => value[f] === own);
    return [{ weight: { kind: "sign", observation, faults }, fault, answer }];
  });
  const set = usualSet(model, fault);
  const sets = model.misfireObservations.map(({ answer }, observation): Looked => {
    return { weight: { kind: "set", observation, set }, fault, answer };
  });
  return [prior, ...signs, ...sets];
}

/**
 * False where no value of a number of the second fault can change the first place. When it rises, the second
 * part gains what the answer is worth at most, for each fault that shares the number; when it falls, the first
 * loses no more than it has in common with them, and a third must be that near.
 */
function mayLead(model: DiagnosisModel, { weight, fault }: Looked, now: Ranked): boolean {
  const { component } = model;
  const [leader, , third] = leadersOf(now, component);
  if (weight.kind !== "sign") return true;
  if (weight.faults.some((f) => component[f] === component[leader])) return true;
  const { form, value, background } = model.observations[weight.observation] as Observation;
  const own = value[fault] as number;
  const most = 1 - PROBABILITY_FLOOR;
  const gain = {
    seen: (1 - (1 - background) * PROBABILITY_FLOOR) / (1 - (1 - background) * (1 - own)),
    "not-seen": most / Math.max(PROBABILITY_FLOOR, 1 - own),
    choice: most / own,
  }[form];
  const alike = form === "choice" ? 1 : Math.min(3, weight.faults.length);
  const chance = (f: number): number => now.component[component[f] as number] as number;
  const loss = weight.faults.reduce((sum, f) => sum + (now.fault[f] as number), 0);
  const mostGained = chance(fault) * Math.max(1, gain) ** alike;
  return mostGained >= chance(leader) || chance(leader) - loss <= chance(third);
}

/** The set of cylinders that a fault makes miss most often. */
function usualSet({ atomStart, atomChance, atomSet }: Compiled["model"], fault: number): number {
  const start = atomStart[fault] as number;
  const chances = atomChance.subarray(start, atomStart[fault + 1]);
  return atomSet[start + chances.indexOf(Math.max(...chances))] as number;
}

/** True where the number is the chance of a sight that was not had. */
function isAbsence({ observations }: DiagnosisModel, weight: Weight): boolean {
  return weight.kind === "sign" && observations[weight.observation]?.form === "not-seen";
}

function complement({ from, to, moveDb, first }: Flip): Flip {
  return { from: 1 - from, to: 1 - to, moveDb: -moveDb, first };
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
  sigma: number,
  shakes: number,
  random: Random,
): Stability {
  const numbers = new Map<string, number>();
  const typeOf = instances.map(({ fault: { id } }) => {
    numbers.set(id, numbers.get(id) ?? numbers.size);
    return numbers.get(id) as number;
  });
  const leading = ({ component, fault }: Ranked) => ({
    parts: firstOf(component, 3),
    fault: firstOf(fault, 1)[0],
  });
  const now = leading(posterior(model, PAIRS));
  const shakeModel = shakerOf(model, typeOf);
  let [first, firstFault, firstThree] = [0, 0, 0];
  for (let shake = 0; shake < shakes; shake++) {
    const then = leading(posterior(shakeModel({ sigma, random }), PAIRS));
    if (then.parts[0] === now.parts[0]) first++;
    if (then.fault === now.fault) firstFault++;
    if (then.parts.every((part) => now.parts.includes(part))) firstThree++;
  }
  const part = (count: number): number => count / shakes;
  return {
    sigma,
    shakes,
    first: part(first),
    firstFault: part(firstFault),
    firstThree: part(firstThree),
  };
}

function nameOf({ instances }: Compiled, fault: number): string {
  return instanceKey(instances[fault] as Compiled["instances"][number]);
}
