// A plan that proves a repair, and what its drives show.
import { describe, expect, it } from "vitest";
import {
  type EngineProfile,
  FAULTS,
  type FaultRow,
  InputError,
  profileById,
  proofPlan,
  proofResult,
  type TrialOutcome,
  trialsNeeded,
} from "../../../packages/core/src/index.ts";
import { PROOF_RULES } from "../../../packages/core/src/knowledge/proof-drive.ts";
import { countAverage } from "../../../packages/core/src/service/proof.ts";

const six = profileById("demo.tern") as EngineProfile;
const base = FAULTS.find(({ id }) => id === "coil.half-dead") as FaultRow;
const still = { coldStart: 0, coldIdle: 0, hotIdle: 0.1, cruise: 0, pull: 0, wet: 0, bumps: 0 };
const wetFault: FaultRow = {
  ...base,
  shows: 0.3,
  regimes: { ...still, wet: 1, coldStart: 0.6 },
  signs: [],
};
const regimesOf = (plan: ReturnType<typeof proofPlan>) => plan.trial.map(({ regime }) => regime);
const clean: TrialOutcome = { misfire: "none" };

describe("proofPlan", () => {
  it("drives where the fault shows, and what the monitors need, in the order of a drive", () => {
    const plan = proofPlan(six, wetFault, 0.5);
    expect(regimesOf(plan)).toEqual(["coldStart", "wet", "cruise", "hotIdle"]);
    expect(plan.showChance).toBeCloseTo(0.3, 12);
    expect(plan.trials).toBe(9);
    expect(plan.believed).toBeCloseTo(0.9612, 4);
    const bumpy = { ...wetFault, regimes: { ...still, bumps: 0.8, pull: 0.3 } };
    expect(regimesOf(proofPlan(six, bumpy, 0.5))).toEqual(["bumps", "cruise", "hotIdle"]);
    expect(proofPlan(six, bumpy, 0.5).trials).toBe(trialsNeeded(0.5, 0.3 * 0.8));
  });

  it("waits for a night or rain only where that had to do with it, or where nothing else shows it as hard", () => {
    const pulls = { ...wetFault, regimes: { ...still, pull: 1, wet: 0.8, coldStart: 0.6 } };
    const driven = (fault: FaultRow, waitsFor?: readonly ("wet" | "coldStart")[]) =>
      regimesOf(proofPlan(six, fault, 0.5, waitsFor ? { waitsFor } : {}));
    expect(driven(pulls)).toEqual(["coldStart", "wet", "pull", "cruise", "hotIdle"]);
    expect(driven(pulls, [])).toEqual(["pull", "cruise", "hotIdle"]);
    expect(driven(pulls, ["wet"])).toEqual(["wet", "pull", "cruise", "hotIdle"]);
    expect(driven(wetFault, [])).toEqual(["coldStart", "wet", "cruise", "hotIdle"]);
  });

  it("asks for two drives even of a fault that always shows", () => {
    const hard = { ...wetFault, shows: 1 };
    expect(trialsNeeded(0.5, 1)).toBe(1);
    expect(proofPlan(six, hard, 0.5)).toMatchObject({ showChance: 1, trials: 2, believed: 1 });
  });

  it("asks for more where less doubt may remain", () => {
    const strict = proofPlan(six, wetFault, 0.5, { doubt: 0.01 });
    expect(strict.trials).toBeGreaterThan(9);
    expect(strict.believed).toBeGreaterThanOrEqual(0.99);
  });

  it("names the codes of the cylinders and of the fault, that must not come back", () => {
    expect(proofPlan(six, wetFault, 0.5, { cylinders: [2, 5] }).codes).toEqual([
      "P0300",
      "P0302",
      "P0305",
    ]);
    expect(proofPlan(six, wetFault, 0.5).codes).toHaveLength(7);
    const lean: FaultRow = {
      ...wetFault,
      signs: [{ finding: "codes", gives: { lean: 0.5, rich: 0.05 } }],
    };
    const { codes } = proofPlan(six, lean, 0.5, { cylinders: ["2"] });
    expect(codes).toContain("P0171");
    expect(codes).not.toContain("P0172");
  });

  it("tells for how long, and by which counter", () => {
    const plan = proofPlan(six, wetFault, 0.5);
    expect(plan.rules).toMatchObject({ pendingFreeDrives: 2, lampOffDrives: 3, warmUps: 40 });
    expect(plan.averageDrives).toBeUndefined();
    const counts = plan.clear.find(({ id }) => id === "counts")?.say;
    expect(counts).toMatch(/this drive/);
    expect(counts).toMatch(/Not the average/);
    expect(plan.clear.map(({ id }) => id)).toEqual(
      expect.arrayContaining(["codes", "pending", "lamp", "permanent", "monitors"]),
    );
  });

  it("is there for every fault of the catalogue, long enough for the monitors", () => {
    for (const fault of FAULTS) {
      const plan = proofPlan(six, fault, 0.6);
      expect(plan.trials, fault.id).toBeGreaterThanOrEqual(2);
      expect(Number.isFinite(plan.trials), fault.id).toBe(true);
      expect(plan.believed, fault.id).toBeGreaterThanOrEqual(0.95 - 1e-9);
      expect(plan.showChance, fault.id).toBeLessThanOrEqual(1);
      const at40 = plan.trial.find(({ regime }) => regime === "cruise")?.minutes ?? 0;
      expect(at40).toBeGreaterThanOrEqual(PROOF_RULES.permanentDrive.above40KmhMin);
    }
  });

  it("refuses what it cannot use", () => {
    const paths = (run: () => unknown): readonly string[] => {
      try {
        run();
      } catch (error) {
        return (error as InputError).problems.map(({ path }) => path);
      }
      return [];
    };
    expect(paths(() => proofPlan(six, wetFault, 1))).toEqual(["/belief"]);
    expect(paths(() => proofPlan(six, wetFault, 0.5, { cylinders: [1, 9] }))).toEqual([
      "/cylinders/1",
    ]);
    for (const averageCount of [-1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(paths(() => proofPlan(six, wetFault, 0.5, { averageCount }))).toEqual([
        "/averageCount",
      ]);
    }
    expect(() => proofPlan({ ...six, cylinders: 0 }, wetFault, 0.5)).toThrow(InputError);
  });
});

describe("the ten-drive average of counts", () => {
  // Worked from 0.1·counts + 0.9·before, the moving average of the public diagnosis standard (from memory).
  it("rises and forgets as worked out", () => {
    const rise: number[] = [];
    for (let i = 0; i < 5; i++) rise.push(countAverage(rise.at(-1) ?? 0, 100));
    expect(rise.map((value) => Number(value.toFixed(3)))).toEqual([10, 19, 27.1, 34.39, 40.951]);
    let left = countAverage(0, 300);
    expect(left).toBeCloseTo(30, 9);
    for (let i = 0; i < 10; i++) left = countAverage(left, 0);
    expect(left).toBeCloseTo(10.46, 2);
  });

  it("is below 1 only after 33 clean drives from 30", () => {
    expect(proofPlan(six, wetFault, 0.5, { averageCount: 30 }).averageDrives).toBe(33);
    expect(proofPlan(six, wetFault, 0.5, { averageCount: 0.5 }).averageDrives).toBe(0);
  });
});

describe("proofResult", () => {
  const plan = proofPlan(six, wetFault, 0.5);

  it("says nothing before the first drive", () => {
    expect(proofResult(plan, [])).toBeUndefined();
  });

  it("is better while it stays clean, and cured after enough", () => {
    const some = proofResult(plan, [clean, clean, clean]);
    expect(some).toMatchObject({ result: "better", cleanTrials: 3, trialsLeft: 6 });
    expect(some?.believed).toBeCloseTo(0.5 / (0.5 + 0.5 * 0.7 ** 3), 12);
    const all = proofResult(
      plan,
      Array.from({ length: plan.trials }, () => clean),
    );
    expect(all).toMatchObject({ result: "cured", trialsLeft: 0 });
    expect(all?.believed).toBeCloseTo(plan.believed, 12);
  });

  it("came back when it was clean first, and no clean drive makes up for that", () => {
    const back = [
      clean,
      clean,
      { misfire: "less" },
      ...Array.from({ length: 20 }, () => clean),
    ] as const;
    expect(proofResult(plan, back)).toMatchObject({
      result: "came-back",
      cleanTrials: 22,
      believed: 0,
    });
    expect(proofResult(plan, back)?.trialsLeft).toBeUndefined();
  });

  it("takes a returned code for a misfire that was not felt", () => {
    const coded: TrialOutcome = { misfire: "none", isCodeBack: true };
    expect(proofResult(plan, [clean, coded])).toMatchObject({ result: "came-back" });
    expect(proofResult(plan, [coded])).toMatchObject({ result: "better", believed: 0 });
  });

  it("is the same, or better, when it was never clean", () => {
    expect(proofResult(plan, [{ misfire: "same" }])).toMatchObject({ result: "same", believed: 0 });
    expect(proofResult(plan, [{ misfire: "same" }, { misfire: "less" }])).toMatchObject({
      result: "better",
    });
  });
});
