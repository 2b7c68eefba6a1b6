// Is what the documents say true? Their code runs, their cases rank, their links and names exist.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { afterEach, describe, expect, it, vi } from "vitest";
import * as core from "../packages/core/src/index.ts";
import * as wire from "../packages/core/src/wire/index.ts";

const root = join(import.meta.dirname, "..");
const read = (file: string): string => readFileSync(join(root, file), "utf8");

const readme = read("README.md");
const documents = [
  "README.md",
  "DEVELOPERS.md",
  ...readdirSync(join(root, "docs"), { recursive: true, encoding: "utf8" })
    .filter((file) => file.endsWith(".md"))
    .map((file) => `docs/${file.split("\\").join("/")}`),
].map((file) => ({ file, text: read(file) }));

/** The fenced blocks of a language. */
function blocks(text: string, language: string): readonly string[] {
  return [...text.matchAll(/^```(\w*)\n([\s\S]*?)^```$/gm)]
    .filter(([, found]) => found === language)
    .map(([, , code = ""]) => code);
}

function isCase(value: unknown): boolean {
  return typeof value === "object" && value !== null && "findings" in value;
}

afterEach(() => {
  vi.restoreAllMocks();
});

describe("the TypeScript in the README", () => {
  const DOORS = new Map<string, object>([
    ["@half-order/core", core],
    ["@half-order/core/wire", wire],
  ]);

  /** What a block logs, line by line. */
  async function logged(code: string): Promise<readonly string[]> {
    const lines: string[] = [];
    vi.spyOn(console, "log").mockImplementation((...words) => void lines.push(words.join(" ")));
    await run(code);
    return lines;
  }

  it("runs and names the fault that it should", async () => {
    const [code, , ...more] = blocks(readme, "ts");
    expect(more).toEqual([]);
    const lines = await logged(code ?? "");
    expect(lines[0]).toContain("Coil of 2 and 5 dead");
    expect(lines[1]).toMatch(/^codes \d/);
  });

  it("runs what comes after the ranking", async () => {
    const [, code] = blocks(readme, "ts");
    const [drive, step, mending, result, due, ...more] = await logged(code ?? "");
    expect(drive).toMatch(/^[A-Z].*\. lamp$/);
    expect(step).toMatch(/^(?:check|repair|call) \S/);
    expect(mending).toMatch(/^[1-9]\d* steps to put it back, [1-9]\d* clean drives/);
    expect(result).toBe("better");
    // 60,000 km at 18,000 a year are 1,217 whole days, sooner than 48 months.
    expect(due).toBe("2029-08-30");
    expect(more).toEqual([]);
  });

  it("is at most twelve lines long up to the ranking", () => {
    const lines = (blocks(readme, "ts")[0] ?? "").split("\n").filter((line) => line.trim() !== "");
    expect(lines.length).toBeLessThanOrEqual(12);
  });

  /** Runs a block with the doors of core in the place of its imports. */
  async function run(code: string): Promise<void> {
    const body = code.replace(
      /^import (\{[^}]*\}) from "([^"]+)";$/gm,
      (_, names: string, door: string) => `const ${names} = doors.get(${JSON.stringify(door)});`,
    );
    const AsyncFunction = run.constructor as new (
      ...text: string[]
    ) => (doors: ReadonlyMap<string, object>) => Promise<void>;
    await new AsyncFunction("doors", body)(DOORS);
  }
});

describe("the JSON in the README", () => {
  const values = blocks(readme, "json").map((block) => JSON.parse(block) as unknown);

  it("holds a case that ranks", () => {
    const cases = values.filter(isCase);
    expect(cases.length).toBe(1);
    const reading = wire.parseCase(cases[0]);
    if ("problems" in reading) throw new Error(JSON.stringify(reading.problems));
    const { ranking } = core.rank(reading.case.engine, reading.case.findings);
    expect(ranking[0]).toMatchObject({ fault: "coil.half-dead", place: "coil 2+5" });
  });

  it("holds a profile that is sound", () => {
    const profiles = values.filter((value) => !isCase(value));
    expect(profiles.length).toBe(1);
    const reading = wire.readShape(wire.profileSchema, profiles[0]);
    if ("problems" in reading) throw new Error(JSON.stringify(reading.problems));
    expect(core.checkProfile(reading.value)).toEqual([]);
    expect(core.describeEngine(core.resolveEngine(reading.value)).groups).toHaveLength(3);
  });

  it("shows every kind of finding in a form that is accepted", () => {
    const rows = [...readme.matchAll(/^\| .* \| `(\{ "finding".*\})` +\|$/gm)];
    const findings = rows.map(([, json = ""]) => JSON.parse(json) as core.Finding);
    const kinds = findings.map(
      ({ finding }) => core.FINDINGS.find(({ id }) => id === finding)?.kind,
    );
    expect(new Set(kinds)).toEqual(new Set(["choice", "presence", "several", "codes", "counts"]));
    const reading = wire.parseCase({ engine: "demo.tern", findings });
    expect("problems" in reading ? reading.problems : []).toEqual([]);
  });

  it("lists every finding that takes a number, with its unit", () => {
    const measured = core.FINDINGS.filter(({ reading }) => reading);
    const about = readme.match(/Numbers are taken for[\s\S]*?;/)?.[0] ?? "";
    const missing = measured.filter(
      ({ id, reading }) => !about.includes(`\`${id}\``) || !about.includes(`${reading?.unit}`),
    );
    expect(missing.map(({ id }) => id)).toEqual([]);
  });

  it("tells every field of a ranking", () => {
    const fields = Object.keys(core.rank({ cylinders: 6, ignition: "rail" }, []));
    const missing = fields.filter((field) => !readme.includes(`\`${field}\``));
    expect(fields).toContain("orders");
    expect(missing).toEqual([]);
  });
});

describe("the commands in the README", () => {
  it("are subcommands that exist", () => {
    const dispatch = read("packages/server/src/command/dispatch.ts");
    const named = [...readme.matchAll(/npx half-order (\w+)/g)].map(([, name = ""]) => name);
    expect(named.length).toBeGreaterThan(5);
    expect(named.filter((name) => !dispatch.includes(`["${name}"`))).toEqual([]);
  });

  it("ask for routes that exist", () => {
    const source = [
      "app.ts",
      ...["catalogue", "health", "next", "rank"].map((name) => `route/${name}.ts`),
    ]
      .map((file) => read(`packages/server/src/${file}`))
      .join("\n");
    const routes = [...source.matchAll(/app\.(?:get|post)\(\s*"([^"]+)"/g)].map(
      ([, route = ""]) => new RegExp(`^${route.replace(/:\w+/g, "[^/]+")}$`),
    );
    const asked = [...readme.matchAll(/http:\/\/127\.0\.0\.1:7205(\/\S+)/g)].map(
      ([, path = ""]) => path,
    );
    expect(asked.filter((path) => !routes.some((route) => route.test(path)))).toEqual([]);
    const untold = routes.filter((route) => !asked.some((path) => route.test(path)));
    expect(untold).toEqual([]);
  });

  it("name engines that exist", () => {
    const named = [...readme.matchAll(/demo\.\w+/g)].map(([id]) => id);
    expect(named.filter((id) => !core.profileById(id))).toEqual([]);
  });
});

describe.each(documents)("$file", ({ file, text }) => {
  it("links to files and headings that are there", () => {
    const links = [...text.matchAll(/\]\(([^)\s]+)\)/g)].map(([, link = ""]) => link);
    const lost = links.filter((link) => {
      if (/^[a-z]+:/.test(link)) return false;
      const [path = "", heading] = link.split("#");
      const target = path === "" ? file : join(dirname(file), path);
      if (!existsSync(join(root, target))) return true;
      return heading !== undefined && !headings(read(target)).includes(heading);
    });
    expect(lost).toEqual([]);
  });

  it("names scripts and files that are there", () => {
    const { scripts } = JSON.parse(read("package.json")) as { scripts: Record<string, string> };
    const named = [...text.matchAll(/\bnpm run ([\w:-]+)/g)].map(([, name = ""]) => name);
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
    const paths = [...text.matchAll(/(?<![\w/])((?:packages|tests|scripts|docs)\/[\w./-]+)/g)]
      .map(([, path = ""]) => path.replace(/[.,]+$/, ""))
      .filter((path) => !/NAME/.test(path));
    expect(paths.filter((path) => !existsSync(join(root, path)))).toEqual([]);
  });

  it("names files of core that are there", () => {
    const rooms = /`((?:units|engine|knowledge|model|compile|inference|explain|wire)\/[\w./-]+)`/g;
    const named = [...text.matchAll(rooms)].map(([, path = ""]) => path);
    const lost = named.filter((path) => !existsSync(join(root, "packages/core/src", path)));
    expect(lost).toEqual([]);
  });
});

/** Headings as a link names them. */
function headings(text: string): readonly string[] {
  return [...text.matchAll(/^#+ (.+)$/gm)].map(([, heading = ""]) =>
    heading
      .toLowerCase()
      .replace(/[^\p{L}\p{N} -]/gu, "")
      .replaceAll(" ", "-"),
  );
}
