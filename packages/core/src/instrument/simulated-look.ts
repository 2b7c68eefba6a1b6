// What a check shows on an engine that physics broke, as findings.
import type { Engine } from "../engine/engine.ts";
import type { Finding } from "../knowledge/answer.ts";
import { KNOWLEDGE } from "../knowledge/knowledge.ts";
import type { CheckRow } from "../knowledge/schema.ts";
import type { SimulatedCase } from "../physics/simulate.ts";
import type { SimulatedFinding } from "../physics/simulated-sense.ts";

export interface SimulatedLook {
  readonly row: CheckRow;
  /** Indices of the cylinders at which to look; empty for a check of the whole engine. */
  readonly cylinders: readonly number[];
  /** What is known already is not looked at again. */
  readonly known: readonly Finding[];
}

/** Answers to everything that a check yields at some cylinders; one coil is asked about once. */
export function seenAt(
  engine: Engine,
  broken: SimulatedCase,
  { row, cylinders, known }: SimulatedLook,
): readonly Finding[] {
  const isKnown = (finding: Finding): boolean =>
    known.some((each) => each.finding === finding.finding && each.cylinder === finding.cylinder);
  return row.yields.flatMap((id): readonly Finding[] => {
    const asked = KNOWLEDGE.findings.get(id);
    if (!asked || (asked.suits && !asked.suits.includes(engine.ignition))) return [];
    const at =
      asked.scope === "engine"
        ? [undefined]
        : asked.scope === "coil"
          ? onePerCoil(engine, cylinders)
          : cylinders;
    return at.flatMap((cylinder): readonly Finding[] => {
      const answer = broken.observeCheck(id, cylinder);
      if (answer === undefined) return [];
      const place = cylinder === undefined ? {} : { cylinder };
      const finding = named(engine, { finding: id, answer, ...place });
      return isKnown(finding) ? [] : [finding];
    });
  });
}

/** The first of the cylinders on each coil. */
function onePerCoil(engine: Engine, cylinders: readonly number[]): readonly number[] {
  return cylinders.filter(
    (c, i) => cylinders.findIndex((d) => engine.groupOf[d] === engine.groupOf[c]) === i,
  );
}

/** A finding of physics with its cylinder by name. */
export function named(engine: Engine, { finding, answer, cylinder }: SimulatedFinding): Finding {
  const name = cylinder === undefined ? undefined : engine.names[cylinder];
  return { finding, answer, ...(name === undefined ? {} : { cylinder: name }) };
}
