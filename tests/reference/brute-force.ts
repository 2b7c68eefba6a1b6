// The deliberately plain second answer: every subset of faults, every combination of their sets, every
// observation by its definition. Slow and obvious; shares no code with the inference room.
import type { DiagnosisModel } from "../../packages/core/src/model/diagnosis-model.ts";

export interface PlainPosterior {
  readonly fault: readonly number[];
  readonly component: readonly number[];
  readonly set: readonly number[];
  readonly total: number;
  readonly best: { readonly faults: readonly number[]; readonly probability: number };
}

export function bruteForce(model: DiagnosisModel, most = 3): PlainPosterior {
  const fault = new Array<number>(model.faults).fill(0);
  const component = new Array<number>(model.components).fill(0);
  const set = new Array<number>(2 ** model.cylinders + 1).fill(0);
  let total = 0;
  let best = { faults: [] as number[], weight: -1 };
  for (const faults of subsets(model, most)) {
    let weight = 0;
    for (const [reached, chance] of unions(model, faults)) {
      let w = chance * prior(model, faults);
      for (const o of model.misfireObservations) w *= o.likelihood(reached);
      for (const o of model.observations) w *= observed(o, faults) / o.background;
      set[reached] = (set[reached] ?? 0) + w;
      weight += w;
    }
    total += weight;
    if (weight > best.weight) best = { faults, weight };
    for (const f of faults) fault[f] = (fault[f] ?? 0) + weight;
    for (const c of new Set(faults.map((f) => model.component[f] as number))) {
      component[c] = (component[c] ?? 0) + weight;
    }
  }
  const share = (w: number): number => w / total;
  return {
    fault: fault.map(share),
    component: component.map(share),
    set: set.map(share),
    total,
    best: { faults: best.faults, probability: best.weight / total },
  };
}

function subsets(model: DiagnosisModel, most: number): number[][] {
  const found: number[][] = [];
  const extend = (faults: number[], from: number): void => {
    for (let f = from; f < model.faults; f++) {
      const more = [...faults, f];
      if (more.length > 1 && more.some((each) => model.alone[each])) continue;
      found.push(more);
      if (more.length < most) extend(more, f + 1);
    }
  };
  extend([], 0);
  return found;
}

function prior(model: DiagnosisModel, faults: readonly number[]): number {
  let weight = faults.reduce((product, f) => product * (model.odds[f] as number), 1);
  for (const { a, b, times } of model.links) {
    if (faults.includes(a) && faults.includes(b)) weight *= times;
  }
  return weight;
}

function unions(model: DiagnosisModel, faults: readonly number[]): [number, number][] {
  const random = 2 ** model.cylinders;
  let sofar: [number, number][] = [[0, 1]];
  for (const f of faults) {
    const next: [number, number][] = [];
    for (const [set, chance] of sofar) {
      for (let a = model.atomStart[f] as number; a < (model.atomStart[f + 1] as number); a++) {
        const own = model.atomSet[a] as number;
        const union = set === random || own === random ? random : set | own;
        next.push([union, chance * (model.atomChance[a] as number)]);
      }
    }
    sofar = next;
  }
  return sofar;
}

function observed(
  { form, background, value }: DiagnosisModel["observations"][number],
  faults: readonly number[],
): number {
  const values = faults.map((f) => value[f] as number);
  const none = values.reduce((product, p) => product * (1 - p), 1 - background);
  if (form === "not-seen") return (none / (1 - background)) * background; // ratio to the background
  if (form === "seen") return 1 - none;
  const speakers = values.filter((q) => q >= 0);
  return speakers.length === 0
    ? background
    : speakers.reduce((sum, q) => sum + q, 0) / speakers.length;
}
