// Does one word for a tool stand for one thing, and do cases from before the words were split still open?
import { describe, expect, it } from "vitest";
import {
  type AtHand,
  CHECKS,
  type EngineProfile,
  holdsTool,
  next,
  PUT_BACK,
  type PutBackRow,
  profileById,
  REPAIRS,
  refusal,
  toolsIn,
} from "../../packages/core/src/index.ts";
import { FORMER_TOOLS, TOOLS, type Tool } from "../../packages/core/src/knowledge/tool.ts";
import { parseCase } from "../../packages/core/src/wire/index.ts";
import { CHECK } from "../../packages/web/src/text/en-check.ts";
import { holds } from "../helper/rule.ts";

const putBack: readonly PutBackRow[] = PUT_BACK;
const demanded = new Set<string>([
  ...[...CHECKS, ...REPAIRS].map(({ tool }) => tool),
  ...putBack.flatMap(({ lacking }) => lacking?.tool ?? []),
]);

holds({
  name: "a tool is asked for by something, and has its words on the page",
  why: "A tool that nothing needs is a question for nothing.",
  *check() {
    for (const tool of TOOLS) {
      yield { at: tool, breach: demanded.has(tool) ? undefined : "is needed nowhere" };
      yield { at: `${tool}/words`, breach: CHECK.tools[tool] ? undefined : "has no words" };
    }
    for (const word of Object.keys(CHECK.tools)) {
      const isTool = (TOOLS as readonly string[]).includes(word);
      yield { at: `page/${word}`, breach: isTool ? undefined : "is no tool" };
    }
  },
  exceptions: {},
});

describe("what one word stood for in earlier cases", () => {
  const before = {
    engine: "demo.tern",
    findings: [{ finding: "codes", answer: ["P0302", "P0305"] }],
    atHand: { tools: ["light", "hand tools", "gauge"], where: "driveway", skill: 3 },
  };

  it("still opens, word for word, and holds all that it stood for", () => {
    const reading = parseCase(before);
    if ("problems" in reading) throw new Error(JSON.stringify(reading.problems));
    const { atHand, engine, findings } = reading.case;
    expect(atHand).toEqual(before.atHand);
    for (const tool of FORMER_TOOLS.gauge) expect(holdsTool(atHand?.tools, tool)).toBe(true);
    expect(holdsTool(atHand?.tools, "torque wrench")).toBe(false);
    const named: AtHand = { ...atHand, tools: toolsIn(atHand?.tools ?? []) };
    expect(named.tools).not.toContain("gauge");
    const told = next(engine, findings, { atHand: atHand ?? {} });
    expect(told).toEqual(next(engine, findings, { atHand: named }));
  });

  it("is a tool no longer, and what it never was is refused", () => {
    expect(TOOLS).not.toContain("gauge");
    const tools = ["gauges"];
    const reading = parseCase({ ...before, atHand: { tools } });
    expect(reading).toHaveProperty("problems");
    const engine = profileById("demo.tern");
    if (!engine) throw new Error("demo.tern is gone");
    expect(() => next(engine, [], { atHand: { tools } as unknown as AtHand })).toThrow("gauges");
  });
});

describe("a coil rail known to be good", () => {
  const rail = profileById("demo.dunlin") as EngineProfile;
  const given = [{ finding: "codes", answer: ["P0302", "P0303"] }];

  it("is tried where one is said to be there, and else told as what would settle it", () => {
    const offered = (atHand: AtHand) => {
      const told = next(rail, given, { atHand });
      const isOffered = told.checks.some(({ check }) => check === "check.rail-swap");
      const why = told.withheld.find(({ id }) => id === "check.rail-swap")?.why;
      return { isOffered, why };
    };
    const hand: AtHand = { tools: ["light", "hand tools", "spare coils"], where: "driveway" };
    expect(offered(hand)).toEqual({ isOffered: true, why: undefined });
    const without: AtHand = { ...hand, tools: ["light", "hand tools"] };
    expect(offered(without)).toEqual({ isOffered: false, why: "spare" });
    expect(offered({})).toEqual({ isOffered: false, why: "spare" });
  });
});

describe("one gauge", () => {
  const refused = (id: string, tools: readonly Tool[]): boolean => {
    const row = [...CHECKS, ...REPAIRS].find((each) => each.id === id);
    if (!row) throw new Error(`${id} is gone`);
    return refusal({ tools }, { ...row, cautions: [] }) === "tool";
  };

  it("is not another: who measures gaps may own nothing to measure compression with", () => {
    expect(refused("check.plug-gap", ["feeler gauge"])).toBe(false);
    expect(refused("check.compression", ["feeler gauge"])).toBe(true);
    expect(refused("check.fuel-pressure", ["compression gauge"])).toBe(true);
  });

  it("a torque wrench is asked for where heads are bolted on, and not for plugs", () => {
    const hand: readonly Tool[] = ["hand tools"];
    expect(refused("repair.plug-set", hand)).toBe(false);
    expect(refused("repair.rail", hand)).toBe(false);
    expect(refused("repair.head-gasket", hand)).toBe(true);
    expect(refused("repair.head-gasket", [...hand, "torque wrench"])).toBe(false);
  });
});
