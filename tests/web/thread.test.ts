// Does the thread get fast on what people ask of it?
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { FINDINGS } from "@half-order/core";
import { parseCase } from "@half-order/core/wire";
import { describe, expect, it } from "vitest";
import { SOON } from "../../packages/web/src/state/thinking.ts";
import { REHEARSAL, think } from "../../packages/web/src/thread.ts";

describe("the rehearsal of the thread", () => {
  it("ranks: nothing in it is refused", () => {
    const { problems, ranking } = think(REHEARSAL);
    expect(problems).toBeUndefined();
    expect(ranking?.ranking.length).toBeGreaterThan(0);
  });

  it("looks as the first look at a case does", () => {
    expect(REHEARSAL).toMatchObject(SOON);
  });

  it("answers first questions, each as its row allows", () => {
    expect(REHEARSAL.findings.length).toBeGreaterThan(1);
    for (const { finding, answer } of REHEARSAL.findings) {
      const row = FINDINGS.find(({ id }) => id === finding);
      expect(row?.first).toBeDefined();
      expect(Object.keys(row?.options ?? {})).toContain(answer);
    }
  });
});

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
