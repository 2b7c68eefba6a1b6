// The knowledge by id, and what a question may be about.
import {
  CHECKS,
  type CheckRow,
  type Engine,
  type EngineProfile,
  FINDINGS,
  type Finding,
  type FindingRow,
} from "@half-order/core";
import { firstQuestions } from "./asked.ts";
import { hasAllFindings } from "./prose.ts";

const findingRows = new Map(FINDINGS.map((row) => [row.id, row]));

export function findingRow(id: string | undefined): FindingRow | undefined {
  return findingRows.get(id ?? "");
}

/**
 * Ids of the cautions that answers call for at once, each once: the same as beside a ranking, and known without it, so
 * that nothing moves when it comes.
 */
export function cautionsOf(given: readonly Finding[]): readonly string[] {
  const ids = given.flatMap(({ finding, answer }) =>
    [answer].flat().flatMap((of) => findingRow(finding)?.options[String(of)]?.caution ?? []),
  );
  return [...new Set(ids)];
}

/** `undefined` too while the checks are on their way; a component that asks is drawn again when they have come. */
export function checkRow(id: string | undefined): CheckRow | undefined {
  return hasAllFindings() ? CHECKS.find((row) => row.id === id) : undefined;
}

/** The question asked after this one among the first; `undefined` after the last and for others. */
export function questionAfter(
  id: string,
  known: EngineProfile | undefined,
): FindingRow | undefined {
  const all = firstQuestions(known);
  const index = all.findIndex((row) => row.id === id);
  return index < 0 ? undefined : all[index + 1];
}

export function questionBefore(
  id: string,
  known: EngineProfile | undefined,
): FindingRow | undefined {
  const all = firstQuestions(known);
  return all[all.findIndex((row) => row.id === id) - 1];
}

/** What an answer to a finding may be about: a cylinder, or all that one coil or connector serves. */
export interface Target {
  /** Cylinder index that the answer names. */
  readonly cylinder: number;
  readonly cylinders: readonly number[];
}

export type TargetKind = "cylinder" | "coil" | "connector";

export function targetKind({ scope }: FindingRow): TargetKind | undefined {
  return scope === "engine" ? undefined : scope;
}

export function targetsOf(row: FindingRow, engine: Engine): readonly Target[] {
  const kind = targetKind(row);
  if (kind === undefined) return [];
  const sets =
    kind === "cylinder"
      ? engine.names.map((_, c) => [c])
      : kind === "coil"
        ? engine.groups
        : engine.connectors.map(({ cylinders }) => cylinders);
  return sets.map((cylinders) => ({ cylinder: cylinders[0] ?? 0, cylinders }));
}
