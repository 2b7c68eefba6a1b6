// Mixes the posteriors of several engines into one, by fault and place as people name them.
import { partCylinders } from "../compile/compile.ts";
import type { Instance } from "../compile/prior.ts";
import type { Engine } from "../engine/engine.ts";
import type { CylinderName } from "../engine/profile.ts";
import type { Posterior } from "../inference/posterior.ts";
import { randomSet } from "../model/diagnosis-model.ts";
import type { RankedHypothesis } from "./ranking.ts";

/** One engine's posterior with its weight; weights add up to 1. */
export interface Weighted {
  readonly engine: Engine;
  readonly weight: number;
  readonly posterior: Posterior;
  readonly instances: readonly Instance[];
  readonly componentKeys: readonly string[];
  readonly componentOf: Uint32Array;
}

export interface Mixed {
  /** By `fault@place`, without "something else". */
  readonly faults: ReadonlyMap<string, number>;
  readonly components: ReadonlyMap<
    string,
    {
      readonly part: string;
      readonly cylinders: readonly CylinderName[];
      readonly probability: number;
    }
  >;
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

export function mix(parts: readonly Weighted[]): Mixed {
  const faults = new Map<string, number>();
  const components = new Map<
    string,
    { part: string; cylinders: readonly CylinderName[]; probability: number }
  >();
  const cylinders = new Map<string, number>();
  const sum = (of: (part: Weighted) => number): number =>
    parts.reduce((total, part) => total + part.weight * of(part), 0);
  for (const part of parts) {
    addFaults(faults, part);
    addComponents(components, part);
    addCylinders(cylinders, part);
  }
  return {
    faults,
    components,
    cylinders,
    atRandom: sum(({ engine, posterior }) => posterior.set[randomSet(engine.names.length)] ?? 0),
    noMisfire: sum(({ posterior }) => posterior.set[0] ?? 0),
    hypotheses: hypothesesOf(parts),
    somethingElse: sum(({ posterior, instances }) => posterior.fault[instances.length - 1] ?? 0),
    unsearched: sum(({ posterior }) => posterior.unsearched),
    visited: parts.reduce((total, { posterior }) => total + posterior.visited, 0),
    entropyBits: sum(({ posterior }) => posterior.entropyBits),
  };
}

function addFaults(faults: Map<string, number>, part: Weighted): void {
  part.instances.slice(0, -1).forEach(({ fault, place }, number) => {
    const key = `${fault.id}@${place.id}`;
    const probability = part.weight * (part.posterior.fault[number] ?? 0);
    faults.set(key, (faults.get(key) ?? 0) + probability);
  });
}

function addComponents(
  components: Map<
    string,
    { part: string; cylinders: readonly CylinderName[]; probability: number }
  >,
  { engine, weight, posterior, instances, componentKeys, componentOf }: Weighted,
): void {
  const seen = new Set<number>();
  instances.slice(0, -1).forEach(({ fault, place }, number) => {
    const component = componentOf[number] as number;
    if (seen.has(component)) return;
    seen.add(component);
    const key = componentKeys[component] ?? "";
    const at = partCylinders(engine, fault, place.cylinders);
    components.set(key, {
      part: fault.part.name,
      cylinders: at.map((c) => engine.names[c] as CylinderName),
      probability:
        (components.get(key)?.probability ?? 0) + weight * (posterior.component[component] ?? 0),
    });
  });
}

function addCylinders(cylinders: Map<string, number>, part: Weighted): void {
  const { engine, weight, posterior } = part;
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

function hypothesesOf(parts: readonly Weighted[]): readonly RankedHypothesis[] {
  const byKey = new Map<string, RankedHypothesis>();
  for (const { posterior, instances, weight } of parts) {
    for (const { faults, probability } of posterior.best) {
      const named = faults.map((f) => ({
        fault: instances[f]?.fault.id ?? "",
        place: instances[f]?.place.id ?? "",
      }));
      const key = named
        .map(({ fault, place }) => `${fault}@${place}`)
        .sort()
        .join(" & ");
      const sofar = byKey.get(key)?.probability ?? 0;
      byKey.set(key, { faults: named, probability: sofar + weight * probability });
    }
  }
  return [...byKey.values()]
    .sort((a, b) => b.probability - a.probability)
    .slice(0, HYPOTHESES_TOLD);
}
