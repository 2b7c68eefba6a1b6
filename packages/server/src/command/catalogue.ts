// `half-order faults`, `findings` and `checks`: what the program knows, for reading and for programs.
import { CHECKS, FAULTS, FINDINGS, type FindingRow } from "@half-order/core";
import { plainWords } from "./input.ts";
import { json, table, wrapped } from "./text.ts";

interface List {
  readonly rows: readonly object[];
  readonly say: () => string;
}

const LISTS: Readonly<Record<"faults" | "findings" | "checks", List>> = {
  faults: { rows: FAULTS, say: sayFaults },
  findings: { rows: FINDINGS, say: sayFindings },
  checks: { rows: CHECKS, say: sayChecks },
};

/** The subcommand that lists one of the tables. */
export function catalogueCommand(list: keyof typeof LISTS) {
  return async (args: readonly string[]): Promise<string> => {
    const { isJson } = plainWords(args, 0);
    const { rows, say } = LISTS[list];
    return isJson ? json(rows) : say();
  };
}

function sayFaults(): string {
  const rows = FAULTS.map(({ id, name, part }) => [id, name.replace("{at}", "…"), part.name]);
  return table([["id", "fault", "part"], ...rows]);
}

function sayChecks(): string {
  const rows = CHECKS.map(({ id, name, minutes, tool }) => [id, `${minutes} min`, tool, name]);
  return table([["id", "time", "tool", "check"], ...rows]);
}

function sayFindings(): string {
  const topics = [...new Set(FINDINGS.map((row) => row.topic))];
  return topics
    .map((topic) => {
      const rows = FINDINGS.filter((row) => row.topic === topic);
      return `${topic.toUpperCase()}\n\n${rows.map(sayFinding).join("\n")}`;
    })
    .join("\n");
}

function sayFinding(row: FindingRow): string {
  const options = Object.entries(row.options).map(([option, { say }]) => [option, say]);
  const scope = row.scope === "engine" ? "" : ` (one answer for each ${row.scope})`;
  return [
    wrapped(`${row.id}: ${row.ask}${scope}`, "  "),
    row.help ? wrapped(row.help, "    ") : "",
    `    ${JSON.stringify(exampleOf(row))}\n`,
    row.kind === "presence" || row.kind === "codes" ? "" : table(options, "      "),
    row.reading ? `      or a number in ${row.reading.unit}\n` : "",
  ].join("");
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
