// Can every line of what a check may show be read by itself?
import { CHECKS, FINDINGS, type Finding, type FindingRow } from "@half-order/core";
import { describe, expect, it } from "vitest";
import { MADE_BY_CHECK } from "../../packages/core/src/knowledge/made-by-check.ts";
import { asAsked } from "../../packages/web/src/state/step.ts";
import { outcomeLines } from "../../packages/web/src/text/outcome.ts";
import { sayThen } from "../../packages/web/src/ui/then.ts";

const rowOf = (id: string): FindingRow | undefined => FINDINGS.find((row) => row.id === id);
const rows = FINDINGS as readonly FindingRow[];

/** Every answer of one option, and none of them where there may be several. */
function answersTo({ id, kind, options }: FindingRow): readonly Finding[] {
  const single = Object.keys(options).map((option) => (kind === "several" ? [option] : option));
  const others = kind === "presence" ? ["yes", "no"] : kind === "several" ? [[]] : [];
  return [...single, ...others].map((answer) => ({ finding: id, answer }));
}

describe("a line of an outcome", () => {
  it("never runs a question and its answer into one", () => {
    const asked = rows.filter(({ kind }) => kind !== "counts" && kind !== "codes");
    expect(asked.length).toBeGreaterThan(50);
    for (const given of asked.flatMap(answersTo)) {
      for (const { asked, answer } of outcomeLines([given], rowOf)) {
        expect(answer, given.finding).not.toMatch(/\? /);
        expect(answer, given.finding).toMatch(/^[^a-z]/);
        expect(asked ?? rowOf(given.finding)?.ask).toBe(rowOf(given.finding)?.ask);
      }
    }
  });

  it("has its question where yes, no or none would say nothing", () => {
    const ask = rowOf("intake-leak")?.ask;
    expect(outcomeLines([{ finding: "intake-leak", answer: [] }], rowOf)).toEqual([
      { asked: ask, answer: "None of these" },
    ]);
    const presence = rows.find(({ kind }) => kind === "presence");
    if (!presence) throw new Error("no such finding");
    const [line] = outcomeLines([{ finding: presence.id, answer: "no" }], rowOf);
    expect(line).toEqual({ asked: presence.ask, answer: "No" });
    const [hose] = outcomeLines([{ finding: "intake-leak", answer: ["hose"] }], rowOf);
    expect(hose).toEqual({ answer: "At a hose, the servo or the throttle shaft" });
  });

  it("has its question beside answers to others", () => {
    const both: readonly Finding[] = [
      { finding: "connector.push", answer: "stayed", cylinder: 2 },
      { finding: "connector.lock", answer: "clicks", cylinder: 2 },
    ];
    const check = CHECKS.find(({ id }) => id === "check.connector-home");
    const lines = outcomeLines(asAsked(both, check?.yields ?? [], [2]), rowOf);
    expect(lines.map(({ asked }) => asked)).toEqual([
      rowOf("connector.lock")?.ask,
      rowOf("connector.push")?.ask,
    ]);
  });

  it("stands in the order in which it is asked, one place after the other", () => {
    const at = (finding: string, cylinder?: number): Finding => ({
      finding,
      answer: "x",
      ...(cylinder === undefined ? {} : { cylinder }),
    });
    const sorted = [at("a", 5), at("a", 2), at("b", 5), at("b", 2), at("c")];
    expect(asAsked(sorted.toReversed(), ["a", "b", "c"], [5, 2])).toEqual(sorted);
  });

  it("names the cylinder where there are several, and stands alone for all that is left", () => {
    const both = [2, 3].map((cylinder) => ({ finding: "plug.look", answer: "tan", cylinder }));
    expect(outcomeLines(both, rowOf).map(({ answer }) => answer)).toEqual([
      expect.stringMatching(/^Cylinder 2: /),
      expect.stringMatching(/^Cylinder 3: /),
    ]);
    expect(outcomeLines(both.slice(0, 1), rowOf)[0]?.answer).not.toContain("Cylinder");
    expect(outcomeLines([], rowOf)).toEqual([{ answer: "Anything else" }]);
  });
});

describe("what comes after an outcome", () => {
  const leader = { name: "Coil of 2", probability: 0.5 };

  it("is the proof once the check has cured it, whoever would lead", () => {
    const cures = MADE_BY_CHECK.flatMap(({ toldBy, curedBy }) =>
      toldBy && curedBy ? [{ finding: toldBy, answer: curedBy }] : [],
    );
    expect(cures.length).toBeGreaterThan(1);
    for (const cure of cures) {
      expect(sayThen([cure], leader), cure.finding).toMatch(/drives that prove it/);
      expect(sayThen([{ ...cure, answer: "no" }, cure], undefined)).toMatch(/prove/);
    }
  });

  it("is the leader otherwise, and nothing while nobody leads", () => {
    const stayed = [{ finding: "connector.push", answer: "stayed" }];
    expect(sayThen(stayed, leader)).toMatch(/^then first: Coil of 2, /);
    expect(sayThen(stayed, undefined)).toBeUndefined();
  });
});
