// Everything that may be wrong, as states that exclude one another: faults and the cylinders that miss,
// on each engine that it may be. What a look would show follows from the state alone.
import type { Answered } from "../compile/answered.ts";
import { compile } from "../compile/compile.ts";
import { type Subjects, subjectsOf } from "../compile/likelihood.ts";
import type { Instance } from "../compile/prior.ts";
import type { CandidateEngine } from "../engine/candidates.ts";
import type { Engine } from "../engine/engine.ts";
import { likeliestStates, singleFaultEvidence } from "../inference/state.ts";
import type { Finding, RepairDone } from "../knowledge/answer.ts";
import type { Knowledge } from "../knowledge/knowledge.ts";

/** A state of one engine. */
export interface OutlookState {
  /** Positions in `Outlook.instances`. */
  readonly faults: readonly number[];
  readonly set: number;
}

/** The states of one engine. */
export interface Outlook {
  readonly engine: Engine;
  /** The instances that its states are made of, without those of no weight. */
  readonly instances: readonly Instance[];
  readonly subjects: Subjects;
  /** What was found. */
  readonly known: readonly Answered[];
  readonly states: readonly OutlookState[];
  /** Position of the first of its states among all. */
  readonly start: number;
}

export interface Prospect {
  readonly outlooks: readonly Outlook[];
  /** By state: probability, adds up to 1. */
  readonly chance: Float64Array;
  readonly knowledge: Knowledge;
}

/** States kept over all engines: rarer ones do not turn a plan. */
const MOST_STATES = 200;

interface Known {
  readonly findings: readonly Finding[];
  readonly repairs: readonly RepairDone[];
  readonly knowledge: Knowledge;
}

/** Everything that may be wrong; engines weighted by how well they explain the findings, best first. */
export function prospectOf(
  engines: readonly CandidateEngine[],
  { findings, repairs, knowledge }: Known,
): Prospect {
  const most = Math.max(40, Math.round(MOST_STATES / engines.length));
  const compiled = engines.map(({ engine, weight }) => {
    const parts = compile(engine, findings, knowledge, repairs);
    return { engine, ...parts, weight: weight * singleFaultEvidence(parts.model) };
  });
  const total = compiled.reduce((sum, { weight }) => sum + weight, 0);
  compiled.sort((a, b) => b.weight - a.weight);
  const chance: number[] = [];
  const outlooks = compiled.map(({ engine, model, instances, answered, weight }) => {
    const states = likeliestStates(model, most);
    const used = [...new Set(states.flatMap(({ faults }) => faults))].sort((a, b) => a - b);
    const position = new Map(used.map((fault, i) => [fault, i]));
    const start = chance.length;
    for (const { probability } of states) chance.push((probability * weight) / total);
    const kept = used.map((fault) => instances[fault] as Instance);
    return {
      engine,
      instances: kept,
      subjects: subjectsOf(engine, kept),
      known: answered,
      states: states.map(({ faults, set }) => ({
        faults: faults.map((fault) => position.get(fault) as number),
        set,
      })),
      start,
    };
  });
  return { outlooks, chance: Float64Array.from(chance), knowledge };
}

/** By fault and place, as `fault@place`: probability that it is present. */
export function presentIn(
  { outlooks }: Prospect,
  chance: Float64Array,
  key: (instance: Instance) => string,
): ReadonlyMap<string, { readonly instance: Instance; readonly probability: number }> {
  const found = new Map<string, { instance: Instance; probability: number }>();
  for (const { instances, states, start } of outlooks) {
    states.forEach(({ faults }, i) => {
      for (const fault of faults) {
        const instance = instances[fault] as Instance;
        const name = key(instance);
        const before = found.get(name)?.probability ?? 0;
        found.set(name, { instance, probability: before + (chance[start + i] as number) });
      }
    });
  }
  return found;
}
