// Is what a fault says of an answer a chance: do all answers to one question add up, given a fault?
import { describe, expect, it } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { misfireClass, patternOf } from "../../../packages/core/src/compile/pattern.ts";
import { engineById } from "../../../packages/core/src/engine/profile-library.ts";
import { type Finding, KNOWLEDGE } from "../../../packages/core/src/index.ts";
import {
  expectedSetLikelihood,
  likelihoodRow,
} from "../../../packages/core/src/inference/evidence.ts";
import type { DiagnosisModel } from "../../../packages/core/src/model/diagnosis-model.ts";

const engine = engineById("generic.i4.1342.rail");
if (!engine) throw new Error("the inline four on a rail is gone");

/** Chance of an answer given each fault alone, over all cylinders that it may make miss. */
function chances(finding: Finding): readonly number[] {
  const { model } = compile(engine as NonNullable<typeof engine>, [finding], KNOWLEDGE);
  return Array.from({ length: model.faults }, (_, f) => chance(model, f));
}

function chance(model: DiagnosisModel, fault: number): number {
  const ratio = likelihoodRow(model, fault).reduce((product, each) => product * each, 1);
  // Without a look at the set the ratio is held against the background; with one the set has its say.
  const isSet = model.misfireObservations.length > 0;
  const background = isSet ? 1 : model.observations.reduce((p, o) => p * o.background, 1);
  return ratio * background * expectedSetLikelihood(model, fault);
}

function sums(finding: string, cylinder?: number): readonly number[] {
  const options = Object.keys(KNOWLEDGE.findings.get(finding)?.options ?? {});
  const each = options.map((answer) =>
    chances(cylinder === undefined ? { finding, answer } : { finding, answer, cylinder }),
  );
  const [first = []] = each;
  return first.map((_, fault) => each.reduce((sum, of) => sum + (of[fault] ?? 0), 0));
}

describe("all answers to a choice, given one fault", () => {
  it.each([
    ["plug.look", 2],
    ["injector.cut", 2],
    ["injector.tick", 3],
    ["injector.lamp", 3],
    ["cancel", 1],
    ["lamp", undefined],
    ["complaint.severity", undefined],
    ["trim.idle", undefined],
    ["trim.speed", undefined],
    ["regime.worst", undefined],
  ] as const)("add up to 1, but for rounding to the floor: %s", (finding, cylinder) => {
    for (const sum of sums(finding, cylinder)) {
      expect(sum).toBeGreaterThan(0.99);
      expect(sum).toBeLessThan(1.01);
    }
  });
});

/** Told on an exchange of cables, as if that were a look at one moment. */
describe("a look that waits for a fault which hides", () => {
  const row = KNOWLEDGE.findings.get("swap.lead");
  const fault = KNOWLEDGE.faults.find(({ id }) => id === "lead.leaking");
  const pack = engineById("generic.i4.1342.pack");
  if (!row || !fault || !pack) throw new Error("nobody exchanges cables");
  const moved = fault.signs.find(({ finding }) => finding === "swap.lead")?.gives["moved"] ?? 0;

  it.each([
    [undefined, fault.shows],
    [0.5, fault.shows + 0.5 * (1 - fault.shows)],
    [1, 1],
  ])("meets it so much more often: %s", (awaits, meets) => {
    const still = { ...row, momentary: true };
    const findings = new Map(KNOWLEDGE.findings);
    findings.set(row.id, awaits === undefined ? still : { ...still, awaits });
    const answer = { finding: "swap.lead", answer: "moved", cylinder: 1 };
    const { model, instances } = compile(pack, [answer], { ...KNOWLEDGE, findings });
    const at = instances.findIndex(
      (each) => each.fault.id === fault.id && each.place.cylinders.includes(0),
    );
    const usual = row.options["moved"]?.chance ?? 0;
    expect(model.observations[0]?.value[at]).toBeCloseTo(meets * moved + (1 - meets) * usual, 2);
  });
});

describe("a code that names a cylinder's injector", () => {
  const answers = [[], ["P0201"], ["P0202"], ["P0203"], ["P0204"]];
  const family = Object.keys(KNOWLEDGE.findings.get("codes")?.options ?? {});
  const at = family.indexOf("injector-circuit");

  it("is stored for one of the cylinders or for none: these add up to 1", () => {
    const each = answers.map((answer) =>
      compile(engine, [{ finding: "codes", answer }], KNOWLEDGE),
    );
    for (let fault = 0; fault < (each[0]?.model.faults ?? 0); fault++) {
      const sum = each.reduce((total, { model }) => {
        const { background, value, form } = model.observations[
          at
        ] as (typeof model.observations)[0];
        const none = (1 - background) * (1 - (value[fault] as number));
        return total + (form === "seen" ? 1 - none : none);
      }, 0);
      expect(sum).toBeGreaterThan(0.9999);
      expect(sum).toBeLessThan(1.003);
    }
  });
});

describe("what follows from cylinders that miss", () => {
  const { model, instances } = compile(
    engine,
    [{ finding: "trim.idle", answer: "lean" }],
    KNOWLEDGE,
  );
  const said = (id: string): number =>
    model.observations[0]?.value[instances.findIndex(({ fault }) => fault.id === id)] as number;
  const rows = KNOWLEDGE.findings.get("trim.idle")?.afterMisfire;

  it("is the mean over the sets that the fault reaches", () => {
    const instance = instances.find(({ fault }) => fault.id === "coil.half-dead");
    if (!instance || !rows) throw new Error("there are coils and trims");
    let mean = 0;
    for (const [set, p] of patternOf(engine, instance.place, instance.fault.reach)) {
      mean += p * (rows[misfireClass(set, 4)]["lean"] ?? 0);
    }
    // Told in steps of half a hundredth.
    expect(Math.abs(said("coil.half-dead") - mean)).toBeLessThanOrEqual(0.0025 + 1e-9);
  });

  it("is the same for whatever kills the same cylinders", () => {
    expect(said("driver.dead")).toBeCloseTo(said("coil.half-dead"), 2);
    expect(said("plug.cracked")).toBeCloseTo(said("valve.leaking"), 1);
  });

  it("gives way to what a fault states itself", () => {
    const stated = KNOWLEDGE.faults
      .find(({ id }) => id === "intake.hose-leak")
      ?.signs.find(({ finding }) => finding === "trim.idle")?.gives["lean"];
    expect(said("intake.hose-leak")).toBe(stated);
    expect(said("intake.hose-leak")).toBeGreaterThan(2 * said("coil.half-dead"));
  });

  it("is little where nothing misses", () => {
    expect(said("not-misfire.other-shake")).toBeLessThan(0.06);
  });

  it("keeps petrol out of the oil where none is injected", () => {
    const smelt = compile(engine, [{ finding: "smell", answer: [] }], KNOWLEDGE).model;
    const options = Object.keys(KNOWLEDGE.findings.get("smell")?.options ?? {});
    const oil = smelt.observations[options.indexOf("petrol-in-oil")]?.value;
    const of = (id: string) => oil?.[instances.findIndex(({ fault }) => fault.id === id)] as number;
    expect(of("injector.dead")).toBeLessThan(0.01);
    expect(of("coil.half-dead")).toBeGreaterThan(0.08);
  });
});
