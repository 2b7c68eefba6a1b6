// Is a tool offered only where an engine can do with it?
import { CHECKS, IGNITION_KINDS, type IgnitionKind, type Tool } from "@half-order/core";
import { describe, expect, it } from "vitest";
import { isOfUse } from "../../packages/web/src/state/of-use.ts";

const TOOLS = [...new Set(CHECKS.map(({ tool }) => tool))];

function kindsOf(tool: Tool): readonly IgnitionKind[] {
  return IGNITION_KINDS.filter((ignition) => isOfUse(tool, { cylinders: 4, ignition }, CHECKS));
}

describe("a tool", () => {
  it("is of use on every engine, but what belongs to one kind of ignition", () => {
    const some = TOOLS.filter((tool) => kindsOf(tool).length < IGNITION_KINDS.length);
    expect(some).toContain("spare coils");
    expect(kindsOf("spare coils")).toEqual(["pack", "rail"]);
    for (const tool of some) expect(kindsOf(tool), tool).not.toEqual([]);
  });

  it("that reads codes is of none without a port", () => {
    const engine = { cylinders: 4, ignition: "rail" } as const;
    expect(isOfUse("code reader", engine, CHECKS)).toBe(true);
    expect(isOfUse("code reader", { ...engine, diagnosticPort: false }, CHECKS)).toBe(false);
    expect(isOfUse("light", { ...engine, diagnosticPort: false }, CHECKS)).toBe(true);
  });

  it("that only a repair asks for is never left out", () => {
    const checks = CHECKS.filter(({ tool }) => tool !== "meter");
    expect(isOfUse("meter", { cylinders: 4, ignition: "rail" }, checks)).toBe(true);
  });
});
