// Is a part exchanged only where a cylinder misses, and is nothing said of an exchange anywhere else?
import { describe, expect, it } from "vitest";
import { checksHere } from "../../../packages/core/src/advice/check.ts";
import { prospectFor } from "../../../packages/core/src/advice/next.ts";
import { profileById } from "../../../packages/core/src/engine/profile-library.ts";
import type { EngineProfile, Finding } from "../../../packages/core/src/index.ts";
import { IGNITION_KINDS, KNOWLEDGE, rank } from "../../../packages/core/src/index.ts";
import { EXCHANGE, exchangesFirst } from "../../../packages/core/src/knowledge/exchange.ts";

const rowOf = (id: string) => KNOWLEDGE.findings.get(id);
const made = KNOWLEDGE.checks.filter((row) => exchangesFirst(row, rowOf));
const IDS = made.map(({ id }) => id);

function engineOf(id: string): EngineProfile {
  const profile = profileById(id);
  if (!profile) throw new Error(id);
  return profile;
}

function offered(profile: EngineProfile, findings: readonly Finding[]) {
  return checksHere(prospectFor(profile, findings, {}), findings, []);
}

/** The exchanges that are asked for, as `swap.plug 5`. */
function asked(profile: EngineProfile, findings: readonly Finding[]): readonly string[] {
  return offered(profile, findings).flatMap(({ looks }) =>
    looks.flatMap(({ look: { row, cylinder } }) =>
      row.travels === undefined ? [] : [`${row.id} ${cylinder}`],
    ),
  );
}

describe("a check that is made to exchange a part", () => {
  it("is every one that says so in its name, and none that only exchanges by the way", () => {
    const named = KNOWLEDGE.checks.filter(({ name }) => name.startsWith("Exchange"));
    expect(IDS).toEqual(named.map(({ id }) => id));
    expect(IDS.length).toBeGreaterThanOrEqual(6);
    expect(IDS).not.toContain("check.boot-look");
  });

  it("is not offered on a distributor engine that shakes when damp, where no cylinder is known to miss", () => {
    const damp: readonly Finding[] = [
      { finding: "complaint.main", answer: "shakes-at-idle" },
      { finding: "onset", answer: "after-wet" },
    ];
    const checks = offered(engineOf("generic.i4.1342.distributor"), damp);
    expect(checks.filter(({ row }) => IDS.includes(row.id))).toEqual([]);
    expect(checks.map(({ row }) => row.id)).toContain("check.cap-off");
  });

  it("is made at the one cylinder of a pair that misses, while a look at the plugs takes both", () => {
    const tern = engineOf("demo.tern");
    const codes: readonly Finding[] = [{ finding: "codes", answer: ["P0305"] }];
    const at = (id: string) =>
      offered(tern, codes)
        .filter(({ row }) => row.id === id)
        .map(({ cylinders }) => cylinders.map((c) => c + 1));
    expect(at("check.plug-swap")).toEqual([[5]]);
    expect(at("check.plugs-out")[0]).toEqual([5, 2]);
    expect(asked(tern, codes).every((each) => each.endsWith(" 5"))).toBe(true);
    expect(asked(tern, codes)).toContain("swap.boot 5");
  });

  it("takes both cylinders where both miss", () => {
    const codes: readonly Finding[] = [{ finding: "codes", answer: ["P0302", "P0305"] }];
    expect(asked(engineOf("demo.tern"), codes)).toEqual(
      expect.arrayContaining(["swap.plug 2", "swap.plug 5"]),
    );
  });

  it("asks, on every engine, only of what serves a cylinder that the ranking holds to miss", () => {
    for (const kind of IGNITION_KINDS) {
      const profile = engineOf(`generic.i4.1342.${kind}`);
      const findings: readonly Finding[] = [
        { finding: "complaint.main", answer: "shakes-at-idle" },
        { finding: "codes", answer: ["P0303"] },
      ];
      const missing = rank(profile, findings).cylinders.filter(
        ({ misses }) => misses > EXCHANGE.leastMisses,
      );
      expect(missing.map(({ cylinder }) => cylinder)).toEqual([3]);
      const at = asked(profile, findings);
      expect(at.length, profile.id).toBeGreaterThan(0);
      expect(at.filter((each) => !each.endsWith(" 3"))).toEqual([]);
    }
  });
});

describe("listening to the injectors", () => {
  it("takes in every cylinder, whichever share a coil: one is judged by the others", () => {
    const codes: readonly Finding[] = [{ finding: "codes", answer: ["P0305"] }];
    const places = offered(engineOf("demo.tern"), codes).filter(
      ({ row }) => row.id === "check.injector-listen",
    );
    expect(places.map(({ cylinders }) => [...cylinders].sort())).toEqual([[0, 1, 2, 3, 4, 5]]);
    expect(places[0]?.looks).toHaveLength(6);
  });
});
