// Answers looked up in the knowledge and in the engine: the one form that the rest of compile reads.
import type { Engine } from "../engine/engine.ts";
import type { Finding } from "../knowledge/answer.ts";
import type { Knowledge } from "../knowledge/knowledge.ts";
import type { FindingRow } from "../knowledge/schema.ts";
import { findingFor } from "../knowledge/suits.ts";
import { type ReadCodes, readCodes } from "./code.ts";
import { optionOfReading } from "./reading.ts";

export interface Answered {
  /** With the options that this engine can be answered with. */
  readonly row: FindingRow;
  /** Position in the caller's list. */
  readonly answer: number;
  /** Cylinder index, for findings about one cylinder or coil. */
  readonly cylinder: number | undefined;
  /** Options that hold; for a choice exactly one. */
  readonly options: readonly string[];
  readonly codes: ReadCodes | undefined;
  /** By cylinder index. */
  readonly counts: readonly number[] | undefined;
}

/** Looks up checked findings (see `checkFindings`); a later answer to the same question replaces one before. */
export function answeredOf(
  engine: Engine,
  findings: readonly Finding[],
  knowledge: Knowledge,
): readonly Answered[] {
  const byQuestion = new Map<string, Answered>();
  findings.forEach((finding, answer) => {
    const known = knowledge.findings.get(finding.finding);
    if (!known) throw new Error(`answeredOf: finding ${finding.finding} is not checked`);
    const row = findingFor(engine.profile, known);
    const cylinder = cylinderOf(engine, row, finding);
    byQuestion.set(questionKey(engine, row, cylinder), {
      row,
      answer,
      cylinder,
      options: optionsOf(engine, row, finding),
      codes: row.kind === "codes" ? readCodes(finding.answer as readonly string[]) : undefined,
      counts: row.kind === "counts" ? countsOf(engine, finding.answer) : undefined,
    });
  });
  return [...byQuestion.values()].sort((a, b) => a.answer - b.answer);
}

/** Index of the cylinder named, the first where none need be; numbers may be written as text. */
function cylinderOf(
  { names }: Engine,
  { scope }: FindingRow,
  { cylinder }: Finding,
): number | undefined {
  if (cylinder === undefined) return scope === "engine" ? undefined : 0;
  const index = names.findIndex((known) => String(known) === String(cylinder));
  return index < 0 ? undefined : index;
}

/** Two answers with one key are about the same thing: one coil, one connector, one cylinder. */
export function questionKey(engine: Engine, row: FindingRow, cylinder: number | undefined): string {
  if (cylinder === undefined) return row.id;
  return `${row.id}@${placeKey(engine, row, cylinder)}`;
}

function placeKey(engine: Engine, { scope }: FindingRow, cylinder: number): string {
  const connector = engine.connectors.findIndex((each) => each.cylinders.includes(cylinder));
  if (scope === "connector" && connector >= 0) return `connector ${connector}`;
  return scope === "cylinder" ? String(cylinder) : `coil ${engine.groupOf[cylinder]}`;
}

function optionsOf(engine: Engine, row: FindingRow, { answer }: Finding): readonly string[] {
  if (typeof answer === "number") {
    const option = optionOfReading(engine.profile, row, answer);
    return option === undefined ? [] : [option];
  }
  if (row.kind === "presence") return answer === "yes" ? Object.keys(row.options) : [];
  if (row.kind === "several") {
    // What the engine has no part for may be left from when another engine was picked: it says nothing.
    return (answer as readonly string[]).filter((option) => Object.hasOwn(row.options, option));
  }
  return typeof answer === "string" ? [answer] : [];
}

function countsOf(engine: Engine, answer: Finding["answer"]): readonly number[] {
  const byName = answer as Readonly<Record<string, number>>;
  return engine.names.map((name) => byName[String(name)] ?? 0);
}
