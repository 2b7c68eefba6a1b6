// Can a person come from the first screen to a ranking, by thumb on a phone and by keyboard on a desk?
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { CHROMIUM, DESK, openPage, openStage, PHONE, ranked, type Stage } from "../helper/page.ts";

let stage: Stage;
beforeAll(async () => {
  if (CHROMIUM) stage = await openStage();
});
afterAll(() => stage?.close());

const heading = (page: Page): Promise<string> => page.locator("h1.title, h2.title").innerText();

/** Taps something on a screen and waits for the next one. */
async function tapOn(page: Page, name: string | RegExp): Promise<void> {
  const before = await heading(page);
  await page.getByRole("button", { name }).or(page.getByRole("link", { name })).first().tap();
  await page.waitForFunction(
    (old) => document.querySelector("h1.title, h2.title")?.textContent !== old,
    before,
  );
}

describe.skipIf(!CHROMIUM)("a walk from the start to a ranking", () => {
  it("by thumb on a phone", async () => {
    const page = await openPage(stage, PHONE);
    await page.getByRole("link", { name: "6", exact: true }).tap();
    await page.getByRole("heading", { name: "How do the cylinders stand?" }).waitFor();
    await tapOn(page, "In a V");
    await tapOn(page, /^A coil rail/);
    await tapOn(page, /^1-2-3-4-5-6/);
    // The heading may be there a moment before its text.
    await page.getByText("Stopped somewhere safe?").waitFor();
    await tapOn(page, /^Blinking now/);
    // A lamp singles out no part: the foot says so, and names one only when the codes have.
    await page.locator(".foot .so-far", { hasText: "Nothing stands out yet" }).waitFor();
    await tapOn(page, "Can't tell");
    await page.getByRole("button", { name: /^Cylinder 2,/ }).tap();
    await page.getByRole("button", { name: /^Cylinder 5,/ }).tap();
    await tapOn(page, /^These 2/);
    await page.locator(".foot .so-far", { hasText: "Likely so far" }).waitFor();
    await tapOn(page, "Suddenly while driving");
    await tapOn(page, "None of these");
    await page.getByRole("button", { name: "At idle" }).tap();
    await ranked(page);
    const first = page.locator(".ranked-row").first();
    expect(await first.innerText()).toMatch(/2 and 5/);
    const chance = first.locator(".chance");
    expect(await chance.innerText()).toMatch(/\d in \d+/);
    await chance.tap();
    expect(await chance.innerText()).toMatch(/%/);
    await noteResult(page);
  });

  it("by keyboard alone on a desk, each question taking the focus", async () => {
    const page = await openPage(stage, DESK);
    await page.getByRole("link", { name: "4", exact: true }).focus();
    const press = async (name: string | RegExp): Promise<void> => {
      await tabTo(page, name);
      await page.keyboard.press("Enter");
    };
    await page.keyboard.press("Enter");
    await press("In one row");
    await press(/^A coil on each plug/);
    await press(/^1-3-4-2/);
    await press("On, steady");
    await atHeading(page, "What does the engine do?");
    await press("Shakes at idle");
    await atHeading(page, "Which codes are stored or pending?");
    await tabTo(page, /^Cylinder 3,/);
    await page.keyboard.press("Space");
    await press("This is the only code");
    await atHeading(page, "How did it begin?");
    await press("Can't tell");
    await atHeading(page, /Was anything done/);
    await press("None of these");
    await atHeading(page, "When is it worst?");
    await press("At idle");
    await ranked(page);
    expect(await page.locator(".ranked-row").first().innerText()).toMatch(/3/);
  });

  it("without a complaint of the browser", () => {
    expect(stage.complaints).toEqual([]);
  });
});

/** Taps the first result of the check that is offered, and comes back to a ranking that knows it. */
async function noteResult(page: Page): Promise<void> {
  const answers = page.locator(".foot").getByRole("link", { name: /^Answers/ });
  const before = await answers.innerText();
  await page
    .locator(".next")
    .getByRole("link", { name: /^How it is done/ })
    .tap();
  await page.locator(".steps > li").first().waitFor();
  await page.locator(".result .option").first().tap();
  await page.goto(`${stage.address}#/ranking`);
  await ranked(page);
  expect(await answers.innerText()).not.toBe(before);
}

async function atHeading(page: Page, name: string | RegExp): Promise<void> {
  await page.getByRole("heading", { name }).waitFor();
  await page.waitForFunction(() => /^H[12]$/.test(document.activeElement?.tagName ?? ""));
  const focused = await page.evaluate(() => document.activeElement?.textContent ?? "");
  expect(focused).toMatch(name);
}

/** Presses Tab until the thing of this name has the focus. */
async function tabTo(page: Page, name: string | RegExp): Promise<void> {
  const wanted = page.getByRole("button", { name }).or(page.getByRole("link", { name })).first();
  await wanted.waitFor();
  for (let i = 0; i < 120; i++) {
    if (await wanted.evaluate((node) => node === document.activeElement)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`Tab never came to ${String(name)}.`);
}
