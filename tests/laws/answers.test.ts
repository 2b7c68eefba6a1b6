// What answers may and may not do to a ranking of the real catalogue.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type FaultAt,
  type Finding,
  type Ranking,
  rank,
  why,
} from "../../packages/core/src/index.ts";
import { KNOWLEDGE, type Knowledge } from "../../packages/core/src/knowledge/knowledge.ts";
import type { FindingRow } from "../../packages/core/src/knowledge/schema.ts";
import { findingsFor } from "../helper/arbitrary-findings.ts";
import { ENGINES } from "../helper/real-engines.ts";

/** Products are taken in another order; measured differences stay below 1e-12. */
const CLOSE = 1e-9;
const SEED = 20266;
const exact = { tolerance: 0 };

const engine = (name: string) => {
  const found = ENGINES.find((profile) => profile.name?.startsWith(name));
  if (!found) throw new Error(`no engine ${name}`);
  return found;
};
const four = engine("Dunlin");
const three = engine("Wagtail");
const withDistributor = engine("Plover");

/** Every probability under its key, in an order of its own. */
function numbers(r: Ranking): Readonly<Record<string, number>> {
  return Object.fromEntries([
    ...r.ranking.map((f) => [`${f.fault}@${f.place}`, f.probability] as const),
    ...r.components.map((c) => [c.component, c.probability] as const),
    ...r.cylinders.map((c) => [`cylinder ${c.cylinder}`, c.misses] as const),
    ["at random", r.atRandom],
    ["no misfire", r.noMisfire],
    ["something else", r.somethingElse],
    ["conflict", r.fit.conflictDb],
  ]);
}

function apart(a: Ranking, b: Ranking): number {
  const [left, right] = [numbers(a), numbers(b)];
  expect(Object.keys(right).sort()).toEqual(Object.keys(left).sort());
  return Math.max(...Object.entries(left).map(([key, x]) => Math.abs(x - (right[key] as number))));
}

const OBSERVED: readonly Finding[] = [
  { finding: "lamp", answer: "blinking" },
  { finding: "codes", answer: ["P0302", "P0303"] },
  { finding: "plug.look", cylinder: 2, answer: "wet-petrol" },
  { finding: "work", answer: ["wash"] },
  { finding: "regime.weather", answer: "wet-only" },
  { finding: "spark", cylinder: 3, answer: "weak" },
];

describe("the order of the answers", () => {
  it.each([four, three, withDistributor])("does not matter ($name)", (profile) => {
    const shuffled = findingsFor(profile, 10).chain((findings) =>
      fc.tuple(
        fc.constant(findings),
        fc.shuffledSubarray(findings, { minLength: findings.length }),
      ),
    );
    fc.assert(
      fc.property(shuffled, ([findings, others]) => {
        expect(apart(rank(profile, findings, exact), rank(profile, others, exact))).toBeLessThan(
          CLOSE,
        );
      }),
      { numRuns: 8, seed: SEED },
    );
  });

  it("decides only between two answers to one question: the later holds", () => {
    const before: Finding = { finding: "lamp", answer: "off" };
    const corrected = rank(four, [before, ...OBSERVED], exact);
    expect(apart(corrected, rank(four, OBSERVED, exact))).toBeLessThan(CLOSE);
    const spoilt = rank(four, [...OBSERVED, before], exact);
    expect(apart(spoilt, rank(four, OBSERVED, exact))).toBeGreaterThan(1e-4);
  });
});

/** A finding that no fault of the catalogue has anything to say about. */
function idle(row: Partial<FindingRow>): FindingRow {
  return {
    id: "idle",
    ask: "What is the weather like in another town?",
    topic: "history",
    kind: "choice",
    scope: "engine",
    grounds: { basis: "memory", confidence: "low" },
    options: { fair: { say: "Fair", chance: 0.7 }, foul: { say: "Foul", chance: 0.3 } },
    ...row,
  };
}

function asking(row: FindingRow): Knowledge {
  return { ...KNOWLEDGE, findings: new Map([...KNOWLEDGE.findings, [row.id, row]]) };
}

describe("an answer with no weight", () => {
  const before = rank(four, OBSERVED, exact);

  it.each([
    { kind: "choice", scope: "engine", answer: "foul" },
    { kind: "choice", scope: "cylinder", answer: "foul" },
    { kind: "presence", scope: "engine", answer: "yes" },
    { kind: "presence", scope: "engine", answer: "no" },
    { kind: "several", scope: "engine", answer: ["foul"] },
    { kind: "several", scope: "engine", answer: [] },
  ] as const)("changes nothing: $kind of the $scope, $answer", ({ kind, scope, answer }) => {
    const knowledge = asking(idle({ kind, scope }));
    const at = scope === "cylinder" ? { cylinder: 1 } : {};
    const more = [...OBSERVED, { finding: "idle", answer, ...at }];
    expect(apart(before, rank(four, more, { ...exact, knowledge }))).toBeLessThan(CLOSE);
  });

  it("changes nothing either when every fault gives it exactly its usual chance", () => {
    const usual = { fair: 0.7, foul: 0.3 };
    const knowledge: Knowledge = {
      ...asking(idle({})),
      faults: KNOWLEDGE.faults.map((fault) => ({
        ...fault,
        signs: [...fault.signs, { finding: "idle", gives: usual }],
      })),
    };
    const more = [...OBSERVED, { finding: "idle", answer: "foul" }];
    expect(apart(before, rank(four, more, { ...exact, knowledge }))).toBeLessThan(CLOSE);
  });

  it("has weight as soon as one fault makes it a hundredth likelier", () => {
    const [first, ...others] = KNOWLEDGE.faults;
    if (!first) throw new Error("there are faults");
    const knowledge: Knowledge = {
      ...asking(idle({})),
      faults: [
        { ...first, signs: [...first.signs, { finding: "idle", gives: { foul: 0.303 } }] },
        ...others,
      ],
    };
    const more = [...OBSERVED, { finding: "idle", answer: "foul" }];
    expect(apart(before, rank(four, more, { ...exact, knowledge }))).toBeGreaterThan(1000 * CLOSE);
  });
});

/** Probability of the odds in decibans. */
function probabilityOf(db: number): number {
  return 1 / (1 + 10 ** (-db / 10));
}

/** The likeliest, the tenth and the least likely fault of a ranking. */
function spread({ ranking }: Ranking): readonly FaultAt[] {
  return [ranking[0], ranking[9], ranking.at(-1)].flatMap((f) => (f ? [f] : []));
}

// Sums on the way may leave this much probability unsearched (target of the ledger: 1e-4).
const LEDGER_LEAVES_OUT = 1e-4;

describe("the ledger", () => {
  const ranking = rank(four, OBSERVED, exact);

  it.each(spread(ranking))("adds up exactly: $fault at $place", (of) => {
    const { priorDb, lines, posteriorDb } = why(four, OBSERVED, of);
    expect(lines).toHaveLength(OBSERVED.length);
    const sum = lines.reduce((total, line) => total + line.weightDb, priorDb);
    expect(Math.abs(sum - posteriorDb)).toBeLessThan(CLOSE);
  });

  it.each(spread(ranking))("begins and ends at the ranking's odds: $fault at $place", (of) => {
    const { priorDb, posteriorDb } = why(four, OBSERVED, of);
    const told = (r: Ranking): number =>
      r.ranking.find((f) => f.fault === of.fault && f.place === of.place)?.probability ?? -1;
    const ended = Math.abs(probabilityOf(posteriorDb) - told(ranking));
    expect(ended).toBeLessThan(LEDGER_LEAVES_OUT);
    const began = Math.abs(probabilityOf(priorDb) - told(rank(four, [], exact)));
    expect(began).toBeLessThan(LEDGER_LEAVES_OUT);
  });

  it("has the same total and the same withdrawals in any order, but not the same steps", () => {
    const [of] = spread(ranking);
    if (!of) throw new Error("there is a ranking");
    const one = why(four, OBSERVED, of);
    const other = why(four, [...OBSERVED].reverse(), of);
    expect(Math.abs(one.posteriorDb - other.posteriorDb)).toBeLessThan(CLOSE);
    const reversed = [...other.lines].reverse();
    one.lines.forEach((line, i) => {
      expect(reversed[i]?.finding).toBe(line.finding);
      expect(Math.abs((reversed[i]?.withoutDb ?? 0) - line.withoutDb)).toBeLessThan(CLOSE);
    });
    const steps = one.lines.map((line, i) =>
      Math.abs(line.weightDb - (reversed[i]?.weightDb ?? 0)),
    );
    expect(Math.max(...steps)).toBeGreaterThan(0.01);
  });
});
