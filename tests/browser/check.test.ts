// Do the screens of a check say what each result would mean, and does what is off the engine follow the answers?
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { CHROMIUM, openPage, PHONE, ranked, see, useStage, violations } from "../helper/page.ts";
import { openCase, PAIR_DOC } from "../helper/room.ts";

const stage = useStage();

const PROOF = "then next: the drives that prove it";

async function opened(): Promise<Page> {
  const page = await openPage(stage, PHONE);
  await openCase(stage, page, PAIR_DOC);
  return page;
}

describe.skipIf(!CHROMIUM)("what each result would mean", () => {
  it("stands under its heading, each answer with its question, a cure with its proof", async () => {
    const page = await opened();
    await see(stage, page, "#/step/check.connector-home/2+5", "dl.meaning .fact");
    await page.getByRole("heading", { name: "What each result would mean" }).waitFor();
    const cured = page.locator("dl.meaning .fact", { hasText: "The misfire went away" }).first();
    await expect.poll(() => cured.locator("small").allInnerTexts()).toHaveLength(2);
    const [first = "", second = ""] = await cured.locator("small").allInnerTexts();
    expect(first).toMatch(/^The lock tab/);
    expect(second).toMatch(/^Connector pushed home/);
    expect(await cured.locator("dd").innerText()).toBe(PROOF);
    const others = page.locator("dl.meaning .fact", { hasNotText: "The misfire went away" });
    expect(await others.first().locator("dd").innerText()).toMatch(/^then first: /);
  });

  it("is worked out of every question that is opened, one after the other", async () => {
    const page = await opened();
    await see(stage, page, "#/check/check.connector-home", "details.meaning");
    const headings = page.getByRole("heading", { name: /^What a result would mean/ });
    await expect.poll(() => headings.count()).toBe(2);
    for (const summary of await page.locator("details.meaning > summary").all()) {
      await summary.tap();
    }
    const told = page.locator("details.meaning dd");
    await expect.poll(() => told.count()).toBe(5);
    await expect.poll(async () => (await told.allInnerTexts()).join("\n")).not.toMatch(/Weighing/);
    const says = await told.allInnerTexts();
    expect(says.filter((said) => said === PROOF)).toHaveLength(1);
    expect(says.filter((said) => said.startsWith("then first: "))).toHaveLength(4);
    expect(await violations(page)).toEqual([]);
  });
});

/** What is said to be off, on the screen of all checks. */
async function offNow(page: Page): Promise<number> {
  await see(stage, page, "#/checks", ".links a");
  return page.getByText(/ off now\./).count();
}

describe.skipIf(!CHROMIUM)("what came off for a check", () => {
  it("is off after a look, and back on once the engine ran for an answer", async () => {
    const page = await opened();
    await see(stage, page, "#/step/check.plugs-out/2+5", ".result .option");
    await page.getByRole("heading", { name: "First this must come off" }).waitFor();
    await page.locator(".result .option").first().tap();
    await page.locator(".given[aria-label] > li").first().waitFor();
    expect(await offNow(page)).toBe(1);
    await see(stage, page, "#/step/check.rail-swap", ".result .option");
    await page.locator(".result .option", { hasText: "still there" }).tap();
    await ranked(page);
    expect(await offNow(page)).toBe(0);
  });
});

describe.skipIf(!CHROMIUM)("counts", () => {
  it("are noted once one of them is typed, and never as a row of zeros that nobody read", async () => {
    const page = await opened();
    await see(stage, page, "#/question/counts", ".counts input");
    const use = page.getByRole("button", { name: "Use these counts" });
    expect(await use.count()).toBe(0);
    await page.locator(".counts input").nth(1).fill("0");
    await use.tap();
    await ranked(page);
    await see(stage, page, "#/answers", ".answers > li");
    await page.getByRole("link", { name: /^Change.*Misfire counts/ }).waitFor();
  });
});
