// Does `half-order knowledge` show the tables, and does `rank --knowledge` use one's own numbers?
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import {
  CODE_FAMILIES,
  KNOWLEDGE,
  overlayKnowledge,
  profileById,
  provenance,
  rank,
} from "@half-order/core";
import { afterAll, describe, expect, it } from "vitest";
import { commandLine } from "../helper/command-line.ts";

const folder = mkdtempSync(join(tmpdir(), "half-order-knowledge-"));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, value: unknown): string {
  const path = join(folder, name);
  writeFileSync(path, typeof value === "string" ? value : JSON.stringify(value));
  return path;
}

const findings = [{ finding: "codes", answer: ["P0302", "P0305"] }];
const known = file("case.json", { engine: "demo.tern", findings });
const overlay = {
  title: "Harbour",
  faults: { "coil.half-dead": { shares: { rail: 1, pack: 1 }, firstCheck: "check.codes" } },
  checks: { "check.codes": { minutes: 77 } },
};
const ours = file("ours.json", overlay);
const asJson = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

describe("half-order knowledge", () => {
  it("lists every row, and how many numbers rest on what", async () => {
    const { code, out, err } = await commandLine(["knowledge"]);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    const { faults, somethingElse, findings: rows, checks } = KNOWLEDGE;
    for (const { id } of [...faults, somethingElse, ...rows.values(), ...checks]) {
      expect(out).toMatch(new RegExp(`^  ${id.replaceAll(".", "\\.")} `, "m"));
    }
    const { total, byBasis } = provenance(KNOWLEDGE);
    expect(out).toContain(`NUMBERS (${total})`);
    expect(out).toMatch(new RegExp(`^  memory +${byBasis.memory} +\\d+ %$`, "m"));
    expect(out).toMatch(/^ {2}coil\.half-dead +- +55 +93 +74 +- +memory, low$/m);
  });

  it("--json gives the tables whole", async () => {
    const { out } = await commandLine(["knowledge", "--json"]);
    const {
      faults,
      somethingElse,
      twoFaultsShare,
      findings: rows,
      checks,
      repairs,
      access,
      cautions,
      company,
    } = KNOWLEDGE;
    const { total, byBasis, byConfidence, byTable } = provenance(KNOWLEDGE);
    expect(JSON.parse(out)).toEqual(
      asJson({
        ...{ faults, somethingElse, twoFaultsShare, checks, repairs, access },
        ...{ cautions, company },
        findings: [...rows.values()],
        codes: CODE_FAMILIES,
        numbers: { total, byBasis, byConfidence, byTable },
      }),
    );
  });

  it("shows one's own numbers in the tables", async () => {
    const { out } = await commandLine(["knowledge", ours]);
    expect(out).toMatch(/^ {2}coil\.half-dead +- +1 +1 +1 +- +memory, low; in part changed$/m);
    expect(out).toMatch(/^ {2}check\.codes +77 /m);
  });
});

describe("half-order rank --knowledge", () => {
  const profile = profileById("demo.tern");
  if (!profile) throw new Error("demo.tern is gone");

  it("ranks with one's own numbers, and says whose they are", async () => {
    const knowledge = overlayKnowledge(KNOWLEDGE, overlay);
    const { code, out } = await commandLine([
      "rank",
      known,
      "--knowledge",
      ours,
      "--json",
      "--why",
      "1",
    ]);
    expect(code).toBe(0);
    const told = JSON.parse(out);
    expect(told.knowledge).toBe("Harbour");
    expect(told.ranking).toEqual(asJson(rank(profile, findings, { knowledge }).ranking));
    expect(told.ranking).not.toEqual(asJson(rank(profile, findings).ranking));
    // The ledger ends where the ranking stands: it was told with the same numbers.
    const chance = 1 / (1 + 10 ** (-told.why.posteriorDb / 10));
    expect(Math.abs(chance - told.ranking[0].probability)).toBeLessThan(1e-3);
  });

  it("says so to people too, with one's own minutes", async () => {
    const { out } = await commandLine(["rank", known, "--knowledge", ours, "--top", "30"]);
    expect(out).toContain("With the numbers of Harbour laid over the tables.");
    expect(out.replaceAll(/\s+/g, " ")).toContain("(77 min, code reader)");
    expect((await commandLine(["rank", known])).out).not.toContain("laid over");
  });

  it("takes the case from a pipe, or the numbers, but not both", async () => {
    const piped = await commandLine(
      ["rank", known, "--knowledge", "-", "--json"],
      JSON.stringify(overlay),
    );
    expect(JSON.parse(piped.out).knowledge).toBe("Harbour");
    const both = await commandLine(["rank", "--knowledge", "-"], JSON.stringify(overlay));
    expect(both.code).toBe(2);
    expect(both.err).toContain("cannot both come from standard input");
  });

  it.each([
    ["broken JSON", "{", "line 1, column 2"],
    ["a shape that is none", { fault: {} }, '#/fault: There is no field "fault" here.'],
    [
      "what does not fit",
      { faults: { "coil.x": {} } },
      '#/faults/coil.x: There is no fault "coil.x".',
    ],
  ])("refuses %s, and says in which file", async (_, value, message) => {
    const bad = file("bad.json", value);
    const { code, out, err } = await commandLine(["rank", known, "--knowledge", bad]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toContain(`${bad}#`);
    expect(err).toContain(message);
  });

  it("refuses a file that is not there", async () => {
    const { code, err } = await commandLine([
      "rank",
      known,
      "--knowledge",
      join(folder, "no.json"),
    ]);
    expect(code).toBe(2);
    expect(err).toContain("there is none of that name");
  });
});
