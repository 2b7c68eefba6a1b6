// Does every door of the library answer what is no engine, no finding and no number with problems and paths?
import { describe, expect, it } from "vitest";
import * as core from "../../../packages/core/src/index.ts";

const rail = core.profileById("generic.i4.1342.rail") as core.EngineProfile;
const last = { fittedOn: "2026-05-01", fittedAtKm: 120_000 };
/** What a program without types may hand over. */
const NOTHINGS: readonly unknown[] = [null, undefined, 5, "rail", [], true];

function problemsOf(call: () => unknown): readonly core.Problem[] {
  try {
    call();
  } catch (error) {
    if (error instanceof core.InputError) return error.problems;
    throw error;
  }
  return [];
}

type Profile = core.EngineProfile;
const OF_PROFILE: readonly (readonly [string, (profile: Profile) => unknown])[] = [
  ["rank", (p) => core.rank(p, [])],
  ["why", (p) => core.why(p, [], { fault: "coil.half-dead", place: "coil 2+3" })],
  ["sensitivity", (p) => core.sensitivity(p, [])],
  ["next", (p) => core.next(p, [])],
  ["mend", (p) => core.mend(p, [], { repair: "repair.rail" })],
  ["driveAdvice", (p) => core.driveAdvice(p, [])],
  ["proofPlan", (p) => core.proofPlan(p, "coil.half-dead", 0.5)],
  ["nextService", (p) => core.nextService(p, last)],
  ["putBackList", (p) => core.putBackList(p, [])],
  ["resolveEngine", (p) => core.resolveEngine(p)],
  ["candidateEngines", (p) => core.candidateEngines(p)],
];

describe("a door that takes an engine", () => {
  it.each(OF_PROFILE)("%s names the profile when it is none", (_, call) => {
    for (const nothing of NOTHINGS) {
      expect(problemsOf(() => call(nothing as Profile))).toMatchObject([
        { code: "kind-wrong", path: "/profile" },
      ]);
    }
  });

  it.each(OF_PROFILE)("%s names the list in it that is none", (_, call) => {
    const odd = { ...rail, banks: 3, connectors: [{ name: "rail" }], covers: null, figures: 2 };
    const paths = problemsOf(() => call(odd as unknown as Profile)).map(({ path }) => path);
    expect(paths).toEqual(["/banks", "/connectors/0/feeds", "/covers", "/figures"]);
  });
});

const OF_FINDINGS: readonly (readonly [string, (findings: readonly core.Finding[]) => unknown])[] =
  [
    ["rank", (f) => core.rank(rail, f)],
    ["next", (f) => core.next(rail, f)],
    ["mend", (f) => core.mend(rail, f, { repair: "repair.rail" })],
    ["driveAdvice", (f) => core.driveAdvice(rail, f)],
  ];

describe("a door that takes findings", () => {
  it.each(OF_FINDINGS)(
    "%s names the list when it is none, and each entry that is none",
    (_, call) => {
      for (const nothing of [null, 5, "lamp", {}]) {
        expect(problemsOf(() => call(nothing as never))).toMatchObject([{ path: "/findings" }]);
      }
      const odd = [{ finding: "lamp", answer: "off" }, null, { finding: 3 }];
      expect(problemsOf(() => call(odd as never)).map(({ path }) => path)).toEqual(["/1", "/2"]);
    },
  );

  it("refuses an answer of any wrong kind to any finding", () => {
    for (const { id } of core.FINDINGS) {
      for (const answer of [null, undefined, true, { a: "b" }, [null]]) {
        const findings = [{ finding: id, cylinder: 1, answer }] as never;
        expect(problemsOf(() => core.driveAdvice(rail, findings)).length, id).toBeGreaterThan(0);
      }
    }
  });
});

describe("repairs and what is at hand", () => {
  it("are named by their paths", () => {
    expect(problemsOf(() => core.rank(rail, [], { repairs: 3 as never }))).toMatchObject([
      { path: "/repairs" },
    ]);
    const atHand = {
      tools: ["spoon"],
      where: "moon",
      skill: 9,
      hourRate: -1,
      partsPrice: { small: Number.NaN },
      callPrice: Number.POSITIVE_INFINITY,
    } as never;
    const paths = [
      "/atHand/tools/0",
      "/atHand/where",
      "/atHand/skill",
      "/atHand/hourRate",
      "/atHand/partsPrice/small",
      "/atHand/callPrice",
    ];
    const told = problemsOf(() => core.next(rail, [], { atHand }));
    expect(told.map(({ path }) => path)).toEqual(paths);
    const mending = problemsOf(() => core.mend(rail, [], { repair: "repair.rail" }, { atHand }));
    expect(mending).toEqual(told);
    expect(problemsOf(() => core.next(rail, [], { atHand: 3 as never }))).toMatchObject([
      { path: "/atHand" },
    ]);
  });
});

describe("a number that cannot be", () => {
  it("is refused where a probability is said", () => {
    for (const value of [Number.NaN, 2, -0.1, Number.POSITIVE_INFINITY]) {
      expect(problemsOf(() => core.sayProbability(value))).toMatchObject([
        { path: "/probability" },
      ]);
    }
    expect(core.sayProbability(1 + 1e-12)).toBe("almost certain");
    expect(core.sayProbability(-1e-12)).toBe("less than 1 in 200");
  });

  it("is refused as the minutes of a cover", () => {
    const covers = [{ name: "manifold", cylinders: [1], minutes: 1e300 }];
    expect(problemsOf(() => core.rank({ ...rail, covers }, []))).toMatchObject([
      { code: "cover-minutes", path: "/covers/0/minutes" },
    ]);
  });
});

describe("the proof of a fault", () => {
  it("takes its id for its row, and names the nearest where there is none", () => {
    const row = core.FAULTS.find(({ id }) => id === "coil.half-dead") as core.FaultRow;
    expect(core.proofPlan(rail, "coil.half-dead", 0.6)).toEqual(core.proofPlan(rail, row, 0.6));
    const [problem] = problemsOf(() => core.proofPlan(rail, "coil.half-ded", 0.6));
    expect(problem).toMatchObject({ code: "fault-unknown", path: "/fault" });
    expect(problem?.hint).toContain('"coil.half-dead"');
  });
});

it("the last service is named when there is none", () => {
  expect(problemsOf(() => core.nextService(rail, null as never))).toMatchObject([
    { path: "/last" },
  ]);
});
