// Mixes the posteriors of several engines into one, by fault and place as people name them.
import { type Compiled, partCylinders } from "../compile/compile.ts";
import { type Instance, instanceKey } from "../compile/prior.ts";
import type { CandidateEngine } from "../engine/candidates.ts";
import type { CylinderName } from "../engine/profile.ts";
import type { Posterior } from "../inference/posterior.ts";
import { randomSet } from "../model/diagnosis-model.ts";
import type { RankedComponent, RankedHypothesis } from "./ranking.ts";

/** One engine that it may be, with its answer; weights add up to 1. */
export interface Part extends CandidateEngine {
  readonly compiled: Compiled;
  readonly posterior: Posterior;
}

interface Mixed {
  /** By `fault@place`, without "something else". */
  readonly faults: ReadonlyMap<string, number>;
  readonly components: readonly RankedComponent[];
  /** By cylinder name: misses steadily. */
  readonly cylinders: ReadonlyMap<string, number>;
  readonly atRandom: number;
  readonly noMisfire: number;
  readonly hypotheses: readonly RankedHypothesis[];
  readonly somethingElse: number;
  readonly unsearched: number;
  readonly visited: number;
  readonly entropyBits: number;
}

const HYPOTHESES_TOLD = 10;

export function mix(parts: readonly Part[], hypotheses = HYPOTHESES_TOLD): Mixed {
  const faults = new Map<string, number>();
  const components = new Map<string, RankedComponent>();
  const cylinders = new Map<string, number>();
  const sum = (of: (part: Part) => number): number =>
    parts.reduce((total, part) => total + part.weight * of(part), 0);
  for (const part of parts) {
    addFaults(faults, part);
    addComponents(components, part);
    addCylinders(cylinders, part);
  }
  return {
    faults,
    components: [...components.values()],
    cylinders,
    atRandom: sum(({ engine, posterior }) => posterior.set[randomSet(engine.names.length)] ?? 0),
    noMisfire: sum(({ posterior }) => posterior.set[0] ?? 0),
    hypotheses: hypotheses > 0 ? hypothesesOf(parts).slice(0, hypotheses) : [],
    somethingElse: sum(({ posterior }) => posterior.fault.at(-1) ?? 0),
    unsearched: sum(({ posterior }) => posterior.unsearched),
    visited: parts.reduce((total, { posterior }) => total + posterior.visited, 0),
    entropyBits: sum(({ posterior }) => posterior.entropyBits),
  };
}

function addFaults(faults: Map<string, number>, { weight, posterior, compiled }: Part): void {
  named(compiled).forEach((instance, number) => {
    const key = instanceKey(instance);
    faults.set(key, (faults.get(key) ?? 0) + weight * (posterior.fault[number] ?? 0));
  });
}

/** All instances but "something else", which is the last. */
function named({ instances }: Compiled): readonly Instance[] {
  return instances.slice(0, -1);
}

function addComponents(
  components: Map<string, RankedComponent>,
  { engine, weight, posterior, compiled }: Part,
): void {
  const seen = new Set<number>();
  named(compiled).forEach(({ fault, place }, number) => {
    const at = compiled.model.component[number] as number;
    if (seen.has(at)) return;
    seen.add(at);
    const component = compiled.componentKeys[at] ?? "";
    const sofar = components.get(component)?.probability ?? 0;
    components.set(component, {
      component,
      part: fault.part.name,
      cylinders: partCylinders(engine, fault, place.cylinders).map(
        (c) => engine.names[c] as CylinderName,
      ),
      probability: sofar + weight * (posterior.component[at] ?? 0),
    });
  });
}

function addCylinders(cylinders: Map<string, number>, { engine, weight, posterior }: Part): void {
  const random = randomSet(engine.names.length);
  engine.names.forEach((name, cylinder) => {
    let misses = 0;
    for (let set = 0; set < random; set++) {
      if ((set >> cylinder) & 1) misses += posterior.set[set] ?? 0;
    }
    const key = String(name);
    cylinders.set(key, (cylinders.get(key) ?? 0) + weight * misses);
  });
}

function hypothesesOf(parts: readonly Part[]): readonly RankedHypothesis[] {
  const byKey = new Map<string, RankedHypothesis>();
  for (const { posterior, compiled, weight } of parts) {
    for (const { faults, probability } of posterior.best) {
      const members = faults.map((f) => compiled.instances[f] as Instance);
      const key = members.map(instanceKey).sort().join(" & ");
      const sofar = byKey.get(key)?.probability ?? 0;
      byKey.set(key, {
        faults: members.map(({ fault, place }) => ({ fault: fault.id, place: place.id })),
        probability: sofar + weight * probability,
      });
    }
  }
  return [...byKey.values()]
    .sort((a, b) => b.probability - a.probability)
    .slice(0, HYPOTHESES_TOLD);
}
