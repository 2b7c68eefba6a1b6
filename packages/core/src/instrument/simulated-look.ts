// What a check shows on an engine that physics broke, as findings.
import { answeredOf, questionKey } from "../compile/answered.ts";
import { fits } from "../compile/fits.ts";
import type { Engine } from "../engine/engine.ts";
import { servedBy } from "../engine/served-by.ts";
import type { Finding } from "../knowledge/answer.ts";
import { isExchange } from "../knowledge/exchange.ts";
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

/** Something that a check looks at. */
export interface SimulatedQuestion {
  readonly finding: string;
  /** Index, where it asks for one. */
  readonly cylinder: number | undefined;
  /** Questions with one key are about the same thing. */
  readonly key: string;
}

/** Everything that a check looks at on this engine; one coil or connector once. */
export function questionsOf(
  engine: Engine,
  { yields }: CheckRow,
  cylinders: readonly number[],
): readonly SimulatedQuestion[] {
  const all = yields.flatMap((finding): readonly SimulatedQuestion[] => {
    const asked = KNOWLEDGE.findings.get(finding);
    if (!asked || !fits(engine, asked)) return [];
    const at = asked.scope === "engine" ? [undefined] : cylinders;
    return at.map((cylinder) => {
      return { finding, cylinder, key: questionKey(engine, asked, cylinder) };
    });
  });
  return all.filter(({ key }, i) => all.findIndex((each) => each.key === key) === i);
}

/** The last answer to each question, by its key. */
export function answersByKey(
  engine: Engine,
  findings: readonly Finding[],
): ReadonlyMap<string, Finding> {
  return new Map(
    answeredOf(engine, findings, KNOWLEDGE).map(({ row, cylinder, answer }) => [
      questionKey(engine, row, cylinder),
      findings[answer] as Finding,
    ]),
  );
}

/** A cylinder misses that loses this part of its strokes in some way of driving (our estimate); sound ones lose 0.2 %. */
const MISSES = 0.05;

/** False of an exchange where nothing misses: nothing could move, so nobody can say that it stayed. */
export function isTelling(
  engine: Engine,
  { drive }: Pick<SimulatedCase, "drive">,
  { finding, cylinder }: Pick<SimulatedQuestion, "finding" | "cylinder">,
): boolean {
  const row = KNOWLEDGE.findings.get(finding);
  if (!row || cylinder === undefined || !isExchange(row)) return true;
  return servedBy(engine, row.scope, engine.names[cylinder]).some((c) =>
    Object.values(drive).some(({ share }) => (share[c] ?? 0) >= MISSES),
  );
}

/** Answers to everything that a check yields at some cylinders and that is not known yet. */
export function seenAt(
  engine: Engine,
  broken: SimulatedCase,
  { row, cylinders, known }: SimulatedLook,
): readonly Finding[] {
  const done = answersByKey(engine, known);
  return questionsOf(engine, row, cylinders).flatMap(({ finding, cylinder, key }) => {
    const isSeen = !done.has(key) && isTelling(engine, broken, { finding, cylinder });
    const answer = isSeen ? broken.observeCheck(finding, cylinder) : undefined;
    if (answer === undefined) return [];
    return [named(engine, { finding, answer, ...(cylinder === undefined ? {} : { cylinder }) })];
  });
}

/** A finding of physics with its cylinder by name. */
export function named(engine: Engine, { finding, answer, cylinder }: SimulatedFinding): Finding {
  const name = cylinder === undefined ? undefined : engine.names[cylinder];
  return { finding, answer, ...(name === undefined ? {} : { cylinder: name }) };
}
