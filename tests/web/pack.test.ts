// Do the tables arrive on the page as they left the library?
import {
  CHECKS,
  DRIVE_RULES,
  FAULTS,
  type FaultRow,
  FINDINGS,
  type FindingRow,
  KNOWLEDGE,
  LIMP_HOME,
  LIMP_HOME_OLDER,
  profileById,
  rank,
} from "@half-order/core";
import { describe, expect, it } from "vitest";
import { packedFiles } from "../../packages/web/packing.ts";
import {
  allLines,
  firstLines,
  fromOutline,
  isOlder,
  type Outline,
  outlineOf,
  packFaults,
  unpackFaults,
  unpackLines,
  wordsOf,
} from "../../packages/web/src/packed/pack.ts";
import {
  fromOutlineOfRule,
  outlineOfRule,
  restOfRule,
} from "../../packages/web/src/packed/pack-drive.ts";

/** As a file would hold it. */
function sent<T>(value: T): T {
  return JSON.parse(JSON.stringify(value)) as T;
}

describe("packed faults", () => {
  const packed = packFaults(FAULTS, FINDINGS);
  const linesOf = ({ signs, risks }: Pick<FaultRow, "signs" | "risks">): unknown => ({
    signs,
    risks,
  });

  it("unpack to the same rows, number by number, but for their prose", () => {
    const unpacked = unpackFaults(sent(packed), FINDINGS);
    const words = sent(wordsOf(FAULTS, CHECKS));
    expect(unpacked.map((row) => ({ ...row, ...words.faults[row.id] }))).toEqual(FAULTS);
  });

  it("come first with what the first questions touch, which needs outlines of the others alone", () => {
    const outlines = FINDINGS.map((row) =>
      row.first === undefined ? fromOutline(outlineOf(row)) : row,
    );
    const isFirst = ({ finding }: { readonly finding: string }): boolean =>
      FINDINGS.some(({ id, first }) => id === finding && first !== undefined);
    const unpacked = unpackFaults(sent(firstLines(packed, FINDINGS)), outlines);
    expect(unpacked.map(linesOf)).toEqual(
      FAULTS.filter((row) => !isOlder(row)).map(({ signs, risks }) =>
        linesOf({ signs: signs.filter(isFirst), risks: risks.filter(isFirst) }),
      ),
    );
  });

  it("are filled in with the lines that come later", () => {
    expect(unpackLines(sent(allLines(packed)), FINDINGS)).toEqual(FAULTS.map(linesOf));
  });

  it("leave the last rows to the later file, which only an older engine can have", () => {
    const older = FAULTS.filter(isOlder);
    expect(older.length).toBeGreaterThan(5);
    expect(FAULTS.slice(-older.length)).toEqual(older);
    const bare = sent(allLines(packed)).older.map((row) => ({ ...row, about: "", mend: "" }));
    const words = sent(wordsOf(FAULTS, CHECKS));
    const lines = unpackLines(sent(allLines(packed)), FINDINGS).slice(-older.length);
    expect(bare.map((row, i) => ({ ...row, ...words.faults[row.id], ...lines[i] }))).toEqual(older);
    const profile = profileById("demo.lapwing");
    expect(profile && isOlder(profile)).toBe(true);
  });

  it("rank the answers of the first questions as the whole tables do", () => {
    const first = unpackFaults(sent(firstLines(packed, FINDINGS)), FINDINGS);
    const profile = { cylinders: 4, ignition: "rail", firingOrder: [1, 3, 4, 2] } as const;
    const findings = FINDINGS.filter(
      ({ first: place, kind }) => place !== undefined && kind === "choice",
    ).map(({ id, options }) => ({ finding: id, answer: Object.keys(options)[0] ?? "" }));
    expect(findings.length).toBeGreaterThan(1);
    const chances = (faults: readonly FaultRow[]): readonly number[] =>
      rank(profile, findings, { knowledge: { ...KNOWLEDGE, faults } }).ranking.map(
        ({ probability }) => probability,
      );
    expect(chances(first)).toEqual(chances(FAULTS));
  });
});

describe("packed rules of driving", () => {
  it("decide as the whole ones do, and are filled in to be the same", () => {
    const outlines = sent(DRIVE_RULES.map(outlineOfRule)).map(fromOutlineOfRule);
    expect(outlines.map(({ level, when }) => [level, when])).toEqual(
      DRIVE_RULES.map(({ level, when }) => [level, when]),
    );
    const rest = sent(DRIVE_RULES.map(restOfRule));
    expect(outlines.map((row, i) => ({ ...row, ...rest[i] }))).toEqual(DRIVE_RULES);
  });
});

describe("the files beside the page", () => {
  const files = sent(packedFiles()) as Readonly<Record<string, Record<string, unknown>>>;

  it("hold every table of the knowledge", () => {
    const { faults, findings, checks, cautions, ...others } = KNOWLEDGE;
    const held = { ...part("faults.json").others, ...part("later.json").others };
    expect(held).toEqual(sent(others));
    expect(files["steps.json"]).toEqual(sent(wordsOf([], CHECKS).steps));
  });

  it("hold every finding whole, in the first file or the later one", () => {
    const first = part("asked.json").findings as readonly (FindingRow | Outline)[];
    const later = new Map((part("later.json").findings as typeof FINDINGS).map((r) => [r.id, r]));
    const whole = first.map((row) => ("id" in row ? row : later.get(row[0])));
    expect(whole).toEqual(sent(FINDINGS));
    expect(first.filter((row) => "id" in row).length).toBeLessThanOrEqual(6);
  });

  it("hold every check, whose steps are with the words", () => {
    expect(part("later.json").checks).toEqual(sent(CHECKS.map((row) => ({ ...row, steps: [] }))));
  });

  it("hold every rule of driving, in the first file and the rest of it in the later one", () => {
    const [first, rest] = [part("faults.json").drive, part("lines.json").drive] as [
      readonly object[],
      readonly object[],
    ];
    expect(first.map((row, i) => ({ ...row, ...rest[i] }))).toEqual(sent(DRIVE_RULES));
  });

  it("hold the way home, with an injector and without one", () => {
    const { limpHome, limpHomeOlder } = part("lines.json");
    expect(limpHome).toEqual(sent(LIMP_HOME));
    expect(limpHomeOlder).toEqual(sent(LIMP_HOME_OLDER));
  });

  function part(name: string): Record<string, unknown> & { others?: object } {
    const file = files[name];
    if (!file) throw new Error(`no file ${name}`);
    return file;
  }
});
