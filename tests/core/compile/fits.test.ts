// What an engine has no part for is neither asked nor reasoned with.
import { describe, expect, it } from "vitest";
import { fits } from "../../../packages/core/src/compile/fits.ts";
import {
  CHECKS,
  driveAdvice,
  type EngineProfile,
  type Finding,
  KNOWLEDGE,
  next,
  rank,
  resolveEngine,
} from "../../../packages/core/src/index.ts";
import { profileSchema } from "../../../packages/core/src/wire/profile.ts";

const OLD: EngineProfile = {
  cylinders: 4,
  ignition: "distributor",
  firingOrder: [1, 3, 4, 2],
  diagnosticPort: false,
};
const COMPLAINT: readonly Finding[] = [
  { finding: "complaint.main", answer: "jerks-under-load" },
  { finding: "onset", answer: "months" },
];
const READER = CHECKS.filter(({ tool }) => tool === "code reader").map(({ id }) => id);
const PACK: EngineProfile = { cylinders: 4, ignition: "pack", firingOrder: [1, 3, 4, 2] };

describe("an engine without a diagnostic port", () => {
  it("is sent to no code reader, neither as the next step nor as a first check", () => {
    const { step, checks, withheld } = next(OLD, COMPLAINT);
    const told = [
      ...checks.map(({ check }) => check),
      ...withheld.map(({ id }) => id),
      ...(step.kind === "check" ? [step.check] : []),
      ...rank(OLD, COMPLAINT).ranking.map(({ firstCheck }) => firstCheck),
    ];
    expect(checks.length).toBeGreaterThan(3);
    expect(told.filter((id) => READER.includes(id))).toEqual([]);
  });

  it("ranks as if nobody had read lamp and codes", () => {
    const read: readonly Finding[] = [
      ...COMPLAINT,
      { finding: "lamp", answer: "off" },
      { finding: "codes", answer: ["P0303"] },
      { finding: "trim.idle", answer: "lean" },
    ];
    expect(rank(OLD, read).ranking).toEqual(rank(OLD, COMPLAINT).ranking);
    const { diagnosticPort: _, ...newer } = OLD;
    expect(rank(newer, read).ranking).not.toEqual(rank(newer, COMPLAINT).ranking);
  });

  it("is told to look round the car instead of at the lamp, and is stopped by what else is known", () => {
    expect(driveAdvice(OLD, COMPLAINT).ask).toBe("alarm");
    const { diagnosticPort: _, ...newer } = OLD;
    expect(driveAdvice(newer, COMPLAINT).ask).toBe("lamp");
    const blinking: readonly Finding[] = [{ finding: "lamp", answer: "blinking" }];
    expect(driveAdvice(OLD, blinking).level).toEqual(driveAdvice(newer, blinking).level);
  });

  it("comes in from outside, and is anything but a word", () => {
    expect(profileSchema.parse(OLD)).toEqual(OLD);
    expect(profileSchema.safeParse({ ...OLD, diagnosticPort: "no" }).success).toBe(false);
  });

  it.each(CHECKS.filter(({ tool }) => tool === "code reader"))(
    "has something to do instead of $id",
    (row) => {
      const instead = CHECKS.find(({ id }) => id === row.instead);
      expect(instead?.tool).not.toBe("code reader");
      expect(instead?.suits).toBeUndefined();
      const read = instead?.yields.flatMap((id) => KNOWLEDGE.findings.get(id) ?? []) ?? [];
      expect(read.some(({ throughPort }) => !throughPort)).toBe(true);
    },
  );
});

describe("double coils", () => {
  const swap = CHECKS.find(({ id }) => id === "check.double-coil-swap");
  if (!swap) throw new Error("nobody exchanges double coils");

  it("come off singly where each has a connector of its own, and not out of one block", () => {
    const apart = [
      { name: "coil 1+4", feeds: [1, 4] },
      { name: "coil 2+3", feeds: [2, 3] },
    ];
    expect(fits(resolveEngine(PACK), swap)).toBe(false);
    expect(fits(resolveEngine({ ...PACK, connectors: apart }), swap)).toBe(true);
    expect(fits(resolveEngine({ ...PACK, ignition: "hybrid" }), swap)).toBe(true);
  });

  it("in one block are neither exchanged nor renewed singly", () => {
    const pair: readonly Finding[] = [{ finding: "codes", answer: ["P0301", "P0304"] }];
    const { checks, repairs } = next(PACK, pair);
    const ids = [...checks.map(({ check }) => check), ...repairs.map(({ repair }) => repair)];
    expect(ids).not.toContain("check.double-coil-swap");
    expect(ids).not.toContain("repair.coil-double");
    expect(ids).toContain("repair.pack");
  });
});
