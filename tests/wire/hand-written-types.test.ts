// Do the schemas let through all that the library's own types can hold? The other direction, that
// nothing else comes out, is proved by the compiler where the schemas are written.
import {
  type AtHand,
  allProfiles,
  CAUTIONS,
  CHECKS,
  describeEngine,
  driveAdvice,
  type EngineProfile,
  FAULTS,
  FINDINGS,
  type Figures,
  type Finding,
  mend,
  next,
  profileById,
  REPAIRS,
  type RepairDone,
  rank,
  resolveEngine,
  why,
} from "@half-order/core";
import {
  atHandSchema,
  cautionSchema,
  checkSchema,
  driveSchema,
  engineDescriptionSchema,
  faultSchema,
  findingRowSchema,
  findingSchema,
  ledgerSchema,
  mendSchema,
  nextSchema,
  profileSchema,
  rankingSchema,
  repairDoneSchema,
  repairSchema,
} from "@half-order/core/wire";
import { expect, it } from "vitest";
import type { z } from "zod";

/** Every field there is: a new one must be added here before this compiles. */
const figures: Required<Figures> = {
  plugElectrode: "iridium",
  plugGapMm: [0.9, 1.1],
  plugThread: "M12",
  plugSeat: "gasket",
  headMetal: "iron",
  plugTorqueNm: [20, 25],
  coilPrimaryOhm: [0.5, 0.7],
  coilSecondaryOhm: [9000, 13000],
  injectorOhm: [12, 16],
  idleRpm: [650, 750],
  compressionKPa: [1000, 1350],
  fuelPressureKPa: [330, 370],
  serviceKm: 60_000,
  serviceMonths: 48,
};

const profile: Required<EngineProfile> = {
  id: "x",
  name: "X",
  invented: true,
  cylinders: 4,
  layout: "inline",
  banks: [["A1", 2, 3, 4]],
  neighbours: [["A1", 2]],
  firingOrder: ["A1", 3, 4, 2],
  firingIntervals: [180, 180, 180, 180],
  ignition: "hybrid",
  switching: "electronic",
  fuelling: "injection",
  firingGroups: [
    ["A1", 4],
    [2, 3],
  ],
  pairingToleranceDeg: 10,
  coilOn: ["A1", 2],
  connectors: [{ name: "left", feeds: ["A1", 4] }],
  covers: [{ name: "inlet manifold", cylinders: ["A1", 2], minutes: 60 }],
  fuel: "petrol",
  diagnosticPort: false,
  figures,
};

const finding: Required<Finding> = {
  finding: "plug.gap",
  cylinder: 2,
  answer: 1.2,
  when: "2026-05-01T09:30:00Z",
};

const repairDone: Required<RepairDone> = {
  repair: "repair.plug-one",
  cylinder: 2,
  result: "came-back",
  when: "2026-05-01T09:30:00Z",
};

const atHand: Required<AtHand> = {
  tools: ["none", "light"],
  where: "roadside",
  skill: 1,
  hourRate: 20,
  partsPrice: { small: 10, medium: 60, large: 250 },
  callPrice: 400,
};

function expectSame<T>(schema: z.ZodType<T>, values: readonly T[]): void {
  expect(values.length).toBeGreaterThan(0);
  for (const value of values) expect(schema.parse(value)).toEqual(value);
}

it("a profile with every field", () => expectSame(profileSchema, [profile]));
it("a finding with every field", () => expectSame(findingSchema, [finding]));
it("a repair done, with every field", () => expectSame(repairDoneSchema, [repairDone]));
it("all that can be at hand", () => expectSame(atHandSchema, [atHand]));
it("all engines of the library", () => expectSame(profileSchema, allProfiles()));
it("all engines described", () =>
  expectSame(
    engineDescriptionSchema,
    allProfiles().map((each) => describeEngine(resolveEngine(each))),
  ));
it("all faults", () => expectSame(faultSchema, FAULTS));
it("all findings", () => expectSame(findingRowSchema, FINDINGS));
it("all checks", () => expectSame(checkSchema, CHECKS));
it("all repairs", () => expectSame(repairSchema, REPAIRS));
it("all cautions", () => expectSame(cautionSchema, CAUTIONS));

it("a ranking with every field, and a ledger", () => {
  // Order unknown, findings at odds, one of them with company to put right.
  const engine: EngineProfile = { cylinders: 4, ignition: "rail" };
  const findings: readonly Finding[] = [
    { finding: "codes", answer: ["P0302", "P0303"] },
    { finding: "spark", cylinder: 2, answer: "none" },
    { finding: "spark", cylinder: 3, answer: "none" },
    { finding: "plug.gap", cylinder: 2, answer: 1.9 },
    { finding: "counts", answer: { "1": 400, "2": 0, "3": 0, "4": 0 } },
  ];
  const ranking = rank(engine, findings);
  expect(ranking.orders?.length).toBeGreaterThan(1);
  expect(ranking.fit.suspect).toBeDefined();
  expect(ranking.alsoPutRight.length).toBeGreaterThan(0);
  expectSame(rankingSchema, [ranking]);
  const [first] = ranking.ranking;
  if (!first) throw new Error("the ranking is empty");
  expectSame(ledgerSchema, [why(engine, findings, first)]);
});

it("the next step, the advice whether to drive, and a repair with all that belongs to it", () => {
  const engine = profileOf("generic.i4.1342.rail");
  const findings: readonly Finding[] = [
    { finding: "lamp", answer: "blinking" },
    { finding: "codes", answer: ["P0302", "P0303"] },
    { finding: "plug.gap", cylinder: 2, answer: 1.9 },
  ];
  const atHand = { tools: ["none"], skill: 1 } as const;
  const advice = next(engine, findings, { atHand, maxWork: 0 });
  expect(advice.withheld.length).toBeGreaterThan(0);
  expectSame(nextSchema, [advice, next(engine, findings, { maxWork: 0 })]);
  const gentle = findings.map((f) => (f.finding === "lamp" ? { ...f, answer: "steady" } : f));
  expectSame(driveSchema, [driveAdvice(engine, findings), driveAdvice(engine, gentle)]);
  const mending = mend(engine, findings, { repair: "repair.rail" });
  expect(mending.proof).toBeDefined();
  expect(mending.alsoPutRight.length).toBeGreaterThan(0);
  expectSame(mendSchema, [mending]);
});

function profileOf(id: string): EngineProfile {
  const known = profileById(id);
  if (!known) throw new Error(`${id} is gone`);
  return known;
}
