// An injector that never opens looks like a dead coil until somebody tests the spark; then the advice must
// lead to the injector's own plug. What these cases expect is common practice of the trade; no source.
import { describe, expect, it } from "vitest";
import {
  type Finding,
  next,
  profileById,
  type RankedFault,
  rank,
} from "../../packages/core/src/index.ts";

const KINDS = ["coil-per-plug", "rail", "pack"] as const;
const DEAD_COIL = ["coil.single-dead", "coil.half-dead", "coil.leg-leaks"];

const CODE: readonly Finding[] = [
  { finding: "lamp", answer: "steady" },
  { finding: "codes", answer: ["P0303"] },
  { finding: "onset", answer: "driving" },
];
const STRONG: readonly Finding[] = [...CODE, { finding: "spark", cylinder: 3, answer: "strong" }];
const STRESSED: readonly Finding[] = [
  ...STRONG,
  { finding: "spark.stress", cylinder: 3, answer: "holds" },
];
const SOUND: readonly Finding[] = [
  ...STRONG,
  { finding: "plug.look", cylinder: 3, answer: "tan" },
  { finding: "plug.damage", cylinder: 3, answer: "none" },
  { finding: "plug.gap", cylinder: 3, answer: "in-limit" },
  { finding: "boot.look", cylinder: 3, answer: "fine" },
  { finding: "connector.lock", cylinder: 3, answer: "clicks" },
  { finding: "connector.push", cylinder: 3, answer: "no-change" },
  { finding: "compression", cylinder: 3, answer: "in-limit" },
];
const SILENT: readonly Finding[] = [
  ...SOUND,
  { finding: "injector.tick", cylinder: 3, answer: "silent" },
];

describe.each(KINDS)("one code on an inline four, %s", (kind) => {
  const engine = profileById(`generic.i4.1342.${kind}`);
  if (!engine) throw new Error(kind);
  const share = (findings: readonly Finding[], ...faults: readonly string[]): number =>
    rank(engine, findings)
      .ranking.filter(({ fault, cylinders }) => faults.includes(fault) && cylinders.includes(3))
      .reduce((sum, { probability }) => sum + probability, 0);

  it("a strong spark takes most of the blame off what would leave the coil dead", () => {
    expect(share(STRONG, ...DEAD_COIL)).toBeLessThan(share(CODE, ...DEAD_COIL) / 2.5);
  });

  it("a spark that holds hot and at a wide gap takes nearly all of it", () => {
    const before = share(CODE, ...DEAD_COIL, "coil.weak");
    expect(share(STRESSED, ...DEAD_COIL, "coil.weak")).toBeLessThan(before / 6);
  });

  it("with all else sound an injector leads", () => {
    const [first] = rank(engine, SOUND).ranking as readonly [RankedFault];
    expect(first.fault).toMatch(/^injector\./);
    expect(first.cylinders).toEqual([3]);
  });

  it("an injector that is silent is looked at by its own plug before it is renewed", () => {
    const { checks, step } = next(engine, SILENT);
    expect(step.kind).toBe("check");
    expect(checks.slice(0, 3).map(({ check }) => check)).toContain("check.injector-resistance");
    expect(checks.map(({ check }) => check)).toContain("check.injector-lamp");
  });

  it("silent and off in resistance is the injector, silent with a dark lamp its wire", () => {
    const off: Finding = { finding: "injector.resistance", cylinder: 3, answer: "off" };
    const equal: Finding = { finding: "injector.resistance", cylinder: 3, answer: "equal" };
    const dark: Finding = { finding: "injector.lamp", cylinder: 3, answer: "dark" };
    expect(share([...SILENT, off], "injector.dead")).toBeGreaterThan(0.85);
    expect(
      share([...SILENT, equal, dark], "injector.wire-broken", "injector.driver-failed"),
    ).toBeGreaterThan(0.7);
  });
});
