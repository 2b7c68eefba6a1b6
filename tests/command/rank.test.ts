// Does `half-order rank` say to people and to programs what the library found?
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { profileById, rank, why } from "@half-order/core";
import { afterAll, describe, expect, it } from "vitest";
import { commandLine } from "../helper/command-line.ts";

const folder = mkdtempSync(join(tmpdir(), "half-order-command-"));
afterAll(() => rmSync(folder, { recursive: true }));

function file(text: string): string {
  const path = join(folder, "case.json");
  writeFileSync(path, text);
  return path;
}

const findings = [
  { finding: "codes", answer: ["P0302", "P0305"] },
  { finding: "lamp", answer: "blinking" },
];
const document = { engine: "demo.tern", title: "Café run", findings };
const text = JSON.stringify(document);
const profile = profileById("demo.tern");
if (!profile) throw new Error("demo.tern is gone");
const ranking = rank(profile, findings);
const [first, second] = ranking.ranking;
if (!first || !second) throw new Error("the ranking is too short");

describe("half-order rank --json", () => {
  it("prints the ranking with the engine beside it", async () => {
    const { code, out, err } = await commandLine(["rank", file(text), "--json"]);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(JSON.parse(out)).toEqual(
      JSON.parse(JSON.stringify({ engine: { id: "demo.tern", name: profile.name }, ...ranking })),
    );
  });

  it("adds the ledger that was asked for", async () => {
    const { out } = await commandLine(["rank", file(text), "--json", "--why", "2"]);
    expect(JSON.parse(out).why).toEqual(JSON.parse(JSON.stringify(why(profile, findings, second))));
  });

  it.each([
    ["-", ["rank", "-", "--json"]],
    ["nothing", ["rank", "--json"]],
  ])("reads standard input when the file is %s", async (_, words) => {
    const { code, out } = await commandLine(words, text);
    expect(code).toBe(0);
    expect(JSON.parse(out).ranking[0]).toEqual(JSON.parse(JSON.stringify(first)));
  });
});

describe("half-order rank for people", () => {
  it("lists parts in order, each with figures, cylinders, ways to fail and first check", async () => {
    const { code, out } = await commandLine(["rank"], text);
    expect(code).toBe(0);
    expect(out).toContain("Café run: Tern 3.0");
    const heads = [...out.matchAll(/^(?:each )?about \d+ in \d+ +([\d.]+) % {2}\S/gm)];
    expect(heads).toHaveLength(8);
    const figures = heads.map(([, percent]) => Number(percent));
    expect(figures).toEqual(figures.toSorted((a, b) => b - a));
    expect(out).toMatch(/^about \d+ in \d+ +[\d.]+ % {2}Coil, cylinders 2 and 5$/m);
    expect(out).toMatch(/^ +1\. +[\d.]+ % {3}Coil of 2 and 5 dead\n/m);
    expect(out.replaceAll(/\s+/g, " ")).toMatch(/First(?: for each)?: [^.]+ \(\d+ min, [^)]+\)\./);
  });

  it("numbers faults as --json and --why count them", async () => {
    const { out } = await commandLine(["rank"], text);
    const numbered = [...out.matchAll(/^ +(\d+)\. +[<\d.]+ % {3}(\S.*)$/gm)];
    expect(numbered.length).toBeGreaterThanOrEqual(8);
    for (const [, number, name] of numbered) {
      expect(ranking.ranking[Number(number) - 1]?.name.startsWith(`${name}`)).toBe(true);
    }
  });

  it("says alike what is alike: three coils before any finding are one entry", async () => {
    const { out } = await commandLine(["rank"], '{ "engine": "demo.tern", "findings": [] }');
    const { ranking: open } = rank(profile, []);
    const [entry = ""] =
      out.match(/^each about .* Coil, cylinders 1 and 4 \/ 2 and 5 \/ 3 and 6\n.*/m) ?? [];
    const [, from, to] = /(\d+)-(\d+)\./.exec(entry) ?? [];
    const names = open.slice(Number(from) - 1, Number(to)).map(({ name }) => name);
    expect(names.toSorted()).toEqual(
      ["1 and 4", "2 and 5", "3 and 6"].map((at) => `Coil of ${at} dead`),
    );
    expect(entry).toContain("Coil of 1 and 4 / 2 and 5 / 3 and 6 dead");
  });

  it("says what misses, what it leaves open, what is dangerous, and what the figures are", async () => {
    const { out } = await commandLine(["rank"], text);
    expect(out).toMatch(/^ {2}cylinder [25] +[\d.>]+ %/m);
    expect(out).toMatch(/^something else, not in the catalogue +[<\d.]+ %/m);
    expect(out).toMatch(/^combinations not searched, at most +[<\d.]+ %/m);
    expect(out).toContain("Ignition voltage can kill.");
    expect(out).toContain("estimates");
    expect(out).toContain("service manual comes first.");
  });

  it.each([1, 3])("--top %i lists so many", async (top) => {
    const { out } = await commandLine(["rank", "--top", String(top)], text);
    expect(out.match(/^(each )?about .* % {2}/gm)).toHaveLength(top);
  });

  it("--why adds a column of dB that adds up as it is printed", async () => {
    const { out } = await commandLine(["rank", "--why", "1"], text);
    const column = out.slice(out.indexOf(`Why ${first.name}`));
    expect(column).toContain(`(${first.fault} at ${first.place})`);
    const figures = [...column.matchAll(/^ +([+-]\d+\.\d) dB/gm)].map(([, db]) => Number(db));
    expect(figures).toHaveLength(findings.length + 2);
    const sum = figures.slice(0, -1).reduce((total, db) => total + db, 0);
    expect(sum).toBeCloseTo(figures.at(-1) ?? 0, 9);
    expect(column).not.toContain("-0.0 dB");
  });

  it("--why names no cylinder for what all of them share", async () => {
    const asked = [
      { finding: "connector.push", cylinder: 2, answer: "no-change" },
      { finding: "spark", cylinder: 2, answer: "strong" },
    ];
    const written = JSON.stringify({ engine: "demo.tern", findings: asked });
    const { out } = await commandLine(["rank", "--why", "1"], written);
    expect(out).toContain("Connector pushed home and held: what changed? No change");
    expect(out).toMatch(/\? \(cylinder 2\) /);
  });

  it("--why tells questions, answers and grounds in people's words", async () => {
    const { out } = await commandLine(["rank", "--why", "1"], text);
    const column = out.slice(out.indexOf(`Why ${first.name}`));
    expect(column).toMatch(/dB {2}The engine warning lamp\? Blinking now +rough estimate$/m);
    expect(column).toMatch(/dB {2}Which codes .*\? P0302, P0305 +\S/m);
    expect(column).not.toMatch(/memory|confidence/);
  });

  it("warns of danger first of all, and of what checks bring before it names one", async () => {
    const { out } = await commandLine(["rank"], text);
    expect(findings).toContainEqual({ finding: "lamp", answer: "blinking" });
    expect(out).toMatch(/^CAUTION\. A blinking lamp /);
    expect(out.indexOf("Before you touch anything")).toBeGreaterThan(0);
    expect(out.indexOf("Ignition voltage can kill.")).toBeLessThan(out.indexOf("First: "));
  });

  it("says what the two kinds of chance are, and each first check once", async () => {
    const { out } = await commandLine(["rank", "--top", "3"], text);
    expect(out.replaceAll(/\s+/g, " ")).toMatch(
      /at each part the chance that it has failed in whatever way, below it the ways/,
    );
    const [coil = ""] = out.split("\n\n").filter((part) => /Coil, cylinders 2 and 5/.test(part));
    const checks = [...coil.replaceAll(/\s+/g, " ").matchAll(/First(?: for each)?: ([^(]+) \(/g)];
    expect(checks.length).toBeGreaterThan(0);
    expect(new Set(checks.map(([, name]) => name)).size).toBe(checks.length);
  });

  it("says of each first check when it cannot be made with what is at hand", async () => {
    const bare = JSON.stringify({ ...document, atHand: { tools: [], skill: 0 } });
    const { out } = await commandLine(["rank", "--top", "12"], bare);
    const said = [
      ...out.replaceAll(/\s+/g, " ").matchAll(/First[^:]*: [^(]+ \(\d+ min, ([^)]+)\)/g),
    ];
    expect(said.length).toBeGreaterThan(3);
    for (const [, needs = ""] of said) {
      const isDone = /^no tool(; needs more skill)?$/.test(needs);
      expect(isDone || /; not at hand$/.test(needs), needs).toBe(true);
    }
    expect(said.some(([, needs]) => needs?.endsWith("; not at hand"))).toBe(true);
    const all = await commandLine(["rank", "--top", "12"], text);
    expect(all.out).not.toContain("not at hand");
  });

  it("warns before the ranking when the findings disagree, and says which to look at again", async () => {
    const counts = { finding: "counts", answer: { "1": 500, "2": 0, "5": 0 } };
    const odd = { ...document, findings: [...findings, counts] };
    const conflict = rank(profile, odd.findings).fit;
    expect(conflict.conflictDb).toBeGreaterThan(1);
    const { out } = await commandLine(["rank"], JSON.stringify(odd));
    expect(out).toMatch(/^THE FINDINGS DISAGREE by \d+\.\d dB\. Look again at /m);
    expect(out.indexOf("DISAGREE")).toBeLessThan(out.indexOf("Likely parts"));
    expect(out).toContain(`Look again at ${conflict.suspect?.finding}`);
  });

  it("does not warn when they agree", async () => {
    expect(ranking.fit.conflictDb).toBeLessThanOrEqual(0);
    const { out } = await commandLine(["rank"], text);
    expect(out).not.toContain("DISAGREE");
  });

  it("says what else to put right", async () => {
    const worn = { finding: "plug.gap", cylinder: 2, answer: 1.8 };
    const more = [...findings, { finding: "spark", cylinder: 2, answer: "none" }, worn];
    const expected = rank(profile, more).alsoPutRight;
    expect(expected.length).toBeGreaterThan(0);
    const { out } = await commandLine(["rank"], JSON.stringify({ ...document, findings: more }));
    expect(out).toContain("Also put right");
    expect(out).toContain("(cylinder 2)");
  });

  it("names the firing orders that an engine may have", async () => {
    const engine = { cylinders: 4, ignition: "pack" };
    const { out } = await commandLine(["rank"], JSON.stringify({ engine, findings: [] }));
    expect(out).toContain("The firing order is not known; it may be");
    expect(out).toMatch(/^ {2}1-3-4-2 +\d+ % +first then: [A-Z]/m);
    expect(out).not.toContain("@");
    expect(out).toContain(", all cylinders\n");
  });
});

describe("half-order rank refuses", () => {
  const cases: readonly (readonly [string, readonly string[], string | undefined, string])[] = [
    ["broken JSON", ["rank"], '{"engine":\n}', "line 2, column 1"],
    ["an empty file", ["rank"], "", "The input is empty."],
    ["no file and no pipe", ["rank"], undefined, "Name a file, or pipe one in."],
    ["a missing file", ["rank", "/no/such.json"], undefined, "there is none of that name"],
    ["a folder", ["rank", folder], undefined, "it is a folder"],
    ["two files", ["rank", "a.json", "b.json"], undefined, '"b.json" is one name too many.'],
    ["--top 0", ["rank", "--top", "0"], text, "--top needs a whole number from 1 up"],
    ["--top -1", ["rank", "--top", "-1"], text, '--top needs a whole number from 1 up, not "-1".'],
    ["--top=1e999", ["rank", "--top=1e999"], text, "--top needs a whole number from 1 up"],
    ["--why beyond the list", ["rank", "--why", "9999"], text, "--why 9999: the list has"],
    ["an unknown option", ["rank", "--loud"], text, "Unknown option '--loud'. See"],
    ["--top without a number", ["rank", "--top"], text, "--top"],
  ];
  it.each(cases)("%s", async (_, words, piped, message) => {
    const { code, out, err } = await commandLine(words, piped);
    expect(code).toBe(2);
    expect(out).toBe("");
    expect(err).toContain(message);
    expect(err).not.toMatch(/\bat .*\.ts:\d+/);
  });

  it("a profile in place of a case, in one sentence", async () => {
    const { code, err } = await commandLine(["rank"], '{ "cylinders": 4, "ignition": "rail" }');
    expect(code).toBe(2);
    expect(err).toMatch(/^This is an engine profile, not a case: .*\n$/);
  });

  it("an unsound engine and unsound findings in one go", async () => {
    const bad = {
      engine: { cylinders: 6, ignition: "rail", firingOrder: [1, 2] },
      findings: [
        { finding: "lamp", answer: true },
        { finding: "lmap", answer: "on" },
      ],
    };
    const { code, err } = await commandLine(["rank"], JSON.stringify(bad));
    expect(code).toBe(2);
    expect(err.trimEnd().split("\n")).toEqual([
      expect.stringMatching(/^\/engine\/firingOrder: /),
      expect.stringMatching(/^\/findings\/0\/answer: true is no answer to "lamp"\. Write "off", /),
      expect.stringMatching(/^\/findings\/1\/finding: There is no finding "lmap"\. /),
    ]);
  });

  it("an unsound case and unsound numbers of one's own in one go", async () => {
    const own = file('{ "faults": { "coil.weka": { "shares": { "rail": 10 } } } }');
    const bad = { engine: "demo.term", findings: [{ finding: "lmap", answer: "on" }] };
    for (const words of [["rank"], ["next"], ["mend", "repair.rail"], ["sensitivity"]]) {
      const piped = [...words, ...(words.length > 1 ? ["-"] : []), "--knowledge", own];
      const { code, out, err } = await commandLine(piped, JSON.stringify(bad));
      expect({ code, out }).toEqual({ code: 2, out: "" });
      expect(err).toContain(`${own}#/faults/coil.weka: There is no fault "coil.weka".`);
      expect(err).toContain('/engine: No engine has the id "demo.term".');
      expect(err).toContain("/findings/0/finding: ");
    }
  });

  it("numbers that no case can hold, and text that would drive the terminal", async () => {
    const bad = `{ "engine": "demo.tern", "title": "\\u001b[31mred", "note": "a\\nb",
      "findings": [{ "finding": "plug.gap", "cylinder": 1, "answer": 1e999 },
        { "finding": "counts", "answer": { "1": 1e999 } }],
      "atHand": { "hourRate": 1e999 } }`;
    const { code, err } = await commandLine(["rank"], bad);
    expect(code).toBe(2);
    expect(err.trimEnd().split("\n").sort()).toEqual([
      expect.stringMatching(/^\/atHand\/hourRate: A number too large to be held was not expected/),
      expect.stringMatching(/^\/findings\/0\/answer: Infinity mm cannot be: readings lie between/),
      expect.stringMatching(/^\/findings\/1\/answer\/1: Infinity is not a count\./),
      expect.stringMatching(
        /^\/title: "\\u001b\[31mred" cannot be used here\. Write it on one line/,
      ),
    ]);
    expect(err).not.toContain("\u001b");
  });

  it("a cover that takes longer than any", async () => {
    const engine = {
      ...profile,
      covers: [{ name: "manifold", cylinders: [1], minutes: 1e300 }],
    };
    const { code, err } = await commandLine(["rank"], JSON.stringify({ engine, findings: [] }));
    expect(code).toBe(2);
    expect(err).toMatch(/^\/engine\/covers\/0\/minutes: 1e\+300 minutes .* 0 to 1440\.$/m);
  });

  it("an unsound case, a line for each problem", async () => {
    const bad = {
      engine: "demo.tern",
      findings: [
        { finding: "lmap", answer: "on" },
        { finding: "plug.look", answer: "tan" },
      ],
    };
    const { code, err } = await commandLine(["rank"], JSON.stringify(bad));
    expect(code).toBe(2);
    expect(err.trimEnd().split("\n")).toEqual([
      expect.stringMatching(/^\/findings\/0\/finding: There is no finding "lmap"\. .*"lamp"/),
      expect.stringMatching(/^\/findings\/1\/cylinder: "plug\.look" needs the cylinder\. Write /),
    ]);
  });
});
