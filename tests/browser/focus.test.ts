// Does the keyboard see where it is, and come on from there when what it stood on goes away?
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { PAGE } from "../../packages/web/src/text/en.ts";
import { LISTED } from "../../packages/web/src/text/en-answers.ts";
import { MEND } from "../../packages/web/src/text/en-mend.ts";
import { CHROMIUM, DESK, openPage, RANKING, see, settled, useStage, WAYS } from "../helper/page.ts";
import { atHeading, DOC, openCase, PAIR_DOC } from "../helper/room.ts";

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

/** The text of what has the focus; empty where nothing has it. */
function inFocus(page: Page): Promise<string> {
  return page.evaluate(() => {
    const node = document.activeElement;
    return node === document.body ? "" : (node?.textContent ?? "");
  });
}

describe.skipIf(!CHROMIUM).each(WAYS)("the focus on a %s", (_, options) => {
  it("goes on to the next answer when one is removed, and at last to the heading", async () => {
    const page = await openPage(stage, options);
    const others = [
      { finding: "swap.plug", cylinder: 2, answer: "moved" },
      { finding: "plug.look", cylinder: 3, answer: "wet-oil" },
    ] as const;
    await openCase(stage, page, { ...PAIR_DOC, findings: [...others, ...PAIR_DOC.findings] });
    await see(stage, page, "#/answers", ".answers > li");
    await settled(page);
    const remove = page.locator(".answers").getByRole("button", { name: LISTED.remove });
    const change = page.locator(".answers").getByRole("link", { name: LISTED.change });
    const last = await remove.count();
    await remove.nth(last - 2).press("Enter");
    await expect.poll(() => remove.count()).toBe(last - 1);
    expect(await inFocus(page)).toBe(await remove.last().textContent());
    // The last line has nothing below it: the one above takes its place.
    await remove.last().press("Enter");
    await expect.poll(() => remove.count()).toBe(last - 2);
    expect(await inFocus(page)).toBe(await change.last().textContent());
    // Of a first question the line stays, as one that can be answered.
    const asked = (await remove.first().textContent())?.split(": ")[1] ?? "";
    await remove.first().press("Enter");
    await expect.poll(() => remove.count()).toBe(last - 3);
    expect(await inFocus(page)).toBe(`${LISTED.change}: ${asked}`);
  });

  it("goes to the heading when the last repair is taken out", async () => {
    const page = await openPage(stage, options);
    await openCase(stage, page, DOC);
    await see(stage, page, "#/repairs", ".repairs > li");
    await page.getByRole("button", { name: /^Remove/ }).press("Enter");
    await atHeading(page, "Repairs done");
  });

  it("goes to the question whether all is done before it runs right", async () => {
    const page = await openPage(stage, options);
    await openCase(stage, page, PAIR_DOC);
    await see(stage, page, "#/mend/repair.rail", ".ticks > li");
    await page.getByRole("button", { name: MEND.results.cured[0] }).press("Enter");
    await expect.poll(() => inFocus(page)).toMatch(/lines of the list are not ticked/);
  });

  it("is one key and Enter away from the heading of what is asked or done", async () => {
    const page = await openPage(stage, options);
    const skip = page.getByRole("button", { name: PAGE.skip });
    const skipTo = async (heading: string | RegExp): Promise<void> => {
      await settled(page);
      await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
      await skip.focus();
      const box = await skip.boundingBox();
      expect(box?.x).toBeGreaterThanOrEqual(0);
      expect(box?.height).toBeGreaterThanOrEqual(40);
      expect(await skip.evaluate((node) => getComputedStyle(node).clipPath)).toBe("none");
      await skip.press("Enter");
      await atHeading(page, heading);
    };
    await skipTo(/./);
    await openCase(stage, page, PAIR_DOC);
    await see(stage, page, "#/question/work", ".question .option");
    await skipTo(/^Was anything done/);
    expect(page.url()).toContain("#/question/work");
    await see(stage, page, "#/ranking", RANKING);
    await skipTo(options === DESK ? "Next" : /^What it probably is/);
    // Nothing stands before it.
    const first = await page.evaluate(() => document.querySelector("a, button")?.className);
    expect(first).toBe("skip");
  });
});

describe.skipIf(!CHROMIUM)("on a desk", () => {
  it("what is asked or done is a region of its own", async () => {
    const page = await openPage(stage, DESK);
    await openCase(stage, page, PAIR_DOC);
    await see(stage, page, "#/question/work", ".question .option");
    const act = page.getByRole("region", { name: PAGE.act, exact: true });
    await act.getByRole("heading", { name: /^Was anything done/ }).waitFor();
  });
});
