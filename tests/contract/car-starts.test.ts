// A car that cranks and does not start: in the published network exactly the faults of pump, distributor and
// plugs are left, and at least one is there. That is what our hypotheses say, so our own posterior must give
// the network's numbers, with nothing left out by the limit of three faults.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { posterior } from "../../packages/core/src/inference/posterior.ts";
import { ALGORITHMS, ask, networkOf, type TableNode } from "../helper/bayes-oracle.ts";
import { noisyOrModel } from "../helper/noisy-or-model.ts";
import { expectPrinted } from "../helper/printed.ts";

interface Network {
  readonly nodes: readonly TableNode[];
  readonly posteriors: readonly {
    readonly given: Readonly<Record<string, string>>;
    readonly of: readonly { readonly node: string; readonly probability: string }[];
  }[];
}

const file = join(import.meta.dirname, "../../fixtures/published/car-starts.json");
const { nodes, posteriors } = JSON.parse(readFileSync(file, "utf8")) as Network;

const CAUSES = { FuelPump: "faulted", Distributor: "faulted", SparkPlugs: "bad" } as const;
const names = Object.keys(CAUSES);
const prior = Object.entries(CAUSES).map(([id, bad]) => {
  const node = nodes.find((each) => each.id === id) as TableNode;
  return node.table[0]?.[node.states.indexOf(bad)] as number;
});
const given = { Starts: "no", EngineCranks: "yes" };
const model = noisyOrModel({ prior, leak: [], link: [[], [], []] }, { present: [], absent: [] });

describe("cranks, does not start", () => {
  it("is a case of which the source prints all three", () => {
    expect(prior).toEqual([0.001, 0.001, 0.0002]);
    expect(nodes.find(({ id }) => id === "Starts")?.parents).toEqual(expect.arrayContaining(names));
  });

  it("is given by our posterior as the network gives it", () => {
    const { fault, unsearched } = posterior(model, { tolerance: 0, most: 3 });
    expect(unsearched).toBe(0);
    const printed = posteriors.find(
      (row) => row.given.EngineCranks === "yes" && row.given.Starts === "no",
    );
    const network = networkOf(nodes);
    names.forEach((id, f) => {
      const text = printed?.of.find(({ node }) => node === id)?.probability;
      if (text !== undefined) expectPrinted(fault[f] as number, text);
      const asked = { [id]: CAUSES[id as keyof typeof CAUSES] };
      const theirs = ask(ALGORITHMS.elimination, network, asked, given);
      expect(Math.abs((fault[f] as number) - theirs)).toBeLessThan(1e-9);
    });
    expect(printed?.of.some(({ node }) => names.includes(node))).toBe(true);
  });

  it("has odds of single faults as they were worked out by hand", () => {
    const { fault } = posterior(model, { tolerance: 0, most: 1 });
    expectPrinted(fault[0] as number, "0.4545785");
    expectPrinted(fault[1] as number, "0.4545785");
    expectPrinted(fault[2] as number, "0.0908430");
  });
});
