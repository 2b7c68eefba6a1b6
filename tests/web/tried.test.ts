// Is it remarked on when two things that were tried speak against one another?
import { FINDINGS, type Finding, type FindingRow } from "@half-order/core";
import { describe, expect, it } from "vitest";
import { disagreement } from "../../packages/web/src/state/tried.ts";

const rowOf = (id: string): FindingRow | undefined => FINDINGS.find((row) => row.id === id);
const told = (...findings: readonly Finding[]): string | undefined => disagreement(findings, rowOf);

const plug = (cylinder: number, answer: string): Finding => ({
  finding: "swap.plug",
  cylinder,
  answer,
});
const boot = (cylinder: number, answer: string): Finding => ({
  finding: "swap.boot",
  cylinder,
  answer,
});

describe("what was tried", () => {
  it("disagrees when one misfire moved with two parts", () => {
    expect(told(plug(2, "moved"), boot(2, "moved"))).toBe("two-parts");
  });

  it("disagrees when one exchange moved it at one place and not at another", () => {
    expect(told(plug(2, "moved"), plug(5, "stayed"))).toBe("two-places");
  });

  it("agrees when it moved with one part and stayed with all others", () => {
    expect(told(plug(2, "moved"), boot(2, "stayed"), boot(5, "stayed"))).toBeUndefined();
    expect(told(plug(2, "moved"), boot(5, "moved"))).toBeUndefined();
  });

  it("goes by what the table calls travelling, whatever its name", () => {
    const renamed = (id: string): FindingRow | undefined => {
      const row = rowOf(id);
      return row?.travels ? { ...row, travels: "went-along" } : row;
    };
    const went = [plug(2, "went-along"), boot(2, "went-along")];
    expect(disagreement(went, renamed)).toBe("two-parts");
    expect(disagreement([plug(2, "moved"), boot(2, "moved")], renamed)).toBeUndefined();
  });

  it("is compared with nothing that was not an exchange", () => {
    const lamp: Finding = { finding: "lamp", answer: "off" };
    expect(told(lamp, plug(2, "moved"))).toBeUndefined();
  });

  it("is told of only where one of the findings asked about has a part in it", () => {
    const findings = [plug(2, "moved"), plug(5, "stayed")];
    expect(disagreement(findings, rowOf, ["swap.boot"])).toBeUndefined();
    expect(disagreement(findings, rowOf, ["swap.plug"])).toBe("two-places");
  });
});
