// New plugs, and since then one cylinder misses at idle: what was touched comes before what was not. What speaks
// for what after which work is common practice; numbers are from memory, no source.
import { describe, expect, it } from "vitest";
import { type Finding, IGNITION_KINDS, profileById, rank } from "../../packages/core/src/index.ts";

const SINCE: readonly Finding[] = [
  { finding: "onset", answer: "after-work" },
  { finding: "work", answer: ["plugs"] },
  { finding: "plug.age", answer: "under-10" },
  { finding: "codes", answer: ["P0303"] },
  { finding: "complaint.main", answer: "shakes-at-idle" },
  { finding: "regime.worst", answer: "idle" },
];
const TOUCHED = ["plug.gap-wrong", "plug.cracked", "plug.loose", "boot.no-contact"];
const UNTOUCHED = ["intake.runner-leak", "injector.seal-leaking"];

describe.each(IGNITION_KINDS.flatMap((kind) => [`i4.1342.${kind}`, `v6.123456.${kind}`]))(
  "after new plugs on %s",
  (name) => {
    const profile = profileById(`generic.${name}`);
    if (!profile) return;
    const chance = (findings: readonly Finding[], fault: string): number =>
      rank(profile, findings).ranking.find(
        (each) => each.fault === fault && each.place.endsWith(" 3"),
      )?.probability ?? 0;

    it("the plug leads, and what was touched is believed in twice as much as what was not", () => {
      expect(rank(profile, SINCE).ranking[0]?.fault).toBe("plug.gap-wrong");
      const sum = (faults: readonly string[]): number =>
        faults.reduce((total, fault) => total + chance(SINCE, fault), 0);
      expect(sum(TOUCHED)).toBeGreaterThan(2 * sum(UNTOUCHED));
    });

    it("a burn spot in the boot speaks for the boot and against the plug", () => {
      if (profile.ignition === "distributor" || profile.ignition === "pack") return;
      const burnt = [
        ...SINCE,
        { finding: "boot.look", cylinder: 3, answer: "burn" } as const satisfies Finding,
      ];
      const inPart = (findings: readonly Finding[], part: string): number =>
        rank(profile, findings)
          .ranking.filter(({ fault, place }) => fault.startsWith(part) && place === "leg 3")
          .reduce((sum, { probability }) => sum + probability, 0);
      expect(chance(burnt, "boot.leaking")).toBeGreaterThan(3 * chance(SINCE, "boot.leaking"));
      expect(inPart(burnt, "plug.")).toBeLessThan(inPart(SINCE, "plug."));
    });

    it("nothing that was not touched is believed in much more than before the work", () => {
      const before = SINCE.filter(
        ({ finding }) => !["onset", "work", "plug.age"].includes(finding),
      );
      for (const fault of UNTOUCHED)
        expect(chance(SINCE, fault), fault).toBeLessThan(1.5 * chance(before, fault));
    });
  },
);
