// Does what is off the engine follow what was just done to it?
import { CHECKS, FINDINGS, type FindingRow } from "@half-order/core";
import { beforeEach, describe, expect, it } from "vitest";
import { beginCase, openCase } from "../../packages/web/src/state/case.ts";
import { wasRun } from "../../packages/web/src/state/step.ts";
import { closeUp, setOpen, work } from "../../packages/web/src/state/work.ts";

const rowOf = (id: string): FindingRow => {
  const row = FINDINGS.find((each) => each.id === id);
  if (!row) throw new Error(`no finding ${id}`);
  return row;
};

/** "check: finding" of every answer for which the engine ran. */
const run = new Set(
  CHECKS.flatMap((check) =>
    check.yields.filter((id) => wasRun(check, rowOf(id))).map((id) => `${check.id}: ${id}`),
  ),
);

describe("an answer of a check", () => {
  it("tells that the engine ran where something was exchanged, or it was started to compare", () => {
    for (const answer of [
      "check.plug-swap: swap.plug",
      "check.rail-swap: swap.rail",
      "check.pack-swap: swap.rail",
      "check.boot-look: swap.boot",
      "check.wells-dry: wells-dried",
      "check.compression-running: compression.running",
    ]) {
      expect(run, answer).toContain(answer);
    }
  });

  it("tells of no run where it is a look at what is off, or the engine was only cranked", () => {
    for (const answer of [
      "check.plugs-out: plug.look",
      "check.plug-gap: plug.type",
      "check.boot-look: boot.look",
      "check.wells-dry: well.look",
      "check.coil-swap: coil.look",
      "check.spark-rail: spark",
      "check.compression: compression",
      "check.smoke: intake-leak",
    ]) {
      const [check, finding] = answer.split(": ");
      expect(CHECKS.find(({ id }) => id === check)?.yields).toContain(finding);
      expect(run, answer).not.toContain(answer);
    }
  });
});

describe("what is off", () => {
  beforeEach(() => beginCase("demo.tern"));

  it("is nothing once all is back on, which is no change where nothing was off", () => {
    setOpen(["access.rail@engine"]);
    closeUp();
    expect(work.value.open).toEqual([]);
    const before = openCase.value;
    closeUp();
    expect(openCase.value).toBe(before);
  });
});
