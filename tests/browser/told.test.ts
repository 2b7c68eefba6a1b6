// Is it told why there is nothing to do, and what a proof has shown?
import type { CaseDocument } from "@half-order/core/wire";
import { describe, expect, it } from "vitest";
import { RANKING } from "../../packages/web/src/text/en.ts";
import { STEP } from "../../packages/web/src/text/en-mend.ts";
import { REPAIRED } from "../../packages/web/src/text/en-repaired.ts";
import {
  CHROMIUM,
  DESK,
  openPage,
  PHONE,
  RANKING as RANKED,
  see,
  useStage,
} from "../helper/page.ts";
import { openCase, PAIR_DOC, WHEN } from "../helper/room.ts";

const stage = useStage();

const WAYS = [
  ["phone", PHONE],
  ["desk", DESK],
] as const;

/** Mended, and so many clean drives since. */
function mended(drives: number): CaseDocument {
  return {
    ...PAIR_DOC,
    repairs: [{ repair: "repair.rail", result: "cured", when: WHEN }],
    work: {
      drives: Array.from({ length: drives }, (_, i) => ({
        of: WHEN,
        misfire: "none" as const,
        when: `2026-05-0${i + 2}T09:30:00.000Z`,
      })),
    },
  };
}

describe.skipIf(!CHROMIUM).each(WAYS)("on a %s", (_, options) => {
  it("who has nothing to offer is told which of their answers shuts it out, and changes it", async () => {
    const page = await openPage(stage, options);
    const atHand = { tools: ["light", "hand tools"], skill: 0 } as const;
    await openCase(stage, page, { ...PAIR_DOC, atHand });
    await see(stage, page, "#/ranking", RANKED);
    const next = page.locator(".next");
    await next.getByText(STEP.call).waitFor();
    await next.getByText(STEP.shutOut).waitFor();
    await next.getByText(STEP.youSaid.skill("anyone")).waitFor();
    await next.getByText(STEP.youSaid.tool("a light, hand tools")).waitFor();
    await next.getByRole("link", { name: STEP.changeHand }).click();
    await page.getByRole("button", { name: "a professional" }).click();
    await page.getByRole("link", { name: "Done" }).click();
    await page.locator(RANKED).waitFor();
    await expect.poll(() => next.getByText(STEP.youSaid.skill("anyone")).count()).toBe(0);
  });

  it("a repair that is proven is said to be so, and one that is not is not", async () => {
    const page = await openPage(stage, options);
    await openCase(stage, page, mended(1));
    const line = page.locator(".drive-answer");
    await line.getByText(REPAIRED.unproven).waitFor();
    await openCase(stage, page, mended(6));
    await line.getByText(REPAIRED.proven(6)).waitFor();
    expect(await line.getByText(REPAIRED.unproven).count()).toBe(0);
    await see(stage, page, "#/hand-over", ".sheet");
    await page.locator(".sheet").getByText(REPAIRED.proven(6)).waitFor();
    await see(stage, page, "#/question/onset", ".question .option");
    await line.getByText(REPAIRED.proven(6)).waitFor();
    if (options === PHONE) await page.locator(".foot").getByText(RANKING.proven).waitFor();
    expect(stage.complaints).toEqual([]);
  });
});
