// Is the page of tables in the documents what the tables say today?
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { knowledgePage } from "../../packages/core/src/explain/knowledge-page.ts";
import { KNOWLEDGE } from "../../packages/core/src/index.ts";

const page = knowledgePage(KNOWLEDGE);

describe("docs/knowledge.md", () => {
  it("is what the tables say; if not: npm run build && npm run tables", () => {
    const file = join(import.meta.dirname, "../../docs/knowledge.md");
    expect(readFileSync(file, "utf8").replaceAll("\r\n", "\n") === page).toBe(true);
  });

  it("holds every fault, finding, check, repair and access once", () => {
    const { faults, somethingElse, findings, checks, repairs, access } = KNOWLEDGE;
    const rows = [...faults, somethingElse, ...findings.values(), ...checks, ...repairs, ...access];
    const off = rows.filter(({ id }) => page.split(`<br>\`${id}\` |`).length !== 2);
    expect(off.map(({ id }) => id)).toEqual([]);
  });

  it("has as many cells in each row as in the head of its table", () => {
    const tables = page
      .trim()
      .split("\n\n")
      .filter((block) => block.startsWith("|"));
    expect(tables.length).toBeGreaterThan(5);
    const ragged = tables.filter(
      (table) => new Set(table.split("\n").map((line) => line.split(" | ").length)).size > 1,
    );
    expect(ragged).toEqual([]);
  });
});
