// Which fault is hidden from who practises, and what does the owner tell of it? Drawn as the catalogue says
// that engines come in, then broken by physics; the same seed hides the same fault in the same size.
import { questionKey } from "../compile/answered.ts";
import { fits } from "../compile/fits.ts";
import { shareOf } from "../compile/prior.ts";
import { nameAt } from "../engine/cylinder-name.ts";
import type { Engine } from "../engine/engine.ts";
import type { CylinderName, EngineProfile } from "../engine/profile.ts";
import { resolveEngine } from "../engine/resolve-engine.ts";
import type { FaultAt } from "../explain/why.ts";
import { KNOWLEDGE } from "../knowledge/knowledge.ts";
import { TOOLS } from "../knowledge/tool.ts";
import { type SimulatedCase, simulatedFaults, simulateIfRuns } from "../physics/simulate.ts";
import type { SimulatedFaultId } from "../physics/simulated-break.ts";
import { type BrokenFigure, brokenFigures } from "../physics/simulated-figure.ts";
import { InputError, pointer } from "../units/problem.ts";
import { type Random, randomOf } from "../units/random.ts";
import { startOfVisit, type Visit } from "./simulated-visit.ts";
import { namesOf } from "./visit-step.ts";

/** What is hidden. */
export interface HiddenTruth extends FaultAt {
  readonly name: string;
  readonly cylinders: readonly CylinderName[];
  /** In which form and size, as physics drew it: dead only when hot, say. */
  readonly figures: readonly BrokenFigure[];
}

/** An engine with a fault that who practises is not told. */
export interface HiddenFault {
  readonly engine: Engine;
  readonly truth: HiddenTruth;
  /** Answers each question alike, whenever and however often it is asked. */
  readonly broken: SimulatedCase;
  /** What the owner tells and the reader of codes shows; every tool lies ready, dear ones too. */
  readonly start: Visit;
}

/**
 * Hides a fault in an engine: one that the simulator can break and that somebody would notice, in proportion to
 * its share of complaints in the catalogue, at an even place. Throws an `InputError` when the profile or the
 * seed cannot be used, or when no fault of the engine shows itself.
 */
export function hideFault(profile: EngineProfile, seed: number): HiddenFault {
  const engine = resolveEngine(profile);
  if (!Number.isInteger(seed))
    throw refused("seed", "seed-wrong", `${seed} is no whole number.`, "1");
  const turning = turningRandom(randomOf(seed));
  const drawn = drawCase(engine, turning.random);
  if (!drawn) {
    throw refused(
      "profile",
      "nothing-shows",
      "No fault of this engine shows itself.",
      "another engine",
    );
  }
  const observeCheck: SimulatedCase["observeCheck"] = (finding, cylinder) => {
    const row = KNOWLEDGE.findings.get(finding);
    const about = row ? questionKey(engine, row, cylinder) : finding;
    turning.turnTo(randomOf(seedOf(`${seed} ${about}`)));
    return drawn.observeCheck(finding, cylinder);
  };
  const broken = { ...drawn, observeCheck };
  const start = startOfVisit(engine, broken, { tools: TOOLS });
  return { engine, truth: truthOf(engine, broken), broken, start: asAsked(engine, start) };
}

function drawCase(engine: Engine, random: Random): SimulatedCase | undefined {
  const shares = new Map<SimulatedFaultId, number>();
  for (const id of simulatedFaults(engine)) {
    const row = KNOWLEDGE.faults.find((fault) => fault.id === id);
    const share = row ? shareOf(row, engine.ignition) : 0;
    if (share > 0) shares.set(id, share);
  }
  while (shares.size > 0) {
    const ids = [...shares.keys()];
    const fault = ids[random.choice([...shares.values()])] as SimulatedFaultId;
    const broken = simulateIfRuns(engine, { fault }, random);
    if (broken) return broken;
    shares.delete(fault);
  }
  return undefined;
}

function truthOf(engine: Engine, { fault, place, parts }: SimulatedCase): HiddenTruth {
  const cylinders = namesOf(engine, place.cylinders);
  const name = KNOWLEDGE.faults.find(({ id }) => id === fault)?.name ?? fault;
  return {
    fault,
    place: place.id,
    name: nameAt(name, cylinders, engine.names.length),
    cylinders,
    figures: brokenFigures(parts),
  };
}

/** Without what an engine of that kind is not asked. */
function asAsked(engine: Engine, start: Visit): Visit {
  const findings = start.findings.filter(({ finding }) => {
    const row = KNOWLEDGE.findings.get(finding);
    return row !== undefined && fits(engine, row);
  });
  return { ...start, findings };
}

/** A stream whose source can be changed under who draws from it. */
function turningRandom(first: Random): {
  readonly random: Random;
  readonly turnTo: (next: Random) => void;
} {
  let now = first;
  const random: Random = {
    word: () => now.word(),
    uniform: () => now.uniform(),
    normal: () => now.normal(),
    choice: (weights) => now.choice(weights),
  };
  return {
    random,
    turnTo(next) {
      now = next;
    },
  };
}

/** A seed from words: G. Fowler, L. C. Noll, K.-P. Vo and D. Eastlake's FNV-1a, 32 bits. */
function seedOf(words: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < words.length; i++) {
    hash = Math.imul(hash ^ words.charCodeAt(i), 0x01000193);
  }
  return hash;
}

function refused(field: string, code: string, message: string, instead: string): InputError {
  return new InputError([{ code, path: pointer(field), message, hint: `Write ${instead}.` }]);
}
