// Is every kind of screen free of what axe can find, in the light and in the dark, and are targets
// large enough for a thumb?
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import {
  CHROMIUM,
  DESK,
  giveFile,
  openPage,
  overhang,
  PHONE,
  RANKING,
  ranked,
  see,
  settled,
  smallTargets,
  useStage,
  violationsInBoth,
  WAYS,
} from "../helper/page.ts";

const stage = useStage();

/** Opens a case on the first invented engine, with a few answers. */
async function withAnswers(page: Page): Promise<void> {
  await giveFile(page, {
    halfOrderCase: 1,
    engine: "demo.dunlin",
    findings: [
      { finding: "lamp", answer: "steady" },
      { finding: "complaint.main", answer: "shakes-at-idle" },
      { finding: "codes", answer: ["P0302"] },
    ],
  });
  await ranked(page);
}

/** Each with what shows, beside nothing of the one before it, that it is whole. */
const FIRST = ["the first screen", "#/", ".start-ways .number"] as const;
const WAYS_IN = [
  FIRST,
  ["the layout", "#/pick/6", 'a[href="#/pick/6/v"]'],
  ["the ignition", "#/pick/6/v", 'a[href="#/pick/6/v/rail"]'],
  ["the firing order", "#/pick/6/v/rail", "button.option.has-picture"],
  ["the invented engines", "#/demo", 'button.option:has-text("Dunlin")'],
  ["an engine of one's own", "#/sketch", "form.sketch"],
] as const;
const SCREENS = [
  ["a question", "#/question/lamp", ".question .place"],
  ["the question of codes", "#/question/codes", "#codes-help"],
  [
    "a question with several answers",
    "#/question/work",
    '.question:has-text("last weeks") .option',
  ],
  ["a question of each cylinder", "#/question/plug.gap", ".question:has(.target) .figure input"],
  ["the question of counts", "#/question/counts", ".counts input"],
  ["the ranking", "#/ranking", RANKING],
  ["all findings", "#/add", 'summary:text-is("Complaint")'],
  ["the answers", "#/answers", ".answers > li"],
  ["a check", "#/check/check.plugs-out", ".check .results .option"],
  ["other checks", "#/checks", ".column .links a"],
  ["all cases", "#/cases", ".cases > li"],
  ["the way to everything else", "#/more", ".unit-panel"],
  ["what is at hand", "#/hand", "fieldset.choices"],
  [
    "a hidden fault",
    "#/practice/generic.i4.1342.rail/5/check.counts",
    ".practice:has(.practice-state:empty) .practice-known",
  ],
] as const;

const TARGETS = "button, summary, input:not(.vh), select, .links a, .foot a, .head a";

describe.skipIf(!CHROMIUM).each(WAYS)("on a %s", (_, options) => {
  it("the ways in have no violation, light or dark", async () => {
    const page = await openPage(stage, options);
    for (const [name, hash, whole] of WAYS_IN) {
      await see(stage, page, hash, whole);
      expect(await violationsInBoth(page), name).toEqual([]);
    }
  });

  it("a case has no violation, light or dark, and nothing to tap is too small", async () => {
    const page = await openPage(stage, options);
    await withAnswers(page);
    // As tall as any screen of the case, or what scrolls under the foot would count as covered.
    await page.setViewportSize({ width: page.viewportSize()?.width ?? 360, height: 4000 });
    for (const [name, hash, whole] of SCREENS) {
      await see(stage, page, hash, whole);
      expect(await violationsInBoth(page), name).toEqual([]);
      expect(await smallTargets(page, TARGETS, "both"), name).toEqual([]);
    }
    await see(stage, page, "#/ranking", RANKING);
    if (options.isMobile) await page.locator(".ranked-row > .name-of").first().click();
    await page.locator(".ledger tfoot").waitFor();
    expect(await violationsInBoth(page), "the ledger").toEqual([]);
  });
});

describe.skipIf(!CHROMIUM)("for who asks for it", () => {
  it("nothing moves by itself", async () => {
    const page = await openPage(stage, { ...PHONE, reducedMotion: "reduce" });
    await withAnswers(page);
    for (const [name, hash, whole] of SCREENS) {
      await see(stage, page, hash, whole);
      await settled(page);
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
    for (const [name, hash, whole] of [FIRST, ...SCREENS]) {
      await see(stage, page, hash, whole);
      await settled(page);
      expect(await overhang(page), name).toBeLessThanOrEqual(0);
    }
  });

  it("the drawings take the reader's own colours, and so do the bars", async () => {
    const page = await openPage(stage, { ...DESK, forcedColors: "active", colorScheme: "dark" });
    await withAnswers(page);
    await page.locator(".picture .dial .scale").waitFor({ state: "attached" });
    await settled(page);
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
