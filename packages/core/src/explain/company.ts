// What must be put right with the repair of a part, so that the new part lives.
import type { Answered } from "../compile/answered.ts";
import type { Engine } from "../engine/engine.ts";
import { servesAll } from "../engine/served-by.ts";
import type { Finding } from "../knowledge/answer.ts";
import type { Knowledge } from "../knowledge/knowledge.ts";
import type { PutRight, RankedFault } from "./ranking.ts";

/** What was found on an engine. */
interface Found {
  readonly engine: Engine;
  readonly answered: readonly Answered[];
  readonly findings: readonly Finding[];
  readonly knowledge: Knowledge;
}

/** A part counts as suspected from this probability on. */
const SUSPECTED = 0.1;

/** The parts that the likeliest faults sit in. */
export function suspectedParts(
  ranking: readonly RankedFault[],
  { faults }: Knowledge,
): ReadonlySet<string> {
  const partOf = new Map(faults.map((row) => [row.id, row.part.name]));
  return new Set(
    ranking
      .filter(({ probability }, place) => place === 0 || probability >= SUSPECTED)
      .flatMap(({ fault }) => partOf.get(fault) ?? []),
  );
}

/** A repair and the cylinders (by index) at which it is made. */
interface Made {
  readonly id: string;
  readonly cylinders: readonly number[];
}

/** What the findings say that a repair of these parts needs beside it, but for what the repair does itself. */
export function putRight(
  { engine, answered, findings, knowledge }: Found,
  parts: ReadonlySet<string>,
  repair?: Made,
): readonly PutRight[] {
  return answered.flatMap(({ row, options, answer, cylinder }) => {
    const isHere = cylinder === undefined || repair?.cylinders.includes(cylinder);
    const found = knowledge.company.find(
      (company) =>
        company.finding === row.id &&
        options.includes(company.option) &&
        !(repair && isHere && company.doneBy?.includes(repair.id)) &&
        company.parts.some((part) => parts.has(part)),
    );
    if (!found) return [];
    const own = cylinder === undefined ? undefined : engine.names[cylinder];
    const name = servesAll(engine, row.scope, own) ? undefined : own;
    return [
      {
        finding: findings[answer]?.finding ?? row.id,
        ...(name === undefined ? {} : { cylinder: name }),
        say: found.say,
        grounds: found.grounds,
      },
    ];
  });
}
