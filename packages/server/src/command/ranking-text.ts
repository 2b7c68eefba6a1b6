// A ranking in words, for a terminal: conflict first, then faults, cylinders, and what is not known.
import {
  CAUTIONS,
  CHECKS,
  type CheckRow,
  type CylinderName,
  FINDINGS,
  type Fit,
  type OrderCandidate,
  type PutRight,
  type RankedCylinder,
  type RankedFault,
  type Ranking,
  sayProbability,
} from "@half-order/core";
import type { Case } from "@half-order/core/wire";
import type { Numbers } from "./knowledge.ts";
import { dashed, percent, table, wrapped } from "./text.ts";

/** Cylinders less likely than this to miss are not worth a line. */
const WORTH_SAYING = 0.02;

export function sayRanking(
  { title, engine }: Case,
  ranking: Ranking,
  top: number,
  { knowledge: { checks }, from }: Numbers,
): string {
  const faults = ranking.ranking.slice(0, top);
  const parts = [
    sayAtOnce(ranking.cautions),
    sayConflict(ranking.fit),
    wrapped([title, engine.name ?? engine.id ?? "The engine"].filter(Boolean).join(": ")),
    from === undefined ? "" : wrapped(`With the numbers of ${from} laid over the tables.`),
    sayOrders(ranking.orders),
    faults
      .map((fault, i) => {
        const check = checks.find(({ id }) => id === fault.firstCheck);
        return sayFault(fault, i + 1, engine.cylinders, check);
      })
      .join(""),
    sayMisses(ranking),
    sayRest(ranking),
    sayPutRight(ranking.alsoPutRight),
    sayCautions(faults),
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

function sayConflict({ conflictDb, suspect }: Fit): string {
  // A suspect is named only when the conflict is more than the noise of crude weights.
  if (!suspect) return "";
  const again = `Look again at ${sayFinding(suspect.finding, suspect.cylinder)}.`;
  return wrapped(`THE FINDINGS DISAGREE by ${conflictDb.toFixed(1)} dB. ${again}`);
}

function sayFinding(id: string, cylinder: CylinderName | undefined): string {
  const ask = FINDINGS.find((row) => row.id === id)?.ask;
  const where = cylinder === undefined ? "" : ` of cylinder ${cylinder}`;
  return `${id}${where}${ask ? ` ("${ask}")` : ""}`;
}

function sayOrders(orders: readonly OrderCandidate[] | undefined): string {
  if (!orders) return "";
  const rows = orders.map(({ firingOrder, probability, first }) => [
    dashed(firingOrder),
    percent(probability),
    `first then: ${first}`,
  ]);
  return `The firing order is not known; it may be\n${table(rows)}`;
}

function sayFault(
  ranked: RankedFault,
  position: number,
  all: number,
  check: CheckRow | undefined,
): string {
  const { probability, name, cylinders, firstCheck } = ranked;
  const number = `${position}.`.padStart(3);
  const said = sayProbability(probability).padEnd(18);
  const head = `${number} ${said} ${percent(probability).padStart(7)}  `;
  const more = `${sayCylinders(cylinders, all)}. First: ${check ? sayCheck(check) : firstCheck}.`;
  return `${head}${name}\n${wrapped(more, " ".repeat(head.length))}`;
}

function sayCylinders(cylinders: readonly CylinderName[], all: number): string {
  if (cylinders.length === 1) return `Cylinder ${cylinders[0]}`;
  return cylinders.length === all ? "All cylinders" : `Cylinders ${cylinders.join(", ")}`;
}

function sayCheck({ name, minutes, tool }: CheckRow): string {
  return `${name} (${minutes} min, ${tool === "none" ? "no tool" : tool})`;
}

function sayMisses({ cylinders, atRandom, noMisfire }: Ranking): string {
  const missing = cylinders
    .filter(({ misses }) => misses >= WORTH_SAYING)
    .sort((a, b) => b.misses - a.misses);
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

function sayCautions(faults: readonly RankedFault[]): string {
  const checks = new Set(faults.map(({ firstCheck }) => firstCheck));
  const ids = new Set(CHECKS.filter(({ id }) => checks.has(id)).flatMap((row) => row.cautions));
  if (ids.size === 0) return "";
  const lines = CAUTIONS.filter(({ id }) => ids.has(id)).map(({ say }) => wrapped(say, "  "));
  return `Before you touch anything\n${lines.join("")}`;
}
