import { describe, expect, it } from "vitest";
import { checkFindings } from "../../packages/core/src/compile/check-finding.ts";
import { compile } from "../../packages/core/src/compile/compile.ts";
import { posterior } from "../../packages/core/src/inference/posterior.ts";
import { drawFaults, drawSet } from "../../packages/core/src/instrument/draw.ts";
import { randomOf, samplerOf } from "../../packages/core/src/instrument/index.ts";
import { KNOWLEDGE } from "../../packages/core/src/knowledge/knowledge.ts";
import { KINDS, type Kind } from "../helper/calibration-case.ts";
import { sampleModel } from "../helper/sample-model.ts";
import { bruteForce } from "../reference/brute-force.ts";

const [rail] = KINDS as readonly [Kind];

describe("faults and sets drawn from a model", () => {
  // Standard errors of 20,000 draws are below .0036; five of them fail one seed in 300,000.
  it("come as often as plain enumeration says", () => {
    const model = { ...sampleModel, observations: [], misfireObservations: [] };
    const plain = bruteForce(model);
    const random = randomOf(11);
    const draws = 20_000;
    const faults = plain.fault.map(() => 0);
    const sets = plain.set.map(() => 0);
    for (let i = 0; i < draws; i++) {
      const drawn = drawFaults(model, 3, random);
      for (const fault of drawn) faults[fault] = (faults[fault] ?? 0) + 1 / draws;
      const set = drawSet(model, drawn, random);
      sets[set] = (sets[set] ?? 0) + 1 / draws;
    }
    plain.fault.forEach((p, f) => {
      expect(Math.abs((faults[f] ?? 0) - p)).toBeLessThan(0.018);
    });
    plain.set.forEach((p, set) => {
      expect(Math.abs((sets[set] ?? 0) - p)).toBeLessThan(0.018);
    });
  });
});

describe("a drawn case", () => {
  it.each(KINDS)("holds an answer to each question that can be ranked: $name", (kind) => {
    const sampler = samplerOf(kind.engine, KNOWLEDGE, kind.questions);
    const random = randomOf(12);
    for (let i = 0; i < 20; i++) {
      const { findings, truth } = sampler.draw(random);
      expect(findings.map(({ finding }) => finding)).toEqual(
        kind.questions.map(({ finding }) => finding),
      );
      expect(checkFindings(kind.engine.profile, findings)).toEqual([]);
      expect(truth.faults.length).toBeGreaterThan(0);
      expect(truth.faults.length).toBeLessThan(4);
      expect(truth.places.length).toBe(truth.faults.length);
    }
  });

  it("is the same for the same seed", () => {
    const sampler = samplerOf(rail.engine, KNOWLEDGE, rail.questions);
    expect(sampler.draw(randomOf(13))).toEqual(sampler.draw(randomOf(13)));
  });

  it("never makes what is true impossible", () => {
    const sampler = samplerOf(rail.engine, KNOWLEDGE, rail.questions, 2);
    const random = randomOf(14);
    for (let i = 0; i < 40; i++) {
      const { truth, findings } = sampler.draw(random);
      const { model } = compile(rail.engine, findings, KNOWLEDGE);
      const { fault, set } = posterior(model, { most: 2 });
      for (const present of truth.faults) expect(fault[present]).toBeGreaterThan(0);
      expect(set[truth.set]).toBeGreaterThan(0);
    }
  });
});

describe("the chances of all answers to a question", () => {
  const { model } = compile(rail.engine, [], KNOWLEDGE);
  const every = Array.from({ length: model.faults }, (_, f) => f);
  const sets = [0, 1, 2, 3, 15, 16];

  // More than one code that names a cylinder is not drawn: with two causes they add up to a little over 1.
  it("add up to 1 for every fault and set, but for rounding to the floor", () => {
    const sampler = samplerOf(rail.engine, KNOWLEDGE, rail.questions);
    const sums = every.flatMap((f) => sets.flatMap((set) => sampler.answerSums([f], set)));
    expect(Math.min(...sums.map(({ least }) => least))).toBeGreaterThan(0.99);
    expect(Math.max(...sums.map(({ most }) => most))).toBeLessThan(1.003);
  });

  it("do not where a fault speaks of a plug that does not miss", () => {
    const sampler = samplerOf(rail.engine, KNOWLEDGE, [{ finding: "plug.look", cylinder: 2 }]);
    const sums = every.flatMap((f) => sampler.answerSums([f], 0));
    expect(Math.min(...sums.map(({ least }) => least))).toBeLessThan(0.5);
  });

  it("cannot be drawn where a finding is a risk of one fault and a sign of another", () => {
    const faults = KNOWLEDGE.faults.map((row) =>
      row.id === "plug.loose"
        ? { ...row, signs: [...row.signs, { finding: "plug.type", gives: { listed: 0.5 } }] }
        : row,
    );
    const question = { finding: "plug.type" };
    expect(() => samplerOf(rail.engine, { ...KNOWLEDGE, faults }, [question])).toThrow("plug.type");
    expect(() => samplerOf(rail.engine, KNOWLEDGE, [question])).not.toThrow();
  });
});
