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

/** A fault at its place on one of the engines, or the first of several that count as one. */
export interface Present {
  readonly instance: Instance;
  readonly engine: Engine;
  readonly probability: number;
}

/** By key, such as `fault@place`: probability that it is present; two of one key count once. */
export function presentIn(
  { outlooks }: Prospect,
  chance: Float64Array,
  keyOf: (instance: Instance, engine: Engine) => string,
): ReadonlyMap<string, Present> {
  const found = new Map<string, Present>();
  for (const { instances, states, start, engine } of outlooks) {
    const keys = instances.map((instance) => keyOf(instance, engine));
    states.forEach(({ faults }, i) => {
      faults.forEach((fault, k) => {
        const key = keys[fault] as string;
        if (faults.slice(0, k).some((before) => keys[before] === key)) return;
        const before = found.get(key) ?? { instance: instances[fault] as Instance, engine };
        const sofar = found.get(key)?.probability ?? 0;
        found.set(key, { ...before, probability: sofar + (chance[start + i] as number) });
      });
    });
  }
  return found;
}
