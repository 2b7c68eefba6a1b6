// `half-order faults`, `findings`, `checks` and `repairs`: what the program knows, for reading and for programs.
import {
  CHECKS,
  type CheckRow,
  FAULTS,
  type FaultRow,
  FINDINGS,
  type FindingRow,
  type OptionRow,
  REPAIRS,
  type RepairRow,
} from "@half-order/core";
import { nearest } from "@half-order/core/wire";
import { plainWords, UsageError } from "./input.ts";
import { json, table, wrapped } from "./text.ts";

/** A table, how its rows are said, and in which of their words somebody looks for one. */
interface List<Row> {
  readonly rows: readonly Row[];
  readonly say: (rows: readonly Row[]) => string;
  readonly words: (row: Row) => readonly string[];
}

/** The subcommand that lists findings: all, or those that a word names. */
export const findingsCommand = listCommand<FindingRow>({
  rows: FINDINGS,
  say: sayFindings,
  words: ({ ask, kind, options }) => [
    ask,
    ...(kind === "presence" ? [] : Object.values(options).map(({ say }) => say)),
  ],
});

export const faultsCommand = listCommand<FaultRow>({
  rows: FAULTS,
  say: sayFaults,
  words: ({ name, part }) => [name, part.name],
});

export const checksCommand = listCommand<CheckRow>({
  rows: CHECKS,
  say: sayChecks,
  words: ({ name, tool }) => [name, tool],
});

export const repairsCommand = listCommand<RepairRow>({
  rows: REPAIRS,
  say: sayRepairs,
  words: ({ name, tool, mends }) => [name, tool, ...mends.map(({ fault }) => fault)],
});

function listCommand<Row extends { readonly id: string }>({ rows, say, words }: List<Row>) {
  return async (args: readonly string[]): Promise<string> => {
    const { isJson, names } = plainWords(args, 1);
    const [word] = names;
    const found = word === undefined ? rows : rowsAbout(word, rows, words);
    return isJson ? json(found) : say(found);
  };
}

/** The row of that id; else all that have the word in their id or their words. */
function rowsAbout<Row extends { readonly id: string }>(
  word: string,
  rows: readonly Row[],
  words: List<Row>["words"],
): readonly Row[] {
  const own = rows.filter(({ id }) => id === word);
  if (own.length > 0) return own;
  const sought = word.toLowerCase();
  const found = rows.filter((row) =>
    [row.id, ...words(row)].some((text) => text.toLowerCase().includes(sought)),
  );
  if (found.length > 0) return found;
  const ids = rows.map(({ id }) => id);
  const close = nearest(word, ids, Number.POSITIVE_INFINITY).slice(0, 3).join(", ");
  throw new UsageError(
    `Nothing in this list goes by ${JSON.stringify(word)}; the nearest ids are ${close}.`,
  );
}

function sayFaults(rows: readonly FaultRow[]): string {
  const lines = rows.map(({ id, name, part }) => [id, name.replace("{at}", "…"), part.name]);
  return table([["id", "fault", "part"], ...lines]);
}

function sayChecks(rows: readonly CheckRow[]): string {
  const lines = rows.map(({ id, name, minutes, tool }) => [id, `${minutes} min`, tool, name]);
  return table([["id", "time", "tool", "check"], ...lines]);
}

function sayRepairs(rows: readonly RepairRow[]): string {
  const lines = rows.map(({ id, name, minutes, tool, parts }) => [
    id,
    `${minutes} min`,
    tool,
    parts,
    name.replace("{at}", "…"),
  ]);
  return table([["id", "time", "tool", "parts", "repair"], ...lines]);
}

function sayFindings(rows: readonly FindingRow[]): string {
  const topics = [...new Set(rows.map((row) => row.topic))];
  return topics
    .map((topic) => {
      const own = rows.filter((row) => row.topic === topic);
      return `${topic.toUpperCase()}\n\n${own.map(sayFinding).join("\n")}`;
    })
    .join("\n");
}

function sayFinding(row: FindingRow): string {
  const options = Object.entries(row.options).map(([option, each]) => [
    option,
    `${each.say}${sayKinds(each)}`,
  ]);
  const scope = row.scope === "engine" ? "" : ` (one answer for each ${row.scope})`;
  return [
    wrapped(`${row.id}: ${row.ask}${scope}${sayKinds(row)}`, "  "),
    row.help ? wrapped(row.help, "    ") : "",
    `    ${JSON.stringify(exampleOf(row))}\n`,
    row.kind === "presence" || row.kind === "codes" ? "" : table(options, "      "),
    row.reading ? `      or a number in ${row.reading.unit}\n` : "",
  ].join("");
}

/** Which ignition kinds and builds something is asked for, where that is not all of them. */
function sayKinds({ suits, switching, fuelling }: FindingRow | OptionRow): string {
  const ignition = suits ? [`ignition ${suits.join(", ")}`] : [];
  const build = [switching && `${switching} switching`, fuelling].filter(Boolean);
  const all = [...ignition, ...build];
  return all.length > 0 ? ` (with ${all.join(", ")} only)` : "";
}

/** An answer in the form in which a case holds it. */
function exampleOf(row: FindingRow): object {
  const cylinder = row.scope === "engine" ? {} : { cylinder: 2 };
  const [option = ""] = Object.keys(row.options);
  const answer = {
    choice: option,
    presence: "yes",
    several: [option],
    codes: ["P0302", "P0305"],
    counts: { "1": 0, "2": 131 },
  }[row.kind];
  return { finding: row.id, ...cylinder, answer };
}
