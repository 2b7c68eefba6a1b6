// What must be put right with the repair of the leading part, so that the new part lives.
import type { Answered } from "../compile/answered.ts";
import type { Engine } from "../engine/engine.ts";
import type { Finding } from "../knowledge/answer.ts";
import type { Knowledge } from "../knowledge/knowledge.ts";
import type { PutRight, RankedFault } from "./ranking.ts";

/** A part counts as suspected from this probability on. */
const SUSPECTED = 0.1;

export function putRight(
  engine: Engine,
  answered: readonly Answered[],
  ranking: readonly RankedFault[],
  findings: readonly Finding[],
  knowledge: Knowledge,
): readonly PutRight[] {
  const partOf = new Map(knowledge.faults.map((row) => [row.id, row.part.name]));
  const suspected = new Set(
    ranking
      .filter(({ probability }, place) => place === 0 || probability >= SUSPECTED)
      .map(({ fault }) => partOf.get(fault)),
  );
  return answered.flatMap(({ row, options, answer, cylinder }) => {
    const found = knowledge.company.find(
      (company) =>
        company.finding === row.id &&
        options.includes(company.option) &&
        company.parts.some((part) => suspected.has(part)),
    );
    if (!found) return [];
    const name = cylinder === undefined ? undefined : engine.names[cylinder];
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
