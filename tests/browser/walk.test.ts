// Can a person come from the first screen to a ranking, by thumb on a phone and by keyboard on a desk?
import type { Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { PAGE } from "../../packages/web/src/text/en.ts";
import { CHROMIUM, DESK, openPage, PHONE, ranked, tick, useStage } from "../helper/page.ts";
import { atHeading, press, tabTo } from "../helper/room.ts";

const stage = useStage({ keepsPage: true });

/** Taps something on a screen and waits for the next one, by its heading. */
async function tapOn(page: Page, name: string | RegExp, next: string | RegExp): Promise<void> {
  await page.getByRole("button", { name }).or(page.getByRole("link", { name })).first().tap();
  await page.getByRole("heading", { name: next }).first().waitFor();
}

describe.skipIf(!CHROMIUM)("a walk from the start to a ranking", () => {
  it("by thumb on a phone", async () => {
    const page = await openPage(stage, PHONE);
    await page.getByRole("link", { name: "6", exact: true }).tap();
    await page.getByRole("heading", { name: "How do the cylinders stand?" }).waitFor();
    await tapOn(page, "In a V", "How do the plugs get their spark?");
    await tapOn(page, /^A coil rail/, "In which order do they fire?");
    await tapOn(page, /^1-2-3-4-5-6/, "The engine warning lamp?");
    await page.getByText("Stopped somewhere safe?").waitFor();
    await tapOn(page, /^Blinking now/, "What does the engine do?");
    // A lamp singles out no part: the foot says so, and names one only when the codes have.
    await page.locator(".foot .so-far", { hasText: "Nothing stands out yet" }).waitFor();
    await tapOn(page, "Can't tell", "Which codes are stored or pending?");
    await tick(page.getByRole("button", { name: /^Cylinder 2,/ }));
    await tick(page.getByRole("button", { name: /^Cylinder 5,/ }));
    await tapOn(page, /^These 2/, "How did it begin?");
    await page.locator(".foot .so-far", { hasText: "Likely so far" }).waitFor();
    await tapOn(page, "Suddenly while driving", /^Was anything done/);
    await tapOn(page, "None of these", "When is it worst?");
    await page.getByRole("button", { name: "At idle" }).tap();
    await ranked(page);
    // The first look may still give way to the full one: each is to put them first.
    const first = page.locator(".ranked-row").first();
    await expect.poll(() => first.innerText()).toMatch(/2 and 5/);
    const chance = first.locator(".chance");
    await expect.poll(() => chance.innerText()).toMatch(/\d in \d+/);
    await chance.tap();
    await expect.poll(() => chance.innerText()).toMatch(/%/);
    await noteResult(page);
  });

  it("by keyboard alone on a desk, each question taking the focus", async () => {
    const page = await openPage(stage, DESK);
    await page.getByRole("link", { name: "4", exact: true }).press("Enter");
    await atHeading(page, "How do the cylinders stand?");
    await press(page, "link", "In one row");
    await atHeading(page, "How do the plugs get their spark?");
    await press(page, "link", /^A coil on each plug/);
    await atHeading(page, "In which order do they fire?");
    await press(page, "button", /^1-3-4-2/);
    await atHeading(page, "The engine warning lamp?");
    await press(page, "button", "On, steady");
    await atHeading(page, "What does the engine do?");
    await press(page, "button", "Shakes at idle");
    await atHeading(page, "Which codes are stored or pending?");
    await (await tabTo(page, "button", /^Cylinder 3,/)).press("Space");
    await page.getByRole("button", { name: /^Cylinder 3,/, pressed: true }).waitFor();
    await press(page, "button", "This is the only code");
    await atHeading(page, "How did it begin?");
    await press(page, "button", "Can't tell");
    await atHeading(page, /Was anything done/);
    await press(page, "button", "None of these");
    await atHeading(page, "When is it worst?");
    await press(page, "button", "At idle");
    await ranked(page);
    await expect.poll(() => page.locator(".ranked-row").first().innerText()).toMatch(/3/);
  });

  it("without a complaint of the browser", () => {
    expect(stage.complaints).toEqual([]);
  });
});

/** Taps the first result of the check that is offered, and comes back to a ranking that knows it. */
async function noteResult(page: Page): Promise<void> {
  const answers = page.locator(".head").getByRole("link", { name: /^Answers/ });
  const before = await answers.innerText();
  await page.locator(".next:not(.is-planning)").waitFor();
  await page.locator(".foot").getByRole("button", { name: PAGE.next }).tap();
  // What does not scroll into view by itself when it is tapped: a heading.
  await expect.poll(() => isInSight(page.locator(".next .act").first())).toBe(true);
  await page
    .locator(".next:not(.is-planning)")
    .getByRole("link", { name: /^How it is done/ })
    .tap();
  await page.locator(".steps > li").first().waitFor();
  const asked = await page.locator(".result .ask").innerText();
  await page.locator(".result .option").first().tap();
  // The next question, or the ranking after the last one.
  await page.locator(".result .ask", { hasText: asked }).waitFor({ state: "detached" });
  await page.goto(`${stage.address}#/ranking`);
  await ranked(page);
  await expect.poll(() => answers.innerText()).not.toBe(before);
}

/** True where the window shows all of it, above the foot. */
async function isInSight(part: Locator): Promise<boolean> {
  const box = await part.boundingBox();
  const foot = await part.page().locator(".foot").boundingBox();
  return box !== null && foot !== null && box.y >= 0 && box.y + box.height <= foot.y;
}
