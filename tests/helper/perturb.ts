// The same model with one of its numbers off by a part: what a comparison that is worth anything notices.
import type { DiagnosisModel } from "../../packages/core/src/model/diagnosis-model.ts";

export const NUMBERS = ["odds", "atom", "link", "value", "background", "misfire"] as const;

/** Which number is spoilt; `atom` moves chance from a fault's first atom to its last. */
export type Spoilt = (typeof NUMBERS)[number];

/** @param times factor on the first number of that kind, such as 0.99 */
export function perturbed(model: DiagnosisModel, which: Spoilt, times: number): DiagnosisModel {
  switch (which) {
    case "odds":
      return { ...model, odds: model.odds.with(0, (model.odds[0] as number) * times) };
    case "atom":
      return { ...model, atomChance: movedChance(model, times) };
    case "link":
      return { ...model, links: onFirst(model.links, (l) => ({ ...l, times: l.times * times })) };
    case "value":
      return {
        ...model,
        observations: onFirst(model.observations, (o) => ({
          ...o,
          value: o.value.with(0, (o.value[0] as number) * times),
        })),
      };
    case "background":
      return {
        ...model,
        observations: onFirst(model.observations, (o) => ({
          ...o,
          background: o.background * times,
        })),
      };
    case "misfire":
      return {
        ...model,
        misfireObservations: onFirst(model.misfireObservations, (o) => ({
          ...o,
          likelihood: (set) => o.likelihood(set) * (set === 1 ? times : 1),
        })),
      };
  }
}

function movedChance({ atomChance, atomStart }: DiagnosisModel, times: number): Float64Array {
  const last = (atomStart[1] as number) - 1;
  const moved = (atomChance[0] as number) * (1 - times);
  return atomChance
    .with(0, (atomChance[0] as number) - moved)
    .with(last, (atomChance[last] as number) + moved);
}

function onFirst<T>(list: readonly T[], change: (entry: T) => T): readonly T[] {
  return list.map((entry, i) => (i === 0 ? change(entry) : entry));
}
