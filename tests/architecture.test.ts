// Do the walls stand? Data walks up through the rooms of core, and server and page stay outside.
import { existsSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { codeOf, type Import, importsOf, packageSources, type Source } from "./helper/import.ts";

const CORE = "packages/core/src/";
const sources = packageSources();
const core = sources.filter(({ file }) => file.startsWith(CORE));

/** `types`: nothing of that room runs; a list: only these of its files. */
type Pass = "all" | "types" | readonly string[];

/**
 * Who may import whom. Knowledge takes only types of engine, so that no row can hold a cylinder or a
 * calculation; inference knows no engine, so that it can be held against plain arithmetic; compile may
 * ask physics for one thing, the chance that a measured gap misfires on an engine.
 */
const WALLS: Readonly<Record<string, Readonly<Record<string, Pass>>>> = {
  units: {},
  engine: { units: "all" },
  physics: { units: "all", engine: "all" },
  knowledge: { units: "all", engine: "types" },
  model: { units: "all" },
  compile: { units: "all", engine: "all", knowledge: "all", model: "all", physics: "all" },
  inference: { units: "all", model: "all" },
  // Costs and chances of anything that does not run: it needs to know no model of ours.
  planning: { units: "all" },
  // Rules, lists and dates round a repair. Answers are checked and read as for the ranking; nothing here
  // asks for a probability.
  service: {
    units: "all",
    engine: "all",
    physics: "all",
    knowledge: "all",
    compile: ["check-finding.ts", "answered.ts"],
  },
  explain: {
    units: "all",
    engine: "all",
    physics: "all",
    knowledge: "all",
    model: "all",
    compile: "all",
    inference: "all",
  },
  advice: {
    units: "all",
    engine: "all",
    knowledge: "all",
    model: "all",
    compile: "all",
    inference: "all",
    planning: "all",
    service: "all",
    explain: "all",
  },
  // They look at everything, and no other room looks at them.
  instrument: {
    units: "all",
    engine: "all",
    physics: "all",
    knowledge: "all",
    model: "all",
    compile: "all",
    inference: "all",
    explain: "all",
    service: "all",
    advice: "all",
  },
  wire: {
    units: "all",
    engine: "all",
    // A case that is read must be one that can be ranked.
    compile: ["check-finding.ts", "repair.ts"],
    // The names of topics and tools; rows are described by their types. An overlay that is read must fit.
    knowledge: ["schema.ts", "tool.ts", "answer.ts", "knowledge.ts", "check-overlay.ts"],
    explain: "types",
    advice: "types",
    // A record of plugs that is read must be one of its engine.
    service: ["record.ts"],
  },
};

/** Packages that a room of core may use; only the wire format needs one. */
const CORE_PACKAGES: Readonly<Record<string, readonly string[]>> = { wire: ["zod"] };

const CORE_DOORS = ["@half-order/core", "@half-order/core/wire", "@half-order/core/physics"];
/** The instruments take no part in a ranking: who practises alone goes in by their door. */
const INSTRUMENT_DOOR = "@half-order/core/instrument";
const PRACTICE = "packages/web/src/practice/";

describe("the rooms of core", () => {
  it("are all in the table of walls", () => {
    const rooms = new Set(core.map(roomOf).filter((room) => room !== undefined));
    expect([...rooms].filter((room) => !(room in WALLS))).toEqual([]);
    expect(rooms.size).toBeGreaterThan(5);
  });

  it.each(Object.keys(WALLS))("%s imports only what its wall lets through", (room) => {
    const here = core.filter((source) => roomOf(source) === room);
    const breaches = here.flatMap((source) =>
      source.imports.flatMap((each) => coreBreach(room, source, each) ?? []),
    );
    expect(breaches).toEqual([]);
  });

  it("are entered by the door alone", () => {
    const doors = core.filter((source) => roomOf(source) === undefined).map(({ file }) => file);
    expect(doors).toEqual([`${CORE}index.ts`]);
  });

  it.each([
    ["the clock", /\bDate\b|\bperformance\b|\bset(?:Timeout|Interval)\b/],
    ["chance", /\bMath\.random\b|\bcrypto\b/],
    ["the console", /\bconsole\b/],
    ["the process or the network", /\bprocess\.|\bfetch\(|\bglobalThis\b|["']node:/],
  ])("never use %s", (_, forbidden) => {
    const found = core.filter(({ text }) => forbidden.test(codeOf(text)));
    expect(found.map(({ file }) => file)).toEqual([]);
  });
});

describe("server and page", () => {
  const outside = sources.filter(({ file }) => !file.startsWith("packages/core/"));

  it("reach core only by its doors, and one another never", () => {
    const breaches = outside.flatMap((source) =>
      source.imports
        .filter((each) => leaves(source, each))
        .map(
          ({ of }) =>
            `${source.file} imports ${of}. Allowed: its own package, ${CORE_DOORS.join(", ")}.`,
        ),
    );
    expect(outside.length).toBeGreaterThan(0);
    expect(breaches).toEqual([]);
  });

  it("keep the server's modules off the page", () => {
    const page = outside.filter(({ file }) => file.startsWith("packages/web/src/"));
    const breaches = page.flatMap(({ file, imports }) =>
      imports
        .filter(({ of }) => /^node:|fastify/.test(of))
        .map(({ of }) => `${file} imports ${of}: a browser has no such thing.`),
    );
    expect(breaches).toEqual([]);
  });
});

describe("all files of the packages", () => {
  it("import without cycles; in core not even types go in circles", () => {
    expect(cycles(core, () => true)).toEqual([]);
    expect(cycles(sources, ({ isType }) => !isType)).toEqual([]);
  });

  it("import files that are there", () => {
    const root = join(import.meta.dirname, "..");
    const lost = sources.flatMap(({ file, imports }) =>
      imports
        .filter((each) => each.file !== undefined && !existsSync(join(root, each.file)))
        .map(({ of }) => `${file} imports ${of}`),
    );
    expect(lost).toEqual([]);
  });

  it("stay short: 400 lines, tables of knowledge 500", () => {
    const long = sources.flatMap(({ file, text }) => {
      const lines = text.split("\n").length - 1;
      const most = file.startsWith(`${CORE}knowledge/`) ? 500 : 400;
      return lines > most ? `${file} has ${lines} lines of ${most}. Aim at 150, split at 300.` : [];
    });
    expect(long).toEqual([]);
  });

  it("live in rooms with a name of their own", () => {
    const nameless = sources.filter(({ file }) =>
      /\/(?:utils?|helpers?|commons?|shared|misc|lib)(?:\/|\.tsx?$)/.test(file),
    );
    const why = "A helper lives in the room whose words it uses.";
    expect(
      nameless.map(({ file }) => file),
      why,
    ).toEqual([]);
  });

  it("are named in kebab-case", () => {
    const odd = sources.filter(({ file }) => {
      const name = file.split("/").at(-1) ?? "";
      return !/^[a-z0-9]+(?:-[a-z0-9]+)*(?:\.config|\.d)?\.tsx?$/.test(name);
    });
    expect(odd.map(({ file }) => file)).toEqual([]);
  });

  it("open with a comment that says what question they answer", () => {
    const mute = sources.filter(({ text }) => !/^(?:\/\/ ?\S|\/\*)/.test(text));
    expect(mute.map(({ file }) => file)).toEqual([]);
  });

  it("export by name", () => {
    const found = sources.filter(
      ({ file, text }) =>
        !/\.config\.ts$/.test(file) && /^export (?:default|\*)/m.test(codeOf(text)),
    );
    expect(found.map(({ file }) => file)).toEqual([]);
  });
});

describe("the reader of imports", () => {
  it("sees every form of import, and no comment", () => {
    const text = [
      '// import { no } from "./comment.ts";',
      'import { a } from "./a.ts";',
      'import type { B } from "../b/b.ts";',
      "export {",
      "  c,",
      '} from "zod";',
      'import "./side.css";',
      'const d = await import("./d.ts");',
    ].join("\n");
    expect(importsOf("packages/core/src/x/y.ts", text)).toEqual([
      { of: "./a.ts", isType: false, file: `${CORE}x/a.ts` },
      { of: "../b/b.ts", isType: true, file: `${CORE}b/b.ts` },
      { of: "zod", isType: false, file: undefined },
      { of: "./side.css", isType: false, file: `${CORE}x/side.css` },
      { of: "./d.ts", isType: false, file: `${CORE}x/d.ts` },
    ]);
  });
});

/** The room of core in which a file lies; undefined at the door. */
function roomOf({ file }: { readonly file: string }): string | undefined {
  const path = file.slice(CORE.length).split("/");
  return path.length > 1 ? path[0] : undefined;
}

function coreBreach(room: string, { file }: Source, each: Import): string | undefined {
  const walls = WALLS[room] ?? {};
  const packages = CORE_PACKAGES[room] ?? [];
  const says = `${file} imports ${each.of}. ${room} may import ${sayAllowed(room)}.`;
  if (each.file === undefined) return packages.includes(each.of) ? undefined : says;
  if (!each.file.startsWith(CORE)) return says;
  const other = roomOf({ file: each.file });
  if (other === room) return undefined;
  const pass = walls[other ?? ""];
  if (pass === "all" || (pass !== undefined && each.isType)) return undefined;
  const isListed = typeof pass === "object" && pass.includes(each.file.split("/").at(-1) ?? "");
  return isListed ? undefined : says;
}

function sayAllowed(room: string): string {
  const rooms = Object.entries(WALLS[room] ?? {}).map(([other, pass]) => {
    if (pass === "all") return other;
    return pass === "types" ? `types of ${other}` : `types and ${pass.join(", ")} of ${other}`;
  });
  return [...rooms, ...(CORE_PACKAGES[room] ?? [])].join(", ") || "nothing";
}

/** Does an import leave the package of its file by anything but a door of core? */
function leaves({ file }: Source, each: Import): boolean {
  if (each.file !== undefined) {
    const home = file.split("/").slice(0, 2).join("/");
    return !each.file.startsWith(`${home}/`);
  }
  const isPractice = file.startsWith(PRACTICE) && each.of === INSTRUMENT_DOOR;
  return each.of.startsWith("@half-order/") && !CORE_DOORS.includes(each.of) && !isPractice;
}

/** Every cycle found by a walk from each file, as `a → b → a`. */
function cycles(all: readonly Source[], counts: (each: Import) => boolean): readonly string[] {
  const next = new Map(
    all.map(({ file, imports }) => [
      file,
      imports.filter(counts).flatMap((each) => each.file ?? []),
    ]),
  );
  const found: string[] = [];
  const done = new Set<string>();
  const walk = (file: string, path: readonly string[]): void => {
    const start = path.indexOf(file);
    if (start >= 0) found.push([...path.slice(start), file].join(" → "));
    if (start >= 0 || done.has(file)) return;
    for (const other of next.get(file) ?? []) walk(other, [...path, file]);
    done.add(file);
  };
  for (const { file } of all) walk(file, []);
  return found;
}
