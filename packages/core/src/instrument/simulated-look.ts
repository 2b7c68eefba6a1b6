// What a check shows on an engine that physics broke, as findings.
import { answeredOf, questionKey } from "../compile/answered.ts";
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

/** Answers to everything that a check yields at some cylinders; one coil or connector is asked once. */
export function seenAt(
  engine: Engine,
  broken: SimulatedCase,
  { row, cylinders, known }: SimulatedLook,
): readonly Finding[] {
  const done = new Set(
    answeredOf(engine, known, KNOWLEDGE).map((each) =>
      questionKey(engine, each.row, each.cylinder),
    ),
  );
  return row.yields.flatMap((id): readonly Finding[] => {
    const asked = KNOWLEDGE.findings.get(id);
    if (!asked || (asked.suits && !asked.suits.includes(engine.ignition))) return [];
    const at = asked.scope === "engine" ? [undefined] : cylinders;
    return at.flatMap((cylinder): readonly Finding[] => {
      const key = questionKey(engine, asked, cylinder);
      const answer = done.has(key) ? undefined : broken.observeCheck(id, cylinder);
      if (answer === undefined) return [];
      done.add(key);
      return [
        named(engine, { finding: id, answer, ...(cylinder === undefined ? {} : { cylinder }) }),
      ];
    });
  });
}

/** A finding of physics with its cylinder by name. */
export function named(engine: Engine, { finding, answer, cylinder }: SimulatedFinding): Finding {
  const name = cylinder === undefined ? undefined : engine.names[cylinder];
  return { finding, answer, ...(name === undefined ? {} : { cylinder: name }) };
}
