// How far a number must move: on a published network through the same bisection, on models of our own by
// looking on both sides of the answer.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compile } from "../../packages/core/src/compile/compile.ts";
import { instanceKey } from "../../packages/core/src/compile/prior.ts";
import { sensitivity } from "../../packages/core/src/explain/sensitivity.ts";
import {
  type EngineProfile,
  InputError,
  KNOWLEDGE,
  profileById,
  rank,
  resolveEngine,
} from "../../packages/core/src/index.ts";
import { posterior } from "../../packages/core/src/inference/posterior.ts";
import { crossing, flip, type Weight } from "../../packages/core/src/inference/sensitivity.ts";
import type { DiagnosisModel } from "../../packages/core/src/model/diagnosis-model.ts";
import { modelsOf } from "../helper/arbitrary-model.ts";
import {
  ALGORITHMS,
  ask,
  type Evidence,
  networkOf,
  type TableNode,
} from "../helper/bayes-oracle.ts";
import { sampleModel } from "../helper/sample-model.ts";

interface Fire {
  readonly nodes: readonly TableNode[];
  readonly flips: {
    readonly given: Evidence;
    readonly of: Evidence;
    readonly to: number;
    readonly by: readonly {
      readonly node: string;
      readonly row: number;
      readonly name: string;
      readonly at?: string;
      readonly ceiling?: string;
    }[];
  };
}

const file = join(import.meta.dirname, "../../fixtures/published/fire.json");
const { nodes, flips } = JSON.parse(readFileSync(file, "utf8")) as Fire;

describe("the fire network", () => {
  const probability = (node: string, row: number, t: number): number => {
    const changed = nodes.map((each) =>
      each.id === node
        ? { ...each, table: each.table.map((own, r) => (r === row ? [t, 1 - t] : own)) }
        : each,
    );
    return ask(ALGORITHMS.elimination, networkOf(changed), flips.of, flips.given);
  };
  const flipOf = (node: string, row: number): number | undefined => {
    const table = nodes.find(({ id }) => id === node)?.table as TableNode["table"];
    const now = table[row]?.[0] as number;
    const over = (t: number): number => probability(node, row, t) - flips.to;
    return crossing(over, now, 1, 1e-9) ?? crossing(over, now, 0, 1e-9);
  };

  it.each(flips.by.filter(({ at }) => at))("flips where it was published: $name", (by) => {
    expect(Math.abs((flipOf(by.node, by.row) as number) - Number(by.at))).toBeLessThan(1e-6);
  });

  it.each(flips.by.filter(({ ceiling }) => ceiling))("is flipped by no value of $name", (by) => {
    expect(flipOf(by.node, by.row)).toBeUndefined();
    expect(probability(by.node, by.row, 0)).toBeCloseTo(Number(by.ceiling), 6);
  });

  it("has something to look at in both tests", () => {
    expect(flips.by.map(({ at }) => at !== undefined)).toEqual([true, true, false]);
  });
});

describe("the bisection", () => {
  it("finds a change of sign either way, or says that there is none", () => {
    expect(crossing((t) => t * t - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 11);
    expect(crossing((t) => 2 - t * t, 2, 0)).toBeCloseTo(Math.SQRT2, 11);
    expect(crossing((t) => t * t + 1, 0, 2)).toBeUndefined();
  });
});

const WEIGHTS: readonly Weight[] = [
  { kind: "prior", faults: [0] },
  { kind: "prior", faults: [2] },
  { kind: "sign", observation: 0, faults: [0] },
  { kind: "sign", observation: 2, faults: [2] },
  { kind: "set", observation: 0, set: 2 },
];

function first(model: DiagnosisModel): number {
  const { fault } = posterior(model, { tolerance: 0 });
  return fault.indexOf(Math.max(...fault));
}

describe("the flip of a model's number", () => {
  it.each(WEIGHTS)("stands where the first place changes hands, if anywhere: %o", (weight) => {
    const found = flip(sampleModel, weight);
    const scan = Array.from({ length: 400 }, (_, i) => (i + 0.5) / 400);
    const holders = scan.map((t) => first(changed(weight, t / (1 - t) / 2, t)));
    if (!found) {
      expect(new Set(holders).size).toBe(1);
      return;
    }
    const beside = (db: number): number => {
      const odds = (found.to / (1 - found.to)) * 10 ** (db / 10);
      return first(changed(weight, found.to * 10 ** (db / 10), odds / (1 + odds)));
    };
    const away = Math.sign(found.moveDb) * 0.02;
    expect(beside(-away)).toBe(first(sampleModel));
    expect(beside(away)).toBe(found.first);
  });

  it("is found for some of them and for others not", () => {
    const found = WEIGHTS.map((weight) => flip(sampleModel, weight) !== undefined);
    expect(new Set(found).size).toBe(2);
  });

  it("is not asked of a fault that is silent", () => {
    const silent: Weight = { kind: "sign", observation: 2, faults: [1] };
    expect(() => flip(sampleModel, silent)).toThrow("silent");
  });
});

describe("the flip on random models, two faults sharing the number", () => {
  const steps = [0.1, 0.3, 0.5, 0.7, 0.9];

  it("is where ranking anew finds the first change of hands", () => {
    let found = 0;
    const check = (model: DiagnosisModel, weight: Weight, set: (db: number) => DiagnosisModel) => {
      const flipped = flip(model, weight);
      if (!flipped) return;
      found++;
      const holder = first(model);
      // All the way to the flip the first place is kept, or shared to the last digits; behind it, lost.
      const leadAt = (db: number): number => {
        const { fault } = posterior(set(db), { tolerance: 0 });
        return (fault[holder] as number) - Math.max(...fault.filter((_, f) => f !== holder));
      };
      for (const step of steps) {
        if (Math.abs(flipped.moveDb) > 0.5)
          expect(leadAt(step * flipped.moveDb)).toBeGreaterThan(-1e-9);
      }
      expect(Math.abs(leadAt(flipped.moveDb))).toBeLessThan(0.01);
    };
    fc.assert(
      fc.property(modelsOf([3, 6], [1, 3]), fc.nat(5), (model, which) => {
        const faults = [0, 1];
        check(model, { kind: "prior", faults }, (db) => {
          const times = 10 ** (db / 10);
          return { ...model, odds: model.odds.map((own, f) => (f < 2 ? own * times : own)) };
        });
        const sign = model.observations[which];
        const own = sign?.value[0] as number;
        if (!sign || own <= 0.001 || own >= 0.999) return;
        const shared = (value: number): DiagnosisModel => ({
          ...model,
          observations: model.observations.with(which, {
            ...sign,
            value: sign.value.with(0, value).with(1, value),
          }),
        });
        check(shared(own), { kind: "sign", observation: which, faults }, (db) => {
          const odds = (own / (1 - own)) * 10 ** (db / 10);
          return shared(odds / (1 + odds));
        });
      }),
      { numRuns: 150, seed: 20278 },
    );
    expect(found).toBeGreaterThan(50);
  });
});

describe("the flip of parts", () => {
  it("is where ranking anew finds another part likeliest, and nowhere sooner", () => {
    let [found, apart] = [0, 0];
    fc.assert(
      fc.property(modelsOf([3, 6], [1, 3]), fc.nat(5), (drawn, of) => {
        const component = Uint32Array.from({ length: drawn.faults }, (_, f) => Math.floor(f / 2));
        const components = Math.max(...component) + 1;
        const model = { ...drawn, component, components };
        const weight: Weight = { kind: "prior", faults: [of % model.faults] };
        const partsAt = (db: number): Float64Array => {
          const times = 10 ** (db / 10);
          const odds = model.odds.map((own, f) => (weight.faults.includes(f) ? own * times : own));
          return posterior({ ...model, odds }, { tolerance: 0 }).component;
        };
        const firstAt = (db: number): number => {
          const parts = partsAt(db);
          return parts.indexOf(Math.max(...parts));
        };
        const holder = firstAt(0);
        const flipped = flip(model, weight, { of: "component" });
        if (Math.abs((flip(model, weight)?.moveDb ?? 99) - (flipped?.moveDb ?? 99)) > 0.1) apart++;
        if (!flipped) {
          for (const db of [-39, -20, -5, 5, 20, 39]) expect(firstAt(db)).toBe(holder);
          return;
        }
        found++;
        const { moveDb, first: then } = flipped;
        if (Math.abs(moveDb) > 0.5) {
          for (const step of [0.2, 0.6, 0.9]) expect(firstAt(step * moveDb)).toBe(holder);
        }
        const parts = partsAt(moveDb);
        expect(Math.abs((parts[holder] as number) - (parts[then] as number))).toBeLessThan(0.01);
        expect(then).not.toBe(holder);
      }),
      { numRuns: 150, seed: 20279 },
    );
    expect(found).toBeGreaterThan(40);
    expect(apart).toBeGreaterThan(20);
  });
});

/** The sample model with one number set: odds, or a probability. */
function changed(weight: Weight, odds: number, probability: number): DiagnosisModel {
  if (weight.kind === "prior") {
    return { ...sampleModel, odds: sampleModel.odds.with(weight.faults[0] as number, odds) };
  }
  if (weight.kind === "sign") {
    const fault = weight.faults[0] as number;
    const observations = sampleModel.observations.map((o, i) =>
      i === weight.observation ? { ...o, value: o.value.with(fault, probability) } : o,
    );
    return { ...sampleModel, observations };
  }
  const [look] = sampleModel.misfireObservations;
  const likelihood = (set: number): number =>
    set === weight.set ? probability : (look?.likelihood(set) as number);
  return { ...sampleModel, misfireObservations: [{ likelihood, answer: 3 }] };
}

describe("the sensitivity of a ranking", () => {
  const profile = profileById("demo.wagtail");
  if (!profile) throw new Error("demo.wagtail is gone");
  const findings = [
    { finding: "codes", answer: ["P0302"] },
    { finding: "plug.age", answer: "over-100" },
    { finding: "plug.gap", cylinder: 2, answer: "wide" },
  ];
  const told = sensitivity(profile, findings, { seed: 4, shakes: 12 });

  it("names the numbers that would change the first place, nearest first", () => {
    const moves = told.flips.map(({ moveDb }) => Math.abs(moveDb));
    expect(told.leading[0]).toBe("plug.gap-worn@leg 2");
    expect(moves).toEqual([...moves].sort((a, b) => a - b));
    expect(told.flips).toContainEqual(
      expect.objectContaining({ of: "answer", finding: "plug.gap", cylinder: 2 }),
    );
    for (const { first: next } of told.flips) expect(next).not.toBe(told.leading[0]);
  });

  it("is the same for the same seed", () => {
    expect(sensitivity(profile, findings, { seed: 4, shakes: 12 })).toEqual(told);
  });

  it("tells how often the first place holds, less often under more noise", () => {
    expect(told.stability.map(({ sigma, shakes }) => [sigma, shakes])).toEqual([
      [0.5, 12],
      [1, 12],
    ]);
    const [little, much] = told.stability;
    expect(little?.first).toBeGreaterThan(0.5);
    expect(much?.first).toBeLessThanOrEqual(little?.first ?? 0);
    for (const { firstThree } of told.stability) expect(firstThree).toBeLessThanOrEqual(1);
  });

  it("shakes nothing when it is told not to", () => {
    const still = sensitivity(profile, findings, { shakes: 0 });
    expect(still).toEqual({ ...told, stability: [] });
  });

  it("passes over no number that would change the first place", () => {
    // Every number of the two that lead, looked at one by one and by all three faults together.
    const { model, instances } = compile(resolveEngine(profile), findings, KNOWLEDGE);
    const leaveOut = [model.components - 1];
    for (const key of told.leading) {
      const own = instances.findIndex((instance) => instanceKey(instance) === key);
      const type = instances[own]?.fault;
      const alike = [...instances.keys()].filter((f) => instances[f]?.fault === type);
      model.observations.forEach(({ value, answer }, observation) => {
        if ((value[own] as number) <= 0) return;
        const faults = alike.filter((f) => value[f] === value[own]);
        const how = { leaveOut, of: "component" } as const;
        const found = flip(model, { kind: "sign", observation, faults }, how);
        const named = told.flips.find(
          (each) => each.fault === key && each.finding === findings[answer]?.finding,
        );
        if (found) expect(Math.abs(named?.moveDb ?? 99)).toBeLessThan(Math.abs(found.moveDb) + 0.5);
      });
    }
  });

  it("lets a fault gain from bringing the answer more often, whatever was looked for and not seen", () => {
    const tern = profileById("demo.tern");
    if (!tern) throw new Error("demo.tern is gone");
    const codes = [
      { finding: "codes", answer: ["P0302", "P0305"] },
      { finding: "connector.lock", cylinder: 2, answer: "loose" },
    ];
    const typeOf = (key: string): string => key.split("@")[0] as string;
    const cases = [sensitivity(tern, codes, { shakes: 0 }), told];
    const flips = cases.flatMap((each) => each.flips).filter(({ of }) => of === "answer");
    expect(flips.map(({ moveDb }) => Math.sign(moveDb))).toEqual(expect.arrayContaining([-1, 1]));
    for (const { fault, first, moveDb, from, to } of flips) {
      expect(Math.sign(to - from)).toBe(Math.sign(moveDb));
      expect(typeOf(first) === typeOf(fault)).toBe(moveDb > 0);
    }
  });

  it("knows no rival in the part that is first: a coil half dead or weak is one coil", () => {
    // Both cylinders of one double coil miss.
    const tern = profileById("demo.tern") as EngineProfile;
    const given = [{ finding: "codes", answer: ["P0302", "P0305"] }];
    const { ranking, components } = rank(tern, given);
    const partOf = (key: string): string | undefined =>
      ranking.find(({ fault, place }) => `${fault}@${place}` === key)?.component;
    const of = sensitivity(tern, given, { shakes: 40 });
    const [own = "", rival = ""] = of.leading;
    // The second fault is another one of the coil; the second part is what stands against it.
    expect(ranking[1]?.component).toBe(partOf(own));
    expect([own, rival].map(partOf)).toEqual([0, 1].map((at) => components[at]?.component));
    for (const { first: next } of of.flips) expect(partOf(next)).not.toBe(partOf(own));
    for (const { first: part, firstFault } of of.stability)
      expect(part).toBeGreaterThan(firstFault);
  });

  it("refuses what a ranking refuses", () => {
    expect(() => sensitivity(profile, [{ finding: "no-such", answer: "yes" }])).toThrow(InputError);
  });
});
