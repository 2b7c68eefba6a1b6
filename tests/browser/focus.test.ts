// Does the keyboard see where it is: does the foot of a phone ever cover what has the focus?
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { CHROMIUM, openPage, RANKING, see, settled, useStage } from "../helper/page.ts";
import { openCase, PAIR_DOC } from "../helper/room.ts";

const stage = useStage();

/** A desk of 1280 × 800 seen at twice the size, one of 1280 × 1024 at four times, a small phone, and one whose letters are set to twice their size. */
const WINDOWS = [
  { width: 640, height: 400, letters: 1 },
  { width: 320, height: 568, letters: 1 },
  { width: 320, height: 256, letters: 1 },
  { width: 360, height: 740, letters: 2 },
] as const;

const SCREENS = [
  ["#/question/work", ".question .option"],
  ["#/question/plug.look", ".question .option"],
  ["#/ranking", RANKING],
  ["#/step/check.plugs-out/2", ".result .option"],
] as const;

/** Things that take the focus on a screen, more than on any. */
const MOST_STEPS = 120;

interface Spot {
  readonly name: string;
  readonly isCovered: boolean;
}

/** What has the focus, and whether its upper or lower edge lies under the foot or outside the window. */
function focused(page: Page): Promise<Spot | undefined> {
  return page.evaluate(() => {
    const node = document.activeElement;
    if (!node || node === document.body) return undefined;
    const { left, right, top, bottom } = node.getBoundingClientRect();
    const x = Math.max(1, Math.min((left + right) / 2, innerWidth - 1));
    const foot = node.closest(".foot") ? null : document.querySelector(".foot");
    const isOn = (y: number): boolean => {
      const over = document.elementFromPoint(x, y);
      return over !== null && !foot?.contains(over);
    };
    // What is higher than the window shows one edge at least.
    const isTall = bottom - top > innerHeight / 2;
    const edges = [isOn(Math.ceil(top) + 1), isOn(Math.floor(bottom) - 1)];
    const isSeen = isTall ? edges.includes(true) : !edges.includes(false);
    const box = `${Math.round(top)} to ${Math.round(bottom)} of ${innerHeight}`;
    return { name: `${node.outerHTML.slice(0, 80)} ${box}`, isCovered: !isSeen };
  });
}

/** Walks through all that takes the focus, one way, and says what of it is covered. */
async function coveredOn(page: Page, key: "Tab" | "Shift+Tab"): Promise<readonly string[]> {
  const covered: string[] = [];
  let steps = 0;
  for (; steps < MOST_STEPS; steps++) {
    await page.keyboard.press(key);
    const spot = await focused(page);
    if (!spot) break;
    if (spot.isCovered) covered.push(`${key}: ${spot.name}`);
  }
  expect(steps).toBeGreaterThan(5);
  return covered;
}

describe.skipIf(!CHROMIUM)("what has the focus", () => {
  it.each(WINDOWS)(
    "is covered by nothing in $width × $height, letters × $letters",
    async ({ letters, ...viewport }) => {
      const page = await openPage(stage, { viewport, bypassCSP: true });
      await openCase(stage, page, PAIR_DOC);
      if (letters !== 1) {
        await page.addStyleTag({ content: `html { font-size: ${100 * letters}% }` });
      }
      for (const [hash, whole] of SCREENS) {
        await see(stage, page, hash, whole);
        await settled(page);
        await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
        expect(await coveredOn(page, "Tab"), hash).toEqual([]);
        expect(await coveredOn(page, "Shift+Tab"), hash).toEqual([]);
      }
    },
  );
});
