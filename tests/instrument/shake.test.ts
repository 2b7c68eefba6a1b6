import { describe, expect, it } from "vitest";
import { compile } from "../../packages/core/src/compile/compile.ts";
import type { Engine } from "../../packages/core/src/engine/engine.ts";
import { engineById } from "../../packages/core/src/engine/profile-library.ts";
import { shakenModel } from "../../packages/core/src/inference/shake.ts";
import { shakenKnowledge } from "../../packages/core/src/instrument/index.ts";
import { KNOWLEDGE } from "../../packages/core/src/knowledge/knowledge.ts";
import { checkModel } from "../../packages/core/src/model/invariant.ts";
import { randomOf } from "../../packages/core/src/units/random.ts";
import { PROBABILITY_FLOOR } from "../../packages/core/src/units/weight.ts";
import { sampleModel } from "../helper/sample-model.ts";

const engine = engineById("generic.i4.1342.rail") as Engine;
const shaken = shakenKnowledge(KNOWLEDGE, 1, 5);

function sum(row: object): number {
  return Object.values(row).reduce((total: number, value: number) => total + value, 0);
}

describe("a shaken knowledge", () => {
  it("is the same for the same seed, and another for another", () => {
    expect(shakenKnowledge(KNOWLEDGE, 1, 5)).toEqual(shaken);
    expect(shakenKnowledge(KNOWLEDGE, 1, 6)).not.toEqual(shaken);
  });

  it("is the old one when shaken by nothing", () => {
    const still = shakenKnowledge(KNOWLEDGE, 0, 5);
    still.faults.forEach((fault, i) => {
      const before = KNOWLEDGE.faults[i];
      for (const [kind, share] of Object.entries(fault.shares)) {
        expect(share).toBeCloseTo(before?.shares[kind as never] ?? 0, 9);
      }
      expect(sum(fault.reach)).toBeCloseTo(sum(before?.reach ?? {}), 9);
    });
  });

  it("has rows that add up as before", () => {
    for (const { reach } of shaken.faults) expect(sum(reach)).toBeCloseTo(1, 9);
    for (const [id, row] of shaken.findings) {
      if (row.kind === "choice") {
        const chances = Object.values(row.options).map(({ chance }) => chance);
        const before = Object.values(KNOWLEDGE.findings.get(id)?.options ?? {});
        const asBefore = before.reduce((total, { chance }) => total + chance, 0);
        expect(sum(chances)).toBeCloseTo(asBefore, 9);
      }
      for (const classes of Object.values(row.byMisfire ?? {})) {
        expect(sum(classes)).toBeCloseTo(1, 2);
      }
    }
  });

  it("leaves zeros alone and keeps the floor", () => {
    shaken.faults.forEach((fault, i) => {
      for (const [kind, share] of Object.entries(fault.shares)) {
        const before = KNOWLEDGE.faults[i]?.shares[kind as never] ?? 0;
        if (before === 0) expect(share).toBe(0);
        else expect(share).toBeGreaterThan(0);
      }
      expect(fault.shows).toBeLessThanOrEqual(1 - PROBABILITY_FLOOR);
    });
  });

  it("moves log-odds by as much as was asked", () => {
    const moves = shaken.faults.flatMap(({ shares }, i) => {
      const before = KNOWLEDGE.faults[i]?.shares.rail ?? 0;
      return before >= 2 && shares.rail ? [Math.log(shares.rail / before)] : [];
    });
    const spread = Math.sqrt(moves.reduce((total, move) => total + move * move, 0) / moves.length);
    // Five standard errors of a deviation from some sixty numbers.
    expect(moves.length).toBeGreaterThan(40);
    expect(Math.abs(spread - 1)).toBeLessThan(5 / Math.sqrt(2 * moves.length));
  });

  it("compiles to a sound model", () => {
    const findings = [
      { finding: "codes", answer: ["P0302"] },
      { finding: "complaint.main", answer: "shakes-at-idle" },
    ];
    expect(() => checkModel(compile(engine, findings, shaken).model)).not.toThrow();
  });
});

describe("a shaken model", () => {
  it("is sound, and the old one when shaken by nothing", () => {
    const types = [0, 1, 2];
    const moved = shakenModel(sampleModel, types, { sigma: 1, random: randomOf(1) });
    const still = shakenModel(sampleModel, types, { sigma: 0, random: randomOf(1) });
    expect(() => checkModel(moved)).not.toThrow();
    expect(moved.odds[0]).not.toBeCloseTo(sampleModel.odds[0] as number, 6);
    for (const f of types) expect(still.odds[f]).toBeCloseTo(sampleModel.odds[f] as number, 12);
    still.observations.forEach((o, i) => {
      o.value.forEach((value, f) => {
        expect(value).toBeCloseTo(sampleModel.observations[i]?.value[f] as number, 12);
      });
    });
  });

  it("moves faults of one type as one", () => {
    const { odds } = shakenModel(sampleModel, [0, 0, 1], { sigma: 1, random: randomOf(1) });
    const moves = odds.map((own, f) => own / (sampleModel.odds[f] as number));
    expect(moves[0]).toBeCloseTo(moves[1] as number, 12);
    expect(moves[2]).not.toBeCloseTo(moves[1] as number, 3);
  });
});
