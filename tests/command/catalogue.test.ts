// Do the lists tell enough to write a case by hand, and do the engine commands tell what follows from one?
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { allProfiles, CHECKS, FAULTS, FINDINGS, type Finding, REPAIRS } from "@half-order/core";
import { parseCase } from "@half-order/core/wire";
import { afterAll, describe, expect, it } from "vitest";
import { version } from "../../packages/server/src/config.ts";
import { commandLine } from "../helper/command-line.ts";

const folder = mkdtempSync(join(tmpdir(), "half-order-engine-"));
afterAll(() => rmSync(folder, { recursive: true }));

const asJson = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

describe("the lists", () => {
  it.each([
    ["faults", FAULTS],
    ["findings", FINDINGS],
    ["checks", CHECKS],
    ["repairs", REPAIRS],
    ["engines", allProfiles()],
  ])("half-order %s names each row, and --json gives them whole", async (word, rows) => {
    const people = await commandLine([word]);
    expect(people.code).toBe(0);
    for (const { id } of rows) expect(people.out).toContain(`  ${id}`);
    const programs = await commandLine([word, "--json"]);
    expect(JSON.parse(programs.out)).toEqual(asJson(rows));
  });

  it("half-order findings shows every option", async () => {
    const { out } = await commandLine(["findings"]);
    for (const { kind, options } of FINDINGS) {
      if (kind === "presence" || kind === "codes") continue;
      for (const option of Object.keys(options))
        expect(out).toMatch(new RegExp(`^ +${option}\\b`, "m"));
    }
  });

  it("half-order findings says which answers and questions are not for every ignition", async () => {
    const { out } = await commandLine(["findings", "work"]);
    expect(out).toContain("New or disturbed cables (with ignition distributor, pack, hybrid only)");
    expect(out).toMatch(/^ +plugs +New spark plugs$/m);
    const towers = await commandLine(["findings", "swap.towers"]);
    expect(towers.out.replace(/\s+/g, " ")).toContain("(with ignition pack only)");
    const programs = await commandLine(["findings", "work", "--json"]);
    expect(JSON.parse(programs.out)[0].options.leads.suits).toEqual([
      "distributor",
      "pack",
      "hybrid",
    ]);
  });

  it("half-order findings shows examples that a case takes as they are", async () => {
    const { out } = await commandLine(["findings"]);
    const examples = out
      .split("\n")
      .filter((line) => line.trim().startsWith("{"))
      .map((line) => JSON.parse(line) as Finding);
    expect(examples).toHaveLength(FINDINGS.length);
    for (const example of examples) {
      const [ignition = "pack"] = FINDINGS.find((row) => row.id === example.finding)?.suits ?? [];
      const engine = { cylinders: 6, firingOrder: [1, 5, 3, 6, 2, 4], ignition };
      expect(parseCase({ engine, findings: [example] })).toHaveProperty("case");
    }
  });

  it("show one row by its id", async () => {
    const { code, out } = await commandLine(["findings", "lamp"]);
    expect(code).toBe(0);
    expect(out).toMatch(/^ {2}lamp: /m);
    expect(out.match(/^ {2}\S+: /gm)).toHaveLength(1);
    const programs = await commandLine(["checks", "check.spark-both", "--json"]);
    expect(JSON.parse(programs.out)).toEqual(
      asJson(CHECKS.filter(({ id }) => id === "check.spark-both")),
    );
  });

  it("show all rows that a word names, in their ids or their words", async () => {
    const { out } = await commandLine(["faults", "CABLE"]);
    const named = FAULTS.filter(({ name, part }) => /cable/i.test(`${name} ${part.name}`));
    expect(named.length).toBeGreaterThan(1);
    for (const { id } of named) expect(out).toContain(`  ${id} `);
    expect(out).not.toContain("injector.dead");
  });

  it("show repairs by their words and by the fault that they mend", async () => {
    const { out } = await commandLine(["repairs", "well.water"]);
    const mending = REPAIRS.filter(({ mends }) =>
      mends.some(({ fault }) => fault === "well.water"),
    );
    expect(mending.length).toBeGreaterThan(0);
    for (const { id } of mending) expect(out).toContain(`  ${id} `);
    const one = await commandLine(["repairs", "repair.rail", "--json"]);
    expect(JSON.parse(one.out)).toEqual(asJson(REPAIRS.filter(({ id }) => id === "repair.rail")));
  });

  it("name the nearest ids where a word names nothing, and take one word", async () => {
    const none = await commandLine(["findings", "lampp"]);
    expect(none.code).toBe(2);
    expect(none.err).toMatch(/goes by "lampp"; the nearest ids are lamp, /);
    const two = await commandLine(["faults", "coil", "dead"]);
    expect(two.code).toBe(2);
    expect(two.err).toContain('"dead" is one name too many.');
  });
});

describe("half-order engine", () => {
  it("tells angles, companions, coils and connectors", async () => {
    const { code, out } = await commandLine(["engine", "generic.i4.1342.hybrid"]);
    expect(code).toBe(0);
    expect(out).toMatch(/^ {2}companions +1-4, 3-2$/m);
    expect(out).toMatch(/^ {2}coils +1-4, 3-2$/m);
    expect(out).toMatch(/^ {2}connectors +.*1\+4 \(1, 4\), .*3\+2 \(3, 2\)$/m);
    expect(out).toMatch(/^ {2}pairing mismatch +0°$/m);
    expect(out).toMatch(/^ {2}4 +360° +1 +1 +cable$/m);
    expect(out).toMatch(/^ {2}1 +0° +4 +1 +coil on plug$/m);
  });

  it("says where no two cylinders can share a coil", async () => {
    const { out } = await commandLine(["engine", "generic.i3.132.coil-per-plug"]);
    expect(out).toMatch(/^ {2}companions +none$/m);
    expect(out).toMatch(/^ {2}pairing mismatch +[1-9]\d*°$/m);
  });

  it("reads a profile from a file or a pipe, for programs too", async () => {
    const profile = JSON.stringify({
      cylinders: 3,
      firingOrder: [1, 2, 3],
      ignition: "distributor",
    });
    const path = join(folder, "three.json");
    writeFileSync(path, profile);
    const fromFile = await commandLine(["engine", path, "--json"]);
    const fromPipe = await commandLine(["engine", "--json"], profile);
    expect(JSON.parse(fromFile.out)).toMatchObject({ firingOrder: [1, 2, 3], groups: [[1, 2, 3]] });
    expect(fromPipe.out).toBe(fromFile.out);
  });

  it("complains about an unsound profile by paths", async () => {
    const profile = { cylinders: 4, firingOrder: [1, 3, 4, 4], ignition: "rail" };
    const { code, out, err } = await commandLine(["engine", "-"], JSON.stringify(profile));
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(/^\/firingOrder\/3: Cylinder 4 stands .* second time\. /);
  });

  it("complains about fields that are none", async () => {
    const { code, err } = await commandLine(["engine"], '{"cylinder":4,"ignition":"rail"}');
    expect(code).toBe(2);
    expect(err).toContain('/cylinder: There is no field "cylinder" here. Write "cylinders"');
  });

  it("says in one sentence that a case is no profile", async () => {
    const { code, err } = await commandLine(
      ["engine"],
      '{ "engine": "demo.tern", "findings": [] }',
    );
    expect(code).toBe(2);
    expect(err).toMatch(/^This is a case, not an engine profile: .*\n$/);
  });

  it("names the nearest ids", async () => {
    const { code, err } = await commandLine(["engine", "demo.term"]);
    expect(code).toBe(2);
    expect(err).toContain("demo.tern");
  });
});

describe("half-order itself", () => {
  it("--version", async () => {
    expect(await commandLine(["--version"])).toEqual({ code: 0, out: `${version}\n`, err: "" });
  });

  it.each([[["--help"]], [["rank", "--help"]], [["help"]]])("%j", async (words) => {
    const { code, out } = await commandLine(words);
    expect(code).toBe(0);
    for (const word of ["rank", "engine", "engines", "faults", "findings", "checks"]) {
      expect(out).toContain(word);
    }
    const example = out.slice(out.indexOf("  {"), out.lastIndexOf("}") + 1);
    expect(parseCase(JSON.parse(example))).toHaveProperty("case");
  });

  it.each([
    [[], "A subcommand is missing. See half-order --help."],
    [["rnak"], 'There is no subcommand "rnak". See half-order --help.'],
  ])("refuses %j", async (words, message) => {
    expect(await commandLine(words)).toEqual({ code: 2, out: "", err: `${message}\n` });
  });

  it("owns up to a failure of its own with exit code 1", async () => {
    const { runCommand } = await import("../../packages/server/src/command/dispatch.ts");
    let err = "";
    const code = await runCommand(["engines"], {
      stdin: { async *[Symbol.asyncIterator]() {} },
      stdout: {
        write: () => {
          throw new Error("disk on fire");
        },
      },
      stderr: { write: (text) => (err += text) },
    });
    expect(code).toBe(1);
    expect(err).toContain("half-order broke: Error: disk on fire");
  });
});
