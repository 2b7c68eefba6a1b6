// Is every number accounted for, with what it rests on?
import { describe, expect, it } from "vitest";
import { KNOWLEDGE, overlayKnowledge, provenance } from "../../../packages/core/src/index.ts";
import {
  CODE_FAMILIES,
  CODES_FROM_MISFIRE,
  COUNTS_FROM_MISFIRE,
} from "../../../packages/core/src/knowledge/code.ts";

const all = provenance(KNOWLEDGE);
const at = (path: string) => all.numbers.find((number) => number.path === path);

describe("provenance", () => {
  it("gives every number a basis and a confidence that exist", () => {
    const odd = all.numbers.filter(
      ({ grounds }) => !(grounds.basis in all.byBasis && grounds.confidence in all.byConfidence),
    );
    expect(odd).toEqual([]);
  });

  it("misses no number of the tables, counted in another way", () => {
    const { faults, somethingElse, findings, checks, repairs, access, company, cautions } =
      KNOWLEDGE;
    // What is first asked is an order, no claim.
    const asked = [...findings.values()].map(({ first, ...row }) => row);
    expect(all.byTable.faults.total).toBe(count([...faults, somethingElse]));
    expect(all.byTable.findings.total).toBe(count(asked));
    expect(all.byTable.checks.total).toBe(count(checks));
    expect(all.byTable.repairs.total).toBe(count(repairs));
    expect(all.byTable.access.total).toBe(count(access));
    expect(all.byTable.codes.total).toBe(count([CODE_FAMILIES, CODES_FROM_MISFIRE]));
    expect(all.byTable.counts.total).toBe(count(COUNTS_FROM_MISFIRE));
    expect(count([company, cautions])).toBe(0);
    expect(all.byTable.prior.total).toBe(1);
  });

  it("adds up, by table, by basis and by confidence", () => {
    expect(all.total).toBe(all.numbers.length);
    expect(sum(Object.values(all.byTable).map(({ total }) => total))).toBe(all.total);
    for (const tally of [all, ...Object.values(all.byTable)]) {
      expect(sum(Object.values(tally.byBasis))).toBe(tally.total);
      expect(sum(Object.values(tally.byConfidence))).toBe(tally.total);
    }
  });

  it("names each number once", () => {
    expect(new Set(all.numbers.map(({ path }) => path)).size).toBe(all.total);
  });

  it("takes the nearest grounds: of the block, else of the row", () => {
    expect(at("faults.coil.half-dead.risks.plug.type.times.other-electrode")).toEqual({
      table: "faults",
      path: "faults.coil.half-dead.risks.plug.type.times.other-electrode",
      value: 2,
      grounds: { basis: "common practice", confidence: "low" },
    });
    expect(at("faults.coil.half-dead.shares.rail")).toMatchObject({
      value: 93,
      grounds: { basis: "memory", confidence: "low" },
    });
    expect(at("prior.two-faults.share")?.value).toBe(KNOWLEDGE.twoFaultsShare);
  });

  it("moves exactly the numbers of an overlay to its grounds", () => {
    const grounds = { basis: "published", confidence: "high", source: "Our books" } as const;
    const changed = overlayKnowledge(KNOWLEDGE, {
      grounds,
      twoFaultsShare: 0.1,
      faults: {
        "coil.half-dead": {
          shares: { rail: 120 },
          reach: { group: 0.95, own: 0.05 },
          shows: 0.9,
          regimes: { wet: 0.5 },
          risks: [
            { finding: "plug.type", times: { "other-electrode": 1.5 } },
            { finding: "mist", times: { yes: 1.2 } },
          ],
          signs: [{ finding: "spark", gives: { none: 0.85 } }],
          wears: [{ fault: "plug.fouled", times: 2 }],
        },
      },
      checks: { "check.codes": { minutes: 9 } },
      repairs: { "repair.rail": { minutes: 12, works: { "coil.weak": 0.9 } } },
    });
    const after = provenance(changed);
    const ours = after.numbers.filter((number) => number.grounds === grounds);
    expect(ours.map(({ path }) => path)).toEqual([
      "prior.two-faults.share",
      "faults.coil.half-dead.shares.rail",
      "faults.coil.half-dead.reach.group",
      "faults.coil.half-dead.reach.own",
      "faults.coil.half-dead.shows",
      "faults.coil.half-dead.regimes.wet",
      "faults.coil.half-dead.risks.plug.type.times.other-electrode",
      "faults.coil.half-dead.risks.mist.times.yes",
      "faults.coil.half-dead.signs.spark.gives.none",
      "faults.coil.half-dead.wears.plug.fouled.times",
      "checks.check.codes.minutes",
      "repairs.repair.rail.mends.coil.weak.works",
      "repairs.repair.rail.minutes",
    ]);
    expect(after.byBasis.published).toBe(ours.length);
  });
});

/** Numbers in a value, however deep. */
function count(value: unknown): number {
  let numbers = 0;
  JSON.stringify(value, (_, inner: unknown) => {
    if (typeof inner === "number") numbers += 1;
    return inner;
  });
  return numbers;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
