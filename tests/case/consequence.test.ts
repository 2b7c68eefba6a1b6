// What a dead cylinder brings about must not take the blame, and a good spark must all but acquit a dead
// coil. What these cases expect is common practice of the trade; no source.
import { describe, expect, it } from "vitest";
import { type Finding, profileById, type Ranking, rank } from "../../packages/core/src/index.ts";

const KINDS = ["rail", "pack", "hybrid"] as const;

function ranked(kind: string, findings: readonly Finding[]): Ranking {
  const profile = profileById(`generic.i4.1342.${kind}`);
  if (!profile) throw new Error(kind);
  return rank(profile, findings);
}

function faultOf({ ranking }: Ranking, ...faults: readonly string[]): number {
  return ranking
    .filter(({ fault }) => faults.includes(fault))
    .reduce((sum, { probability }) => sum + probability, 0);
}

const pair: Finding = { finding: "codes", answer: ["P0301", "P0304"] };
const spark = (cylinder: number, answer: string): Finding => ({
  finding: "spark",
  cylinder,
  answer,
});
const LEAN = [
  "intake.hose-leak",
  "intake.runner-leak",
  "injector.seal-leaking",
  "air-meter.faulty",
];

describe.each(KINDS)("companions named on a %s", (kind) => {
  const before = faultOf(ranked(kind, [pair]), "coil.half-dead");

  // A coil that dies hot shows a strong spark on both outputs while it is cold: one witness, not two.
  it("a strong spark on both outputs acquits the dead coil, all but fully where it misses cold and warm", () => {
    const strong = [spark(1, "strong"), spark(4, "strong")];
    const warmth: Finding = { finding: "regime.warmth", answer: "always" };
    const one = faultOf(ranked(kind, [pair, spark(1, "strong")]), "coil.half-dead");
    const both = faultOf(ranked(kind, [pair, ...strong]), "coil.half-dead");
    const always = faultOf(ranked(kind, [pair, warmth, ...strong]), "coil.half-dead");
    expect(one).toBeLessThan(before / 3);
    expect(both).toBeLessThan(before / 5);
    expect(always).toBeLessThan(0.02);
  });

  it("no spark on both with the trigger there all but convicts it", () => {
    const found = [
      pair,
      spark(1, "none"),
      spark(4, "none"),
      { finding: "trigger", cylinder: 1, answer: "flashes" },
    ];
    const ranking = ranked(kind, found);
    expect(ranking.ranking[0]).toMatchObject({ fault: "coil.half-dead", cylinders: [1, 4] });
    expect(faultOf(ranking, "coil.half-dead")).toBeGreaterThan(0.6);
  });

  it("a lean mixture, a tired catalyst and petrol in the oil blame no leak beside it", () => {
    const ranking = ranked(kind, [
      { finding: "codes", answer: ["P0301", "P0304", "P0171", "P0420", "P0133"] },
      { finding: "trim.idle", answer: "lean" },
      { finding: "trim.speed", answer: "raised" },
      { finding: "smell", answer: ["petrol", "petrol-in-oil"] },
    ]);
    expect(ranking.ranking[0]).toMatchObject({ fault: "coil.half-dead", cylinders: [1, 4] });
    expect(faultOf(ranking, ...LEAN)).toBeLessThan(0.05);
    expect(faultOf(ranking, "exhaust.restricted", "oxygen-sensor.biased")).toBeLessThan(0.05);
  });
});

describe("one cylinder named", () => {
  const one: Finding = { finding: "codes", answer: ["P0303"] };

  it("an injector that the control unit switched off is no proof against the injector", () => {
    const before = faultOf(ranked("rail", [one]), "injector.dead", "injector.wire-broken");
    const cut: Finding = { finding: "injector.cut", cylinder: 3, answer: "yes" };
    const after = faultOf(ranked("rail", [one, cut]), "injector.dead", "injector.wire-broken");
    expect(after / before).toBeLessThan(1.2);
  });

  it("a silent injector still is a strong one, and less so than where it may not be cut", () => {
    const silent: Finding = { finding: "injector.tick", cylinder: 3, answer: "silent" };
    const before = faultOf(ranked("rail", [one]), "injector.dead");
    expect(faultOf(ranked("rail", [one, silent]), "injector.dead")).toBeGreaterThan(4 * before);
  });
});

describe("an engine that shakes at idle", () => {
  const shakes: Finding = { finding: "complaint.main", answer: "shakes-at-idle" };
  const leaks = (...more: readonly Finding[]): number => {
    const p = faultOf(ranked("rail", [shakes, ...more]), ...LEAN, "crankcase.vent-open");
    return p / (1 - p);
  };

  // Estimates of the trade put the pair of trims at a factor of 7 to 8 for one leak, and half of that
  // where a cylinder is dead from spark.
  it("with a lean trim at idle that is normal at speed is several times likelier to leak air", () => {
    const trims: readonly Finding[] = [
      { finding: "trim.idle", answer: 18 },
      { finding: "trim.speed", answer: 2 },
    ];
    const clean = leaks(...trims) / leaks();
    const dead = leaks(pair, ...trims) / leaks(pair);
    expect(clean).toBeGreaterThan(3);
    expect(dead).toBeGreaterThan(1.5);
    expect(dead).toBeLessThan(clean);
  });
});

describe("plugs renewed", () => {
  const work: Finding = { finding: "work", answer: ["plugs"] };
  const since = (answer: string): Finding => ({ finding: "work.distance", answer });

  it("blames what hands disturb less the longer ago it was", () => {
    const disturbed = (distance: string): number =>
      faultOf(
        ranked("rail", [{ finding: "codes", answer: ["P0303"] }, work, since(distance)]),
        "boot.no-contact",
        "boot.not-home",
        "plug.gap-wrong",
        "plug.loose",
        "connector.loose",
      );
    const told = ["under-50", "50-500", "500-3000", "over-3000"].map(disturbed);
    expect(told).toEqual([...told].sort((a, b) => b - a));
    expect((told[0] as number) / (told[3] as number)).toBeGreaterThan(1.5);
  });
});
