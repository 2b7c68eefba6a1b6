// Does the thread get fast on what people ask of it?
import { FINDINGS } from "@half-order/core";
import { describe, expect, it } from "vitest";
import { REHEARSAL, think } from "../../packages/web/src/thread.ts";

describe("the rehearsal of the thread", () => {
  it("ranks: nothing in it is refused", () => {
    const { problems, ranking } = think(REHEARSAL);
    expect(problems).toBeUndefined();
    expect(ranking?.ranking.length).toBeGreaterThan(0);
  });

  it("answers first questions, each as its row allows", () => {
    expect(REHEARSAL.findings.length).toBeGreaterThan(1);
    for (const { finding, answer } of REHEARSAL.findings) {
      const row = FINDINGS.find(({ id }) => id === finding);
      expect(row?.first).toBeDefined();
      expect(Object.keys(row?.options ?? {})).toContain(answer);
    }
  });
});
