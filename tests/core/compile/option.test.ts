// An answer that an engine has no part for is not offered, and says nothing when it is given all the same.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type EngineProfile,
  FINDINGS,
  type Finding,
  findingFor,
  IGNITION_KINDS,
  type IgnitionKind,
  KNOWLEDGE,
  rank,
} from "../../../packages/core/src/index.ts";

const engineWith = (ignition: IgnitionKind): EngineProfile => ({
  cylinders: 4,
  ignition,
  firingOrder: [1, 3, 4, 2],
});
const work = (...answer: readonly string[]): readonly Finding[] => [{ finding: "work", answer }];
const row = FINDINGS.find(({ id }) => id === "work");
if (!row) throw new Error("nobody asks what was done");

describe("an option about plug cables", () => {
  it("is offered where cables lead to plugs, and what no older engine alone has everywhere", () => {
    const offered = IGNITION_KINDS.filter(
      (kind) => "leads" in findingFor(engineWith(kind), row).options,
    );
    expect(offered).toEqual(["distributor", "pack", "hybrid"]);
    const others = Object.entries(row.options)
      .filter(([option, { switching, fuelling }]) => {
        const isOlder = switching === "contact-breaker" || fuelling === "carburettor";
        return option !== "leads" && !isOlder;
      })
      .map(([option]) => option);
    for (const kind of ["rail", "coil-per-plug"] as const) {
      expect(Object.keys(findingFor(engineWith(kind), row).options)).toEqual(others);
    }
  });

  it("leaves no trace in the ranking of an engine without cables, and one where there are some", () => {
    for (const kind of ["rail", "coil-per-plug"] as const) {
      expect(rank(engineWith(kind), work("plugs", "leads"))).toEqual(
        rank(engineWith(kind), work("plugs")),
      );
    }
    const pack = engineWith("pack");
    expect(rank(pack, work("plugs", "leads")).ranking).not.toEqual(
      rank(pack, work("plugs")).ranking,
    );
  });

  it("says nothing by being left out where it was not offered", () => {
    const findings = new Map(KNOWLEDGE.findings);
    const { leads: _, ...options } = row.options;
    findings.set("work", { ...row, options });
    const without = { ...KNOWLEDGE, findings };
    expect(rank(engineWith("rail"), work("plugs"))).toEqual(
      rank(engineWith("rail"), work("plugs"), { knowledge: without }),
    );
    expect(rank(engineWith("pack"), work("plugs")).ranking).not.toEqual(
      rank(engineWith("pack"), work("plugs"), { knowledge: without }).ranking,
    );
  });
});

describe("a finding for an engine", () => {
  it("is the row itself, or the row with fewer options in the same order", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...FINDINGS),
        fc.constantFrom(...IGNITION_KINDS),
        (finding, kind) => {
          const here = findingFor(engineWith(kind), finding);
          const names = Object.keys(finding.options);
          const offered = Object.keys(here.options);
          expect(names.filter((name) => offered.includes(name))).toEqual(offered);
          if (offered.length === names.length) expect(here).toBe(finding);
        },
      ),
    );
  });
});
