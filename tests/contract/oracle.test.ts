// The outside solver is confirmed before anything is held against it: networks from the literature, with
// posteriors that were worked out by plain enumeration (and, where a book prints them, agree with it).
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import {
  ALGORITHMS,
  ask,
  type Evidence,
  networkOf,
  type TableNode,
} from "../helper/bayes-oracle.ts";
import { expectPrinted, printed } from "../helper/printed.ts";

interface Published {
  readonly network: string;
  readonly source: string;
  readonly nodes: readonly TableNode[];
  readonly posteriors: readonly {
    readonly given: Evidence;
    readonly of: readonly {
      readonly node: string;
      readonly state: string;
      readonly probability: string;
    }[];
  }[];
  readonly evidence: readonly { readonly given: Evidence; readonly probability: string }[];
}

const FILES = ["asia", "burglary-alarm", "sprinkler", "car-start", "car-starts", "fire"];
const published = FILES.map((file) => {
  const path = join(import.meta.dirname, `../../fixtures/published/${file}.json`);
  return JSON.parse(readFileSync(path, "utf8")) as Published;
});

describe.each(published)("the outside solver on $network", ({ source, nodes, ...network }) => {
  const tables = networkOf(nodes);

  it("works on a network whose source is named and whose rows add up to 1", () => {
    expect(source).not.toBe("");
    for (const { table } of nodes) {
      for (const row of table) expect(row.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
    }
  });

  it.each(Object.entries(ALGORITHMS))("gives every printed posterior by %s", (_, infer) => {
    let asked = 0;
    for (const { given, of } of network.posteriors) {
      for (const { node, state, probability } of of) {
        expectPrinted(ask(infer, tables, { [node]: state }, given), probability);
        asked++;
      }
    }
    expect(asked).toBeGreaterThanOrEqual(5);
  });

  it("gives the probability of the evidence by elimination", () => {
    for (const { given, probability } of network.evidence) {
      expectPrinted(ask(ALGORITHMS.elimination, tables, given), probability);
    }
  });
});

describe("a number that is wrong in its last digit", () => {
  it("is noticed", () => {
    const { value, within } = printed("0.2841718354");
    expect(Math.abs(0.2841718364 - value)).toBeGreaterThan(within);
  });
});
