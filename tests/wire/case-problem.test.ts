// Is everything that is wrong with a case told in one go, each thing once and in words that fit?
import { parseCase } from "@half-order/core/wire";
import { describe, expect, it } from "vitest";

function problemsOf(value: unknown): readonly (readonly [path: string, hint: string])[] {
  const reading = parseCase(value);
  return "problems" in reading ? reading.problems.map(({ path, hint }) => [path, hint]) : [];
}

const pathsOf = (value: unknown): readonly string[] => problemsOf(value).map(([path]) => path);

describe("an answer of a kind that no finding takes", () => {
  const engine = "demo.tern";

  it.each([
    ["lamp", true, 'Write "off", '],
    ["mist", null, 'Write "yes" or "no".'],
    ["smell", true, "Write a list of "],
    ["codes", null, 'Write ["P0302", '],
    ["counts", null, 'Write {"1": 0, '],
  ])("of %s, %j, is told in the words of that finding", (finding, answer, words) => {
    const [only, ...more] = problemsOf({ engine, findings: [{ finding, answer }] });
    expect(more).toEqual([]);
    expect(only?.[0]).toBe("/findings/0/answer");
    expect(only?.[1].startsWith(words)).toBe(true);
  });

  it("of an unknown finding is told without an example from another", () => {
    const told = problemsOf({ engine, findings: [{ finding: "lmap", answer: true }] });
    expect(told.map(([path]) => path)).toEqual(["/findings/0/answer", "/findings/0/finding"]);
    expect(told[0]?.[1]).not.toContain("steady");
  });
});

describe("a case with an engine that cannot be used", () => {
  const findings = [
    { finding: "lamp", answer: "green" },
    { finding: "plug.look", answer: "tan" },
    { finding: "plug.look", cylinder: 9, answer: "tan" },
    { finding: "counts", answer: { R1: 3 } },
  ];

  it.each([
    ["unknown", "demo.trn", "/engine"],
    ["unsound", { cylinders: 6, ignition: "rail", firingOrder: [1, 2] }, "/engine/firingOrder"],
    ["of a wrong shape", { cylinders: "six", ignition: "rail" }, "/engine/cylinders"],
  ])("(%s) still tells of findings what no engine could mend", (_, engine, path) => {
    expect(pathsOf({ engine, findings })).toEqual([
      path,
      "/findings/0/answer",
      "/findings/1/cylinder",
    ]);
  });

  it("tells more of them once the engine is sound", () => {
    expect(pathsOf({ engine: "demo.tern", findings })).toEqual([
      "/findings/0/answer",
      "/findings/1/cylinder",
      "/findings/2/cylinder",
      "/findings/3/answer/R1",
    ]);
  });
});

describe("what is no case", () => {
  it.each([[null], [7], ["demo.tern"], [[]], [{}], [{ engine: 7, findings: "none" }]])(
    "%j is told by its shape",
    (value) => {
      const paths = pathsOf(value);
      expect(paths.length).toBeGreaterThan(0);
      expect(new Set(paths).size).toBe(paths.length);
    },
  );
});
