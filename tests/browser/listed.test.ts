// Do the lists of answers, findings and tools keep their shape, and hold what was said of the car?
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { LISTED } from "../../packages/web/src/text/en-answers.ts";
import { CHECK } from "../../packages/web/src/text/en-check.ts";
import { SHEET } from "../../packages/web/src/text/en-hand-over.ts";
import { PLACE } from "../../packages/web/src/text/en-place.ts";
import { HAND } from "../../packages/web/src/text/en-shelf.ts";
import { CHROMIUM, openPage, see, settled, useStage, violations, WAYS } from "../helper/page.ts";
import { openCase, PAIR_DOC } from "../helper/room.ts";

const stage = useStage();

const NO_PORT = {
  halfOrderCase: 1,
  engine: { cylinders: 4, ignition: "distributor", diagnosticPort: false },
  atHand: { where: "driveway" },
  findings: [{ finding: "complaint.main", answer: "shakes-at-idle" }],
} as const;

/** Left edges of the ways to change an answer, each once. */
async function edges(page: Page): Promise<readonly number[]> {
  const found = page.locator(".answers").getByRole("link", { name: LISTED.change });
  const boxes = await Promise.all((await found.all()).map((each) => each.boundingBox()));
  return [...new Set(boxes.map((box) => Math.round(box?.x ?? Number.NaN)))];
}

describe.skipIf(!CHROMIUM).each(WAYS)("on a %s", (_, options) => {
  it("the ways to change an answer stand below each other", async () => {
    const page = await openPage(stage, options);
    await openCase(stage, page, PAIR_DOC);
    await see(stage, page, "#/answers", ".answers > li");
    await settled(page);
    const lines = page.locator(".answers > li");
    expect(await lines.count()).toBeGreaterThan(PAIR_DOC.findings.length);
    expect(await edges(page)).toHaveLength(1);
  });

  it("a group of findings that was opened is open after one was added", async () => {
    const page = await openPage(stage, options);
    await openCase(stage, page, PAIR_DOC);
    await see(stage, page, "#/add", ".topic");
    const open = page.locator(".topic[open] > summary");
    const [first, second] = [
      page.locator(".topic > summary").nth(2),
      page.locator(".topic > summary").nth(4),
    ];
    await first.click();
    await second.click();
    const names = await open.allInnerTexts();
    expect(names).toHaveLength(2);
    await page.locator(".topic[open] a").first().click();
    await page.locator(".question .option").last().waitFor();
    await page.locator(".question .is-dashed").click();
    await page.locator(".topic").first().waitFor();
    expect(await open.allInnerTexts()).toEqual(names);
    // What was closed stays so.
    await open.first().click();
    await expect.poll(() => open.count()).toBe(1);
    await see(stage, page, "#/answers", ".answers > li");
    await see(stage, page, "#/add", ".topic");
    expect(await open.allInnerTexts()).toEqual(names.slice(1));
  });

  it("a car without a port is said to be one, offered no reader, and can be given a port", async () => {
    const page = await openPage(stage, options);
    await openCase(stage, page, NO_PORT);
    await see(stage, page, "#/hand-over", ".sheet");
    await page.getByText(SHEET.noPort).waitFor();
    await see(stage, page, "#/question", ".question .place");
    await settled(page);
    const light = page.getByRole("button", { name: PLACE.few.light, exact: true });
    const reader = page.getByRole("button", { name: PLACE.few["code reader"], exact: true });
    await light.waitFor();
    expect(await reader.count()).toBe(0);
    await see(stage, page, "#/answers", ".answers > li");
    const line = page.locator(".answers > li", { hasText: LISTED.noPort });
    await line.getByRole("link", { name: LISTED.change }).click();
    const tool = (id: string) =>
      page.getByRole("button", { name: CHECK.tools[id] ?? id, exact: true });
    await tool("light").waitFor();
    await settled(page);
    expect(await tool("code reader").count()).toBe(0);
    expect(await tool("spare coils").count()).toBe(0);
    await page.getByRole("button", { name: HAND.noPort }).click();
    await tool("code reader").waitFor();
    expect(await violations(page)).toEqual([]);
    await page.getByRole("link", { name: HAND.done }).click();
    await page.locator(".answers > li").first().waitFor();
    expect(await line.count()).toBe(0);
  });
});
