// Is the ranking there when somebody asks for it, and is it the one that was asked for?
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Finding, FindingRow } from "@half-order/core";
import * as core from "@half-order/core";
import { parseCase } from "@half-order/core/wire";
import { describe, expect, it, vi } from "vitest";
import { firstQuestions } from "../../packages/web/src/state/asked.ts";
import { rankingKey, SOON } from "../../packages/web/src/state/look.ts";
import type { Question, Thought } from "../../packages/web/src/state/thinker.ts";
import { answer, goOn, think } from "../../packages/web/src/thread.ts";
import { nextQuestions } from "../../packages/web/src/thread-ahead.ts";

const engine: Question["profile"] = { cylinders: 4, ignition: "rail", firingOrder: [1, 3, 4, 2] };
const begun: Question = { profile: engine, findings: [], repairs: [], ...SOON };

describe("what is thought ahead", () => {
  const first = firstQuestions(engine);

  it.each(first.map(({ id }, step) => [id, step] as const))("can be answered: %s", (id, step) => {
    const findings = first.slice(0, step).map((row) => someAnswer(row));
    const next = nextQuestions({ ...begun, findings });
    expect(next.length).toBeGreaterThan(1);
    for (const question of next) {
      expect(question.findings.slice(0, -1)).toEqual(findings);
      expect(question.findings.at(-1)?.finding).toBe(id);
      expect(think(question).problems).toBeUndefined();
    }
  });

  it("goes on after a question that was left out, and ends after the last", () => {
    const [, second, third, ...rest] = first;
    const findings = [someAnswer(second as FindingRow)];
    expect(nextQuestions({ ...begun, findings })[0]?.findings.at(-1)?.finding).toBe(third?.id);
    const last = someAnswer(rest.at(-1) as FindingRow);
    expect(nextQuestions({ ...begun, findings: [last] })).toEqual([]);
  });

  it("is told with what it is asked for, and answered without being worked out again", async () => {
    vi.useFakeTimers();
    const told: Thought[] = [];
    vi.stubGlobal("postMessage", (thought: Thought) => told.push(thought));
    await answer(begun);
    await vi.runAllTimersAsync();
    expect(told.map(({ ahead }) => ahead)).toEqual(nextQuestions(begun).map(rankingKey));
    const counted = vi.spyOn(core, "rank");
    const [next] = nextQuestions(begun);
    const findings = (next as Question).findings.map((finding) => ({
      ...finding,
      when: "2026-01-02T03:04:05Z",
    }));
    expect(rankingKey({ ...begun, findings })).toBe(told[0]?.ahead);
    const thought = await answer({ ...begun, findings });
    expect(counted).not.toHaveBeenCalled();
    await answer({ ...begun, findings: findings.slice(0, -1), tolerance: 0.03 });
    expect(counted).toHaveBeenCalledOnce();
    vi.useRealTimers();
    expect(thought.ranking).toEqual(core.rank(engine, findings, { ...SOON, hypotheses: 0 }));
    expect(told[0]?.ranking).toEqual(thought.ranking);
    counted.mockRestore();
  });

  it("goes on from what the page has already", async () => {
    vi.useFakeTimers();
    const told: Thought[] = [];
    vi.stubGlobal("postMessage", (thought: Thought) => told.push(thought));
    const known = nextQuestions(begun)[0] as Question;
    goOn(known);
    await vi.runAllTimersAsync();
    vi.useRealTimers();
    expect(told.map(({ ahead }) => ahead)).toEqual(nextQuestions(known).map(rankingKey));
  });

  it("is dropped when something else is asked", async () => {
    vi.useFakeTimers();
    await answer(begun);
    const findings = [{ finding: "lamp", answer: "steady" }];
    await answer({ ...begun, findings });
    await vi.runAllTimersAsync();
    vi.useRealTimers();
    const thought = await answer({ ...begun, findings: [] });
    expect(thought.ranking).toEqual(core.rank(engine, [], { ...SOON, hypotheses: 0 }));
  });
});

/** An answer that a first question takes: its first option, by itself where it takes several; no code. */
function someAnswer({ id, kind, options }: FindingRow): Finding {
  const [option = ""] = Object.keys(options);
  const answers = { several: [option], codes: [] };
  return { finding: id, answer: kind === "several" || kind === "codes" ? answers[kind] : option };
}

describe("the first look at a case", () => {
  const folder = join(import.meta.dirname, "../../fixtures/case");
  const files = readdirSync(folder).filter((name) => name.endsWith(".json"));

  it.each(files)("shows what the full one shows: %s", (name) => {
    const reading = parseCase(JSON.parse(readFileSync(join(folder, name), "utf8")));
    if ("problems" in reading) throw new Error(JSON.stringify(reading.problems));
    const { engine: profile, findings, repairs = [] } = reading.case;
    const look = (how: typeof SOON): ReadonlyMap<string, number> => {
      const told = think({ profile, findings, repairs, ...how }).ranking?.ranking ?? [];
      return new Map(told.map((row) => [`${row.fault}@${row.place}`, row.probability]));
    };
    const [soon, full] = [look(SOON), look({ tolerance: 1e-6 })];
    expect([...soon.keys()][0]).toBe([...full.keys()][0]);
    // Half of a per cent, the finest that is printed of what matters.
    for (const [key, probability] of full) {
      expect(Math.abs((soon.get(key) ?? 0) - probability), key).toBeLessThan(0.005);
    }
  });
});
