// How do the tables travel? Faults name findings, options and grounds by number, what the first questions do
// not touch comes later, and the long prose goes in a file of its own, fetched when a screen needs it.
// Packing and unpacking stand side by side; the build packs, the page and its thread unpack.
import type { Build, CheckRow, FaultRow, FindingRow, Grounds } from "@half-order/core";

/** Number of the finding, number of the grounds (0: none), then option and figure in turn. */
type Line = readonly (string | number)[];

type Bare = Omit<FaultRow, "about" | "mend" | "signs" | "risks">;

interface Lines {
  readonly signs: readonly Line[];
  readonly risks: readonly Line[];
}

export interface PackedFaults {
  readonly grounds: readonly Grounds[];
  readonly rows: readonly (Bare & Lines)[];
}

/** Signs and risks alone, fault by fault in their order. */
export interface PackedLines {
  readonly grounds: readonly Grounds[];
  readonly rows: readonly Lines[];
  /** The faults that the first file leaves out, the last of all, without their lines. */
  readonly older: readonly Bare[];
}

/** True of a fault that only an engine with a contact breaker or a carburettor can have, and of such an engine. */
export function isOlder({ switching, fuelling }: Build): boolean {
  return switching === "contact-breaker" || fuelling === "carburettor";
}

/** Long prose of faults and checks, by id. */
export interface Words {
  readonly faults: Readonly<Record<string, { readonly about: string; readonly mend: string }>>;
  readonly steps: Readonly<Record<string, readonly string[]>>;
}

/** Without their prose, see `wordsOf`. */
export function packFaults(
  faults: readonly FaultRow[],
  findings: readonly FindingRow[],
): PackedFaults {
  const grounds: Grounds[] = [];
  const numberOf = (wanted: Grounds | undefined): number => {
    if (!wanted) return 0;
    const text = JSON.stringify(wanted);
    const known = grounds.findIndex((each) => JSON.stringify(each) === text);
    return known < 0 ? grounds.push(wanted) : known + 1;
  };
  const line = (of: string, figures: Figures, under: Grounds | undefined): Line => {
    const number = findings.findIndex(({ id }) => id === of);
    const options = Object.keys(findings[number]?.options ?? {});
    const pairs = Object.entries(figures).map(([option, figure = 0]) => {
      const at = options.indexOf(option);
      return [at < 0 ? option : at, figure];
    });
    return [number, numberOf(under), ...pairs.flat()];
  };
  return {
    rows: faults.map(({ about, mend, signs, risks, ...rest }) => ({
      ...rest,
      signs: signs.map((row) => line(row.finding, row.gives, row.grounds)),
      risks: risks.map((row) => line(row.finding, row.times, row.grounds)),
    })),
    grounds,
  };
}

type Figures = Readonly<Partial<Record<string, number>>>;

/** Only what the first questions touch; a ranking of their answers needs no more, but on an older engine. */
export function firstLines(
  { rows, grounds }: PackedFaults,
  findings: readonly FindingRow[],
): PackedFaults {
  const isFirst = ([of]: Line): boolean => findings[Number(of)]?.first !== undefined;
  const narrow = ({ signs, risks }: Lines): Lines => ({
    signs: signs.filter(isFirst),
    risks: risks.filter(isFirst),
  });
  const later = rows.filter((row) => !isOlder(row));
  return { rows: later.map((row) => ({ ...row, ...narrow(row) })), grounds };
}

/** All signs and risks, without the rest of the faults but those that the first file leaves out. */
export function allLines({ rows, grounds }: PackedFaults): PackedLines {
  return {
    rows: rows.map(({ signs, risks }) => ({ signs, risks })),
    grounds,
    older: rows.filter(isOlder).map(({ signs, risks, ...bare }) => bare),
  };
}

/** The rows as they were, with empty prose. */
export function unpackFaults(
  packed: PackedFaults,
  findings: readonly FindingRow[],
): readonly FaultRow[] {
  const lines = unpackLines(packed, findings);
  return packed.rows.map((row, i) => ({
    ...row,
    about: "",
    mend: "",
    ...(lines[i] as UnpackedLines),
  }));
}

type UnpackedLines = Pick<FaultRow, "signs" | "risks">;

/** Signs and risks as they were; the findings that they name must be whole. */
export function unpackLines(
  { rows, grounds }: Omit<PackedLines, "older">,
  findings: readonly FindingRow[],
): readonly UnpackedLines[] {
  const read = (
    line: Line,
  ): { finding: string; figures: Record<string, number>; under: object } => {
    const [of = 0, under = 0, ...pairs] = line;
    const row = findings[Number(of)];
    const options = Object.keys(row?.options ?? {});
    const figures: Record<string, number> = {};
    for (let i = 0; i < pairs.length; i += 2) {
      const option = pairs[i];
      const name = typeof option === "number" ? options[option] : option;
      figures[name ?? ""] = Number(pairs[i + 1]);
    }
    const stated = grounds[Number(under) - 1];
    return { finding: row?.id ?? "", figures, under: stated ? { grounds: stated } : {} };
  };
  return rows.map(({ signs, risks }) => ({
    signs: signs
      .map(read)
      .map(({ finding, figures, under }) => ({ finding, gives: figures, ...under })),
    risks: risks
      .map(read)
      .map(({ finding, figures, under }) => ({ finding, times: figures, ...under })),
  }));
}

/** A finding that is not among the first questions, until its row is fetched: enough to know it by. */
export type Outline = readonly [
  string,
  FindingRow["topic"],
  FindingRow["kind"],
  FindingRow["scope"],
];

export function outlineOf({ id, topic, kind, scope }: FindingRow): Outline {
  return [id, topic, kind, scope];
}

/** A row whose question, options and grounds are still to come. */
export function fromOutline([id, topic, kind, scope]: Outline): FindingRow {
  const grounds = { basis: "memory", confidence: "low" } as const;
  return { id, ask: "", topic, kind, scope, options: {}, grounds };
}

/** The prose that packed rows leave out. */
export function wordsOf(faults: readonly FaultRow[], checks: readonly CheckRow[]): Words {
  return {
    faults: Object.fromEntries(faults.map(({ id, about, mend }) => [id, { about, mend }])),
    steps: Object.fromEntries(checks.map(({ id, steps }) => [id, steps])),
  };
}
