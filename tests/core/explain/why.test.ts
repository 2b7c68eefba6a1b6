// The ledger of an engine whose firing order is not known: mixed as the ranking is, it ends where the
// ranking stands.
import { describe, expect, it } from "vitest";
import { InputError, rank, why } from "../../../packages/core/src/index.ts";

const engine = { cylinders: 4, ignition: "pack" } as const;
const findings = [
  { finding: "complaint.main", answer: "shakes-at-idle" },
  { finding: "codes", answer: ["P0302", "P0303"] },
  { finding: "cancel", cylinder: 2, answer: "no-drop" },
];
/** The ledger and the ranking may each leave out 1e-4 of all probability. */
const LEFT_OUT = 2e-4;

const probabilityOf = (db: number): number => 1 / (1 + 10 ** (-db / 10));

describe("the ledger of an engine known in part", () => {
  const ranking = rank(engine, findings);
  const before = rank(engine, []);

  it("is about an engine that may be several", () => {
    expect(ranking.orders?.length).toBeGreaterThan(1);
  });

  // The second may sit at a place that only one of the orders has.
  it.each(ranking.ranking.slice(0, 3))(
    "stands where the ranking stands: $fault at $place",
    (of) => {
      const { priorDb, lines, posteriorDb } = why(engine, findings, of);
      expect(Math.abs(probabilityOf(posteriorDb) - of.probability)).toBeLessThan(LEFT_OUT);
      const own = before.ranking.find((row) => row.fault === of.fault && row.place === of.place);
      expect(Math.abs(probabilityOf(priorDb) - (own?.probability ?? -1))).toBeLessThan(LEFT_OUT);
      const sum = lines.reduce((total, { weightDb }) => total + weightDb, priorDb);
      expect(sum).toBeCloseTo(posteriorDb, 9);
    },
  );

  it("refuses a place that none of the engines has, and findings that are none", () => {
    expect(() => why(engine, findings, { fault: "coil.half-dead", place: "coil 1+9" })).toThrow(
      'no fault "coil.half-dead" at "coil 1+9"',
    );
    const bad = [
      { finding: "lamp", answer: "green" },
      { finding: "no-such", answer: "yes" },
    ];
    const [of] = ranking.ranking;
    try {
      why(engine, bad, of as NonNullable<typeof of>);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(InputError);
      const { problems } = error as InputError;
      expect(problems.map(({ path }) => path)).toEqual(["/0/answer", "/1/finding"]);
    }
  });
});
