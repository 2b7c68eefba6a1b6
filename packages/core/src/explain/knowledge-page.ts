// The tables as a page of Markdown (docs/knowledge.md): what is in them, and what each row rests on.
import { shareOf } from "../compile/prior.ts";
import { IGNITION_KINDS } from "../engine/profile.ts";
import type { Knowledge } from "../knowledge/knowledge.ts";
import { type Provenance, provenance, type Tally } from "../knowledge/provenance.ts";
import {
  type AccessRow,
  type CheckRow,
  type FaultRow,
  type FindingRow,
  type RepairRow,
  TOPICS,
} from "../knowledge/schema.ts";

const BASES = ["published", "common practice", "memory"] as const;
const CONFIDENCES = ["high", "medium", "low"] as const;

/** The whole page; the same knowledge gives the same text. */
export function knowledgePage(knowledge: Knowledge): string {
  const parts = [
    "# The knowledge, as tables",
    "Written by `npm run tables` from the tables in `packages/core/src/knowledge`. Change them there, " +
      "then run it again; a test fails while the two differ. What a good row is stands in " +
      "[the guidelines](knowledge-guidelines.md).",
    ...sayNumbers(provenance(knowledge)),
    ...sayFaults(knowledge),
    ...sayFindings([...knowledge.findings.values()]),
    ...sayChecks(knowledge.checks),
    ...sayRepairs(knowledge.repairs),
    ...sayAccess(knowledge.access),
  ];
  return `${parts.join("\n\n")}\n`;
}

function sayNumbers(all: Provenance): readonly string[] {
  const row = (name: string, { total, byBasis, byConfidence }: Tally): readonly string[] => [
    name,
    String(total),
    ...BASES.map((basis) => String(byBasis[basis])),
    ...CONFIDENCES.map((confidence) => String(byConfidence[confidence])),
  ];
  const { published, "common practice": practice, memory } = all.byBasis;
  return [
    "## What the numbers rest on",
    `Of ${all.total} numbers, ${part(published, all.total)} are published somewhere, ` +
      `${part(practice, all.total)} are common practice of the trade, and ` +
      `${part(memory, all.total)} are estimates from memory that wait for something better.`,
    table(
      ["table", "numbers", ...BASES, ...CONFIDENCES],
      [
        ...Object.entries(all.byTable).map(([name, tally]) => row(name, tally)),
        row("**all**", all),
      ],
    ),
  ];
}

/** "38 %"; a small part is not called none. */
function part(some: number, all: number): string {
  const percent = (100 * some) / all;
  if (some === 0) return "none";
  return percent > 0 && percent < 1 ? "under 1 %" : `${Math.round(percent)} %`;
}

function sayFaults(knowledge: Knowledge): readonly string[] {
  const everything = [...knowledge.faults, knowledge.somethingElse];
  const sums = IGNITION_KINDS.map((kind) =>
    everything.reduce((sum, fault) => sum + shareOf(fault, kind), 0),
  );
  return [
    `## Faults (${knowledge.faults.length})`,
    "Of 1,000 engines of a kind that come in with a misfire or rough idle, how many have the fault. " +
      "An empty cell: this kind cannot have it. The last column is what the row rests on; single " +
      "risks and signs may bring their own grounds.",
    table(
      ["family", "fault", "part", ...IGNITION_KINDS, "rests on"],
      [
        ...everything.map((fault, i) => sayFault(fault, everything[i - 1])),
        ["**sum**", "", "", ...sums.map(decimal), ""],
      ],
    ),
    `Before any finding, ${decimal(100 * knowledge.twoFaultsShare)} % of all complaints are taken ` +
      `to have exactly two unrelated faults (${sayGrounds({ grounds: knowledge.twoFaultsGrounds })}).`,
  ];
}

/** The family is named where it begins. */
function sayFault(fault: FaultRow, above: FaultRow | undefined): readonly string[] {
  const shares = IGNITION_KINDS.map((kind) => shareOf(fault, kind));
  return [
    above && familyOf(above) === familyOf(fault) ? "" : familyOf(fault),
    `${fault.name.replace("{at}", "…")}<br>\`${fault.id}\``,
    fault.part.name,
    ...shares.map((share) => (share === 0 ? "" : decimal(share))),
    sayGrounds(fault),
  ];
}

function sayFindings(findings: readonly FindingRow[]): readonly string[] {
  return [
    `## Findings (${findings.length})`,
    "Behind each answer stands its chance when no fault speaks for it, and what it leaves for looks that " +
      "are made cold or at idle whenever the trouble is there.",
    ...TOPICS.flatMap((topic) => {
      const rows = findings.filter((row) => row.topic === topic);
      const head = ["finding", "asked of", "answers", "rests on"];
      return [`### ${topic}`, table(head, rows.map(sayFinding))];
    }),
  ];
}

function sayFinding(row: FindingRow): readonly string[] {
  const options = Object.entries(row.options).map(
    ([id, { chance, leaves = {} }]) => `${id} ${chance}${sayLeft(leaves)}`,
  );
  const number = row.reading ? [`or a number in ${row.reading.unit}`] : [];
  const answers = [...options, ...number].join(", ");
  return [
    `${row.ask}<br>\`${row.id}\``,
    row.made ? `${row.scope}, ${row.made}` : row.scope,
    row.kind === "choice" ? answers : `${row.kind}: ${answers || "by cylinder"}`,
    sayGrounds(row),
  ];
}

function sayLeft(leaves: NonNullable<FindingRow["options"][string]["leaves"]>): string {
  const parts = Object.entries(leaves).map(([made, left]) => `${made} ${left}`);
  return parts.length > 0 ? ` (leaves ${parts.join(", ")})` : "";
}

function sayChecks(checks: readonly CheckRow[]): readonly string[] {
  return [
    `## Checks (${checks.length})`,
    "Skill runs from 0 (anyone) to 4 (professional). Minutes are without what must come off first. " +
      "Breaks: in how many of 100 a brittle part breaks on the way.",
    table(
      ["check", "minutes", "tool", "skill", "comes off", "breaks", "answers", "rests on"],
      checks.map((row) => [
        `${row.name}<br>\`${row.id}\``,
        String(row.minutes),
        row.tool,
        String(row.skill),
        sayIds(row.access),
        row.breaks === undefined ? "" : decimal(100 * row.breaks),
        row.yields.map((id) => `\`${id}\``).join(", "),
        sayGrounds(row),
      ]),
    ),
  ];
}

function sayRepairs(repairs: readonly RepairRow[]): readonly string[] {
  return [
    `## Repairs (${repairs.length})`,
    "Behind each fault stands the chance that the engine is cured of it. Minutes are without what must " +
      "come off first.",
    table(
      ["repair", "at", "mends", "minutes", "skill", "parts", "comes off", "rests on"],
      repairs.map((row) => [
        `${row.name.replace("{at}", "…")}<br>\`${row.id}\``,
        row.at,
        row.mends.map(({ fault, works }) => `${fault} ${works}`).join(", "),
        String(row.minutes),
        String(row.skill),
        row.parts,
        sayIds(row.access),
        sayGrounds(row),
      ]),
    ),
  ];
}

function sayAccess(rows: readonly AccessRow[]): readonly string[] {
  return [
    `## What must come off (${rows.length})`,
    "Off and on again, paid once for everything behind it. It is in the way only on the kinds named.",
    table(
      ["state", "at", "minutes", "ignition", "rests on"],
      rows.map((row) => [
        `${row.say}<br>\`${row.id}\``,
        row.at,
        String(row.minutes),
        row.suits?.join(", ") ?? "all",
        sayGrounds(row),
      ]),
    ),
  ];
}

function sayIds(ids: readonly string[] = []): string {
  return ids.map((id) => `\`${id}\``).join(", ");
}

function familyOf({ id }: { readonly id: string }): string {
  return id.split(".")[0] ?? id;
}

function sayGrounds({ grounds }: Pick<FaultRow, "grounds">): string {
  return `${grounds.basis}, ${grounds.confidence}`;
}

/** At most one decimal, whatever the locale. */
function decimal(value: number): string {
  return String(Math.round(value * 10) / 10);
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;
  return [line(head), line(head.map(() => "---")), ...rows.map(line)].join("\n");
}
