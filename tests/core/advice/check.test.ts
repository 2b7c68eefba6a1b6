// Where is a check offered? One look at a shared thing is one check at one place.
import { describe, expect, it } from "vitest";
import { checksHere } from "../../../packages/core/src/advice/check.ts";
import { prospectFor } from "../../../packages/core/src/advice/next.ts";
import { type Finding, KNOWLEDGE, profileById } from "../../../packages/core/src/index.ts";

const KINDS = ["distributor", "pack", "rail", "hybrid", "coil-per-plug"] as const;

function offered(kind: string, findings: readonly Finding[]) {
  const profile = profileById(`generic.i4.1342.${kind}`);
  if (!profile) throw new Error(kind);
  return checksHere(prospectFor(profile, findings, {}), findings, []);
}

describe.each(KINDS)("checks on an inline four, %s", (kind) => {
  const here = offered(kind, [{ finding: "codes", answer: ["P0303"] }]);

  it("that look at the whole engine are made once", () => {
    const shared = here.filter(({ row }) =>
      row.yields.some((id) => KNOWLEDGE.findings.get(id)?.scope === "engine"),
    );
    const ids = shared.map(({ row }) => row.id);
    expect(ids.length).toBeGreaterThan(5);
    expect(ids).toEqual([...new Set(ids)]);
  });

  it("that look at one cylinder are made at two places at most, the named one first", () => {
    const plugs = here.filter(({ row }) => row.id === "check.plug-gap");
    expect(plugs).toHaveLength(1);
    const swaps = here.filter(({ row }) => row.id === "check.plug-swap");
    expect(swaps.length).toBeGreaterThan(0);
    expect(swaps.length).toBeLessThanOrEqual(2);
    expect(swaps[0]?.cylinders[0]).toBe(2);
  });
});
