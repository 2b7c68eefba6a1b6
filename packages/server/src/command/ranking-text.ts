// A ranking in words, for a terminal: what is dangerous first, then conflict, parts, cylinders, and what is
// not known.
import {
  type AtHand,
  CAUTIONS,
  type EngineProfile,
  FINDINGS,
  type Fit,
  type PutRight,
  type RankedCylinder,
  type Ranking,
  sayProbability,
  stepCautions,
} from "@half-order/core";
import type { Case } from "@half-order/core/wire";
import type { Numbers } from "./knowledge.ts";
import { isOfOne } from "./ledger-text.ts";
import { type PartEntry, partEntries, sayPart } from "./part-text.ts";
import { dashed, percent, table, wrapped } from "./text.ts";

/** Cylinders less likely than this to miss are not worth a line. */
const WORTH_SAYING = 0.02;

/** Two kinds of chance stand in the list. */
const PARTS = wrapped(
  "Likely parts: at each part the chance that it has failed in whatever way, below it the ways in which it " +
    "may have failed, each with its own chance",
);

export function sayRanking(
  { title, engine, atHand = {} }: Case,
  ranking: Ranking,
  top: number,
  { knowledge, from }: Numbers,
): string {
  const entries = partEntries(ranking, top);
  const parts = [
    sayAtOnce(ranking.cautions),
    sayConflict(ranking.fit, engine),
    wrapped([title, engine.name ?? engine.id ?? "The engine"].filter(Boolean).join(": ")),
    from === undefined ? "" : wrapped(`With the numbers of ${from} laid over the tables.`),
    sayOrders(ranking),
    sayCautions(entries, knowledge, atHand),
    PARTS,
    ...entries.map((entry) => sayPart(entry, engine.cylinders, knowledge, atHand)),
    sayMisses(ranking),
    sayRest(ranking),
    sayPutRight(ranking.alsoPutRight),
    wrapped(
      "The weights behind these figures are estimates: use them to choose what to check next, and " +
        "check before you buy. The vehicle maker's service manual comes first.",
    ),
  ];
  return parts.filter(Boolean).join("\n");
}

function sayAtOnce(ids: readonly string[]): string {
  return CAUTIONS.filter(({ id }) => ids.includes(id))
    .map(({ say }) => wrapped(`CAUTION. ${say}`))
    .join("");
}

function sayConflict({ conflictDb, suspect }: Fit, engine: EngineProfile): string {
  // A suspect is named only when the conflict is more than the noise of crude weights.
  if (!suspect) return "";
  const again = `Look again at ${sayFinding(suspect, engine)}.`;
  return wrapped(`THE FINDINGS DISAGREE by ${conflictDb.toFixed(1)} dB. ${again}`);
}

function sayFinding(
  { finding, cylinder }: NonNullable<Fit["suspect"]>,
  engine: EngineProfile,
): string {
  const row = FINDINGS.find(({ id }) => id === finding);
  const where = row && isOfOne(row, cylinder, engine) ? ` of cylinder ${cylinder}` : "";
  return `${finding}${where}${row ? ` ("${row.ask}")` : ""}`;
}

function sayOrders({ orders, ranking }: Ranking): string {
  if (!orders) return "";
  const rows = orders.map(({ firingOrder, probability, first }) => {
    const fault = ranking.find((row) => `${row.fault}@${row.place}` === first);
    return [dashed(firingOrder), percent(probability), `first then: ${fault?.name ?? first}`];
  });
  return `The firing order is not known; it may be\n${table(rows)}`;
}

function sayMisses({ cylinders, atRandom, noMisfire }: Ranking): string {
  const missing = cylinders
    .filter(({ misses }) => misses >= WORTH_SAYING)
    .sort((a, b) => Math.round(100 * b.misses) - Math.round(100 * a.misses));
  const rows = [
    ...missing.map(sayCylinder),
    ["changing cylinders", percent(atRandom), sayProbability(atRandom)],
    ["no real misfire", percent(noMisfire), sayProbability(noMisfire)],
  ];
  return `What misses\n${table(rows)}`;
}

function sayCylinder({ cylinder, misses }: RankedCylinder): readonly string[] {
  return [`cylinder ${cylinder}`, percent(misses), sayProbability(misses)];
}

function sayRest({ somethingElse, unsearched }: Ranking): string {
  const rows = [
    ["something else, not in the catalogue", percent(somethingElse)],
    ["combinations not searched, at most", percent(unsearched)],
  ];
  return table(rows, "");
}

function sayPutRight(rows: readonly PutRight[]): string {
  if (rows.length === 0) return "";
  const lines = rows.map(({ say, cylinder }) =>
    wrapped(cylinder === undefined ? say : `${say} (cylinder ${cylinder})`, "  "),
  );
  return `Also put right, so that the repair lasts\n${lines.join("")}`;
}

/** Cautions of the checks that the list names. */
function sayCautions(
  entries: readonly PartEntry[],
  { checks }: Numbers["knowledge"],
  { where }: AtHand,
): string {
  const named = new Set(
    entries.flatMap(({ modes }) => modes.map(({ faults }) => faults[0]?.firstCheck)),
  );
  const ids = checks.filter(({ id }) => named.has(id)).flatMap((row) => stepCautions(row, where));
  if (ids.length === 0) return "";
  const lines = CAUTIONS.filter(({ id }) => ids.includes(id)).map(({ say }) => wrapped(say, "  "));
  return `Before you touch anything\n${lines.join("")}`;
}
