// Is every kind of screen free of what axe can find, in the light and in the dark, and are targets
// large enough for a thumb?
import type { BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import {
  CHROMIUM,
  DESK,
  openPage,
  openStage,
  PHONE,
  ranked,
  type Stage,
  violations,
} from "../helper/page.ts";

let stage: Stage;
beforeAll(async () => {
  if (CHROMIUM) stage = await openStage();
});
afterAll(() => stage?.close());

/** Opens the first invented engine and answers a few questions. */
async function withAnswers(page: Page): Promise<void> {
  await page.goto(`${stage.address}#/demo`);
  await page.getByRole("button", { name: /Dunlin/ }).click();
  await page.getByRole("button", { name: "On, steady" }).click();
  await page.getByRole("button", { name: "Shakes at idle" }).click();
  await page.getByRole("button", { name: /^Cylinder 2,/ }).click();
  await page.getByRole("button", { name: /^This is the only/ }).click();
  await page.getByRole("heading", { name: "How did it begin?" }).waitFor();
  await page.goto(`${stage.address}#/ranking`);
  await ranked(page);
}

const SCREENS: readonly (readonly [string, string])[] = [
  ["a question", "#/question/lamp"],
  ["the question of codes", "#/question/codes"],
  ["a question with several answers", "#/question/work"],
  ["a question of each cylinder", "#/question/plug.gap"],
  ["the question of counts", "#/question/counts"],
  ["the ranking", "#/ranking"],
  ["all findings", "#/add"],
  ["the answers", "#/answers"],
  ["a check", "#/check/check.plugs-out"],
  ["other checks", "#/checks"],
  ["all cases", "#/cases"],
  ["the way to everything else", "#/more"],
  ["what is at hand", "#/hand"],
];

const WAYS: readonly (readonly [string, BrowserContextOptions])[] = [
  ["phone, light", { ...PHONE, colorScheme: "light" }],
  ["phone, dark", { ...PHONE, colorScheme: "dark" }],
  ["desk, light", { ...DESK, colorScheme: "light" }],
  ["desk, dark", { ...DESK, colorScheme: "dark" }],
];

describe.skipIf(!CHROMIUM).each(WAYS)("on a %s screen", (_, options) => {
  it("the ways in have no violation", async () => {
    const page = await openPage(stage, options);
    for (const hash of ["", "#/pick/6", "#/pick/6/v", "#/pick/6/v/rail", "#/demo", "#/sketch"]) {
      await page.goto(`${stage.address}${hash}`);
      await page.locator("h1").waitFor();
      expect(await violations(page), hash).toEqual([]);
    }
  });

  it("a case has no violation, and nothing to tap is too small", async () => {
    const page = await openPage(stage, options);
    await withAnswers(page);
    // As tall as any screen of the case, or what scrolls under the foot would count as covered.
    await page.setViewportSize({ width: page.viewportSize()?.width ?? 360, height: 4000 });
    for (const [name, hash] of SCREENS) {
      await page.goto(`${stage.address}${hash}`);
      await page.locator("h1").first().waitFor();
      expect(await violations(page), name).toEqual([]);
      expect(await smallTargets(page), name).toEqual([]);
    }
    await page.goto(`${stage.address}#/ranking`);
    if (options.isMobile) await page.locator(".ranked-row > .name-of").first().click();
    await page.locator(".ledger tfoot").waitFor();
    expect(await violations(page), "the ledger").toEqual([]);
  });
});

describe.skipIf(!CHROMIUM)("for who asks for it", () => {
  it("nothing moves by itself", async () => {
    const page = await openPage(stage, { ...PHONE, reducedMotion: "reduce" });
    await withAnswers(page);
    for (const [name, hash] of SCREENS) {
      await show(page, hash);
      expect(await moving(page), name).toEqual([]);
    }
  });

  it.each([
    [200, 640],
    [400, 320],
  ])("at %s %% nothing has to be scrolled sideways", async (_, width) => {
    // 1280 px of a desk, so much larger.
    const page = await openPage(stage, { viewport: { width, height: 512 } });
    await withAnswers(page);
    for (const [name, hash] of [["the first screen", ""] as const, ...SCREENS]) {
      await show(page, hash);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(over, name).toBeLessThanOrEqual(0);
    }
  });

  it("the drawings take the reader's own colours, and so do the bars", async () => {
    const page = await openPage(stage, { ...DESK, forcedColors: "active", colorScheme: "dark" });
    await withAnswers(page);
    const seen = await page.evaluate(() => {
      const of = (selector: string): CSSStyleDeclaration => {
        const node = document.querySelector(selector);
        if (!node) throw new Error(`no ${selector}`);
        return getComputedStyle(node);
      };
      return {
        ground: of("html").backgroundColor,
        words: of("h1").color,
        ink: of(".dial .mark:not(.is-suspect)").stroke,
        bar: of(".bar > span").backgroundColor,
      };
    });
    expect(seen.ink).toBe(seen.words);
    expect(seen.ink).not.toBe(seen.ground);
    expect(seen.bar).not.toBe(seen.ground);
  });
});

async function show(page: Page, hash: string): Promise<void> {
  await page.goto(`${stage.address}${hash}`);
  await page.locator("h1").first().waitFor();
}

/** What is animated, glides or scrolls by itself. */
function moving(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll("*")].flatMap((node) => {
      const style = getComputedStyle(node);
      const glides = style.transitionDuration
        .split(",")
        .some((time) => Number.parseFloat(time) > 0);
      const isMoving =
        style.animationName !== "none" || glides || style.scrollBehavior === "smooth";
      return isMoving ? [`${node.tagName} ${node.className}`] : [];
    }),
  );
}

/** Buttons, summaries and links of lists that are lower or narrower than 48 px. */
function smallTargets(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [
      ...document.querySelectorAll(
        "button, summary, input:not(.vh), select, .links a, .foot a, .head a",
      ),
    ]
      .map((node) => ({ node, box: node.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && (box.height < 47.5 || box.width < 47.5))
      .map(({ node, box }) => `${node.textContent} ${box.width} × ${box.height}`),
  );
}
