// Five cases that the pairing is about. What they expect is common practice of the trade; no source.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  CHECKS,
  type EngineProfile,
  type Finding,
  type IgnitionKind,
  type Ranking,
  rank,
} from "../../packages/core/src/index.ts";
import { parseCase } from "../../packages/core/src/wire/index.ts";

interface Case {
  readonly engine: EngineProfile;
  readonly findings: readonly Finding[];
}

function load(letter: string): Case {
  const parsed = parseCase(JSON.parse(readFileSync(`fixtures/case/${letter}.json`, "utf8")));
  if (!("case" in parsed)) throw new Error(JSON.stringify(parsed.problems));
  return parsed.case;
}

function ranked(letter: string): Ranking {
  const { engine, findings } = load(letter);
  return rank(engine, findings);
}

function partOf(ranking: Ranking, part: string, ...cylinders: number[]): number {
  const found = ranking.components.find(
    (c) => c.part === part && c.cylinders.join() === cylinders.join(),
  );
  return found?.probability ?? 0;
}

function faultOf(ranking: Ranking, fault: string, place?: string): number {
  return ranking.ranking
    .filter((r) => r.fault === fault && (place === undefined || r.place === place))
    .reduce((sum, r) => sum + r.probability, 0);
}

function withIgnition({ engine, findings }: Case, ignition: IgnitionKind): Ranking {
  return rank({ ...engine, ignition }, findings);
}

/** The likeliest coil of all. */
function bestCoil(ranking: Ranking): number {
  return Math.max(...ranking.components.filter((c) => c.part === "coil").map((c) => c.probability));
}

describe("case A, a cassette refitted, both pairs miss over bumps", () => {
  const a = ranked("a");

  it("is led by the shared connector, then the boots and springs that were disturbed", () => {
    expect(a.ranking[0]?.fault).toBe("connector.loose");
    expect(a.ranking[0]?.probability).toBeGreaterThan(0.5);
    expect(a.ranking[1]?.fault).toBe("boot.not-home");
  });

  it("begins with a check of minutes that needs no tool", () => {
    const check = CHECKS.find((row) => row.id === a.ranking[0]?.firstCheck);
    expect(check?.tool).toBe("none");
    expect(check?.minutes).toBeLessThanOrEqual(5);
  });
});

describe("case B, companions 2 and 5 on a V6 with a cassette", () => {
  const b = ranked("b");

  it("is led by the coil of that pair by a wide margin", () => {
    expect(b.ranking[0]).toMatchObject({ fault: "coil.half-dead", cylinders: [2, 5] });
    const others = b.components.filter((c) => c.part !== "coil").map((c) => c.probability);
    expect(partOf(b, "coil", 2, 5)).toBeGreaterThan(5 * Math.max(...others));
  });

  it("names the plug type as what must also be put right, and on what grounds", () => {
    const put = b.alsoPutRight.find(({ finding }) => finding === "plug.type");
    expect(put?.say).toMatch(/plug/i);
    expect(put?.grounds.basis).not.toBe("published");
  });

  it("keeps its leader when the firing order is not known, and says what depends on it", () => {
    const { findings } = load("b");
    const partly = rank({ cylinders: 6, ignition: "rail" }, findings);
    expect(partly.ranking[0]).toMatchObject({ fault: "coil.half-dead", cylinders: [2, 5] });
    expect(partly.orders?.length).toBeGreaterThan(1);
    expect(partly.orders?.reduce((sum, order) => sum + order.probability, 0)).toBeCloseTo(1, 9);
  });
});

describe("case C, the same with codes on 1 and 2, no companions", () => {
  it("sends the coils far back", () => {
    const b = bestCoil(ranked("b"));
    const c = bestCoil(ranked("c"));
    expect(c).toBeLessThan(0.15);
    expect(b / c).toBeGreaterThan(5);
  });
});

describe("case D, 2 and 3 of an inline four, companions and neighbours", () => {
  const { engine, findings } = load("d");
  const compressions = (answer: string): readonly Finding[] => [
    ...findings,
    { finding: "compression", cylinder: 2, answer },
    { finding: "compression", cylinder: 3, answer },
  ];

  it("keeps the coil and the gasket standing", () => {
    const d = rank(engine, findings);
    expect(partOf(d, "coil", 2, 3)).toBeGreaterThan(0.3);
    expect(faultOf(d, "gasket.between-cylinders", "neighbours 2+3")).toBeGreaterThan(0.01);
  });

  it("tells them apart by compression", () => {
    const low = rank(engine, compressions("low"));
    expect(low.ranking[0]?.fault).toBe("gasket.between-cylinders");
    expect(partOf(low, "coil", 2, 3)).toBeLessThan(0.1);
    const good = rank(engine, compressions("in-limit"));
    expect(faultOf(good, "gasket.between-cylinders")).toBeLessThan(0.002);
    expect(partOf(good, "coil", 2, 3)).toBeGreaterThan(0.3);
  });
});

describe("case E, one code only on a double coil", () => {
  it("keeps the coil in the list as a leak inside, at 4 to 6 in 100", () => {
    const e = ranked("e");
    const leak = faultOf(e, "coil.leg-leaks", "leg 3");
    expect(leak).toBeGreaterThan(0.04);
    expect(leak).toBeLessThan(0.06);
    expect(e.ranking[0]?.fault).toBe("plug.gap-worn");
  });
});

describe("the same codes on other ignition kinds", () => {
  it.each(["a", "b", "c", "e"])("case %s: a distributor engine never blames a coil pair", (l) => {
    const ranking = withIgnition(load(l), "distributor");
    for (const { part, cylinders } of ranking.components) {
      if (part === "coil") expect(cylinders.length).toBe(load(l).engine.cylinders);
    }
  });

  it.each(["pack", "hybrid"] as const)("case B: a %s blames the coil of the pair", (kind) => {
    const ranking = withIgnition(load("b"), kind);
    expect(ranking.ranking[0]).toMatchObject({ fault: "coil.half-dead", cylinders: [2, 5] });
  });

  it("a coil on each plug blames one coil for one code", () => {
    const ranking = withIgnition(load("e"), "coil-per-plug");
    expect(ranking.ranking[0]).toMatchObject({ fault: "coil.single-dead", cylinders: [3] });
    for (const { part, cylinders } of ranking.components) {
      if (part === "coil") expect(cylinders.length).toBe(1);
    }
  });
});

describe("every case", () => {
  it.each(["a", "b", "c", "d", "e"])("%s leaves less than a millionth unsearched", (letter) => {
    const ranking = ranked(letter);
    expect(ranking.unsearched).toBeLessThanOrEqual(1e-6);
    expect(ranking.instances).toBeGreaterThan(100);
  });
});
