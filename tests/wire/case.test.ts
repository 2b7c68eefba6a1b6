// Is a case read as its writer meant it, and told apart from one that cannot be ranked?
import type { EngineProfile, Problem } from "@half-order/core";
import { profileById } from "@half-order/core";
import { type Case, parseCase } from "@half-order/core/wire";
import { describe, expect, it } from "vitest";

const inlineFour = {
  cylinders: 4,
  firingOrder: [1, 3, 4, 2],
  ignition: "rail",
} as const satisfies EngineProfile;

function read(value: unknown): Case {
  const reading = parseCase(value);
  if ("problems" in reading) throw new Error(JSON.stringify(reading.problems, undefined, 1));
  return reading.case;
}

function problemsOf(value: unknown): readonly Problem[] {
  const reading = parseCase(value);
  return "problems" in reading ? reading.problems : [];
}

describe("a case that can be ranked", () => {
  it("may be as short as an engine id and no finding", () => {
    expect(read({ engine: "demo.tern", findings: [] })).toEqual({
      engine: profileById("demo.tern"),
      findings: [],
    });
  });

  it("may bring its own engine, a title, a note and every form of answer", () => {
    const document = {
      halfOrderCase: 1,
      title: "Shakes when cold",
      note: "since the wash",
      engine: inlineFour,
      findings: [
        { finding: "lamp", answer: "steady", when: "2026-05-01T09:30:00Z" },
        { finding: "codes", answer: ["P0302", "P0303"] },
        { finding: "codes", answer: [] },
        { finding: "plug.look", cylinder: 2, answer: "wet-petrol" },
        { finding: "plug.gap", cylinder: 3, answer: 1.6 },
        { finding: "counts", answer: { "1": 0, "2": 131 } },
      ],
    };
    const { halfOrderCase: _, ...rest } = document;
    expect(read(document)).toEqual(rest);
  });

  it("may leave the firing order out", () => {
    const engine = { cylinders: 4, ignition: "pack" };
    expect(read({ engine, findings: [] }).engine).toEqual(engine);
  });
});

describe("a case that cannot be ranked", () => {
  it("names the nearest engines to an unknown id", () => {
    const [problem, ...more] = problemsOf({ engine: "generic.v6.123456.rial", findings: [] });
    expect(more).toEqual([]);
    expect(problem).toMatchObject({ code: "engine-unknown", path: "/engine" });
    expect(problem?.hint).toContain("generic.v6.123456.rail");
  });

  it("says which version of the format is read", () => {
    const [problem] = problemsOf({ halfOrderCase: 2, engine: "demo.tern", findings: [] });
    expect(problem?.path).toBe("/halfOrderCase");
    expect(problem?.message).toBe("2 cannot be used here.");
    expect(problem?.hint).toMatch(/^Write 1, the only version .* newer program/);
  });

  it("points into the engine when that is not sound", () => {
    const engine = { ...inlineFour, firingOrder: [1, 3, 4, 3] };
    const paths = problemsOf({ engine, findings: [] }).map(({ path }) => path);
    expect(paths).toContain("/engine/firingOrder/3");
  });

  it("points into the engine when no known firing order fits", () => {
    const engine = { cylinders: 7, ignition: "coil-per-plug" };
    expect(problemsOf({ engine, findings: [] })).toMatchObject([
      { code: "no-order-fits", path: "/engine/firingOrder" },
    ]);
  });

  it("points at each finding that does not exist or cannot have that answer", () => {
    const findings = [
      { finding: "lamp", answer: "steady" },
      { finding: "lmap", answer: "steady" },
      { finding: "plug.look", cylinder: 9, answer: "tan" },
      { finding: "codes", answer: ["P0302", "misfire"] },
    ];
    const problems = problemsOf({ engine: inlineFour, findings });
    expect(problems.map(({ path }) => path)).toEqual([
      "/findings/1/finding",
      "/findings/2/cylinder",
      "/findings/3/answer/1",
    ]);
    expect(problems[0]?.hint).toContain('"lamp"');
  });

  it("tells all faults of shape at once", () => {
    const paths = problemsOf({
      engine: { ...inlineFour, ignition: "rial", plugs: 4 },
      findings: [{ finding: "lamp" }, { answer: 3 }],
      tilte: "x",
    }).map(({ path }) => path);
    expect(paths.sort()).toEqual([
      "/engine/ignition",
      "/engine/plugs",
      "/findings/0/answer",
      "/findings/1/finding",
      "/tilte",
    ]);
  });

  it.each([[undefined], [null], ["demo.tern"], [[]], [42], [{}]])("refuses %j", (value) => {
    const problems = problemsOf(value);
    expect(problems.length).toBeGreaterThan(0);
    for (const { message, hint } of problems) {
      expect(message).toMatch(/\.$/);
      expect(hint).toMatch(/^Write .*\.$/);
    }
  });

  it("is not fooled by names that every object has", () => {
    const value = JSON.parse('{"engine":"demo.tern","findings":[],"__proto__":{},"toString":1}');
    const paths = problemsOf(value).map(({ path }) => path);
    expect(paths.sort()).toEqual(["/__proto__", "/toString"]);
  });
});
