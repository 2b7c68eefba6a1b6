// What must hold of any diagnosis model. A violation is a programmer's mistake, so it throws.
import { type DiagnosisModel, randomSet } from "./diagnosis-model.ts";

const SLACK = 1e-9;

/** Throws with the first thing that does not hold; returns the model otherwise. */
export function checkModel(model: DiagnosisModel): DiagnosisModel {
  const { faults, atomStart, atomChance, atomSet } = model;
  const atoms = atomChance.length;
  demand(faults > 0, "a model needs at least one fault");
  demand(model.odds.length === faults, "odds: one per fault");
  demand(model.alone.length === faults, "alone: one per fault");
  demand(model.component.length === faults, "component: one per fault");
  demand(atomStart.length === faults + 1 && atomStart[faults] === atoms, "atomStart must span all");
  demand(atomSet.length === atoms, "atomSet: one per atom");
  for (let f = 0; f < faults; f++) {
    demand(
      (model.odds[f] ?? 0) > 0 && Number.isFinite(model.odds[f]),
      `odds of fault ${f} positive`,
    );
    demand((model.component[f] ?? 0) < model.components, `component of fault ${f} in range`);
    let sum = 0;
    for (let a = atomStart[f] ?? 0; a < (atomStart[f + 1] ?? 0); a++) {
      sum += atomChance[a] ?? 0;
      demand((atomSet[a] ?? 0) <= randomSet(model.cylinders), `set of atom ${a} in range`);
    }
    demand(Math.abs(sum - 1) < SLACK, `atoms of fault ${f} add up to 1 (got ${sum})`);
  }
  for (const o of model.observations) {
    demand(o.value.length === faults, "values: one per fault");
    demand(o.background > 0 && o.background < 1, "background strictly between 0 and 1");
    const least = o.form === "choice" ? -1 : 0;
    for (const v of o.value) demand(v >= least && v <= 1, "values are probabilities");
  }
  for (const link of model.links) {
    demand(link.a !== link.b && link.a < faults && link.b < faults, "a link joins two faults");
    demand(link.times > 0, "a link multiplies by a positive number");
  }
  return model;
}

function demand(holds: boolean, what: string): asserts holds {
  if (!holds) throw new Error(`diagnosis model: ${what}`);
}
