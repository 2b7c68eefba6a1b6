// Who has set larger letters: is all of each screen still there, without scrolling sideways?

import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { CHROMIUM, DESK, openPage, PHONE, ready, settled, useStage } from "../helper/page.ts";
import { openCase, PAIR_DOC } from "../helper/room.ts";

const stage = useStage();

const SCREENS = [
  "ranking",
  "question/lamp",
  "question/codes",
  "answers",
  "add",
  "step/check.plugs-out/2",
  "drive",
  "mend/repair.rail",
  "record",
  "hand-over",
  "hand",
  "lesson",
  "demo",
  "more",
];
/** Edges that fall between two pixels. */
const SLACK_PX = 1;

/** Sets what the browser takes for one letter, CSS px; as delivered it is 16. */
async function setLetters(page: Page, px: number): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send("Page.setFontSizes", { fontSizes: { standard: px, fixed: px } });
  await page.reload();
  await ready(page);
}

/** How far a screen reaches over the edge, px, and the size of a letter on it. */
function measured(page: Page): Promise<readonly [over: number, letter: number]> {
  return page.evaluate(() => [
    document.documentElement.scrollWidth - document.documentElement.clientWidth,
    Number.parseFloat(getComputedStyle(document.documentElement).fontSize),
  ]);
}

describe.skipIf(!CHROMIUM)("letters", () => {
  it.each([
    ["half as large again on a phone", 24, PHONE],
    ["twice as large on a phone", 32, PHONE],
    ["twice as large on a desk", 32, DESK],
  ] as const)("%s leave every screen as wide as the window", async (_, px, options) => {
    const page = await openPage(stage, options);
    await openCase(stage, page, PAIR_DOC);
    await setLetters(page, px);
    for (const screen of SCREENS) {
      await page.goto(`${stage.address}#/${screen}`);
      await settled(page);
      const [over, letter] = await measured(page);
      expect(letter, screen).toBe(px);
      expect(over, screen).toBeLessThanOrEqual(SLACK_PX);
    }
  });

  it("twice as large leave a desk one column, and what is said of driving in sight", async () => {
    const page = await openPage(stage, DESK);
    await openCase(stage, page, PAIR_DOC);
    await settled(page);
    expect(await page.locator("main.desk").count()).toBe(1);
    await setLetters(page, 32);
    await settled(page);
    expect(await page.locator("main.desk").count()).toBe(0);
    const verdict = await page.locator(".drive-line").boundingBox();
    expect((verdict?.x ?? 0) + (verdict?.width ?? Number.NaN)).toBeLessThanOrEqual(1280);
    expect((verdict?.y ?? 0) + (verdict?.height ?? Number.NaN)).toBeLessThanOrEqual(800);
  });
});
