// Do the screens of a check say what each result would mean, and does what is off the engine follow the answers?
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { MEND, STEP } from "../../packages/web/src/text/en-mend.ts";
import { CHROMIUM, openPage, PHONE, ranked, see, useStage, violations } from "../helper/page.ts";
import { openCase, PAIR_DOC } from "../helper/room.ts";

const stage = useStage();

const MIST = { finding: "mist", answer: "yes" } as const;
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

describe.skipIf(!CHROMIUM)("a repair after a check", () => {
  it("takes what came off for it as still off, says so, and believes who says no", async () => {
    const page = await opened();
    await see(stage, page, "#/step/check.plugs-out/2+5", ".result .option");
    await page.getByRole("heading", { name: "First this must come off" }).waitFor();
    await page.locator(".result .option").first().tap();
    await page.locator(".given[aria-label] > li").first().waitFor();
    await see(stage, page, "#/mend/repair.rail", ".ticks > li");
    const off = page.locator("section.aside", {
      has: page.getByRole("heading", { name: MEND.opens, exact: true }),
    });
    await off.getByText(MEND.leftOff).waitFor();
    expect(await off.locator("li").count()).toBe(0);
    await off.getByRole("button", { name: STEP.allOn }).tap();
    await off.locator("li", { hasText: "coil rail off the plugs" }).waitFor();
    expect(await off.getByText(MEND.leftOff).count()).toBe(0);
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe("DIV");
  });

  it("says how each fault that it is for is mended", async () => {
    const page = await openPage(stage, PHONE);
    await openCase(stage, page, { ...PAIR_DOC, engine: "demo.lapwing", findings: [MIST] });
    await see(stage, page, "#/mend/repair.cap-dry", ".ticks > li");
    const how = page.locator(".fact", { hasText: "Dry the cap; renew cap and rotor" });
    // Once, though the cap may be cracked at any of its cylinders.
    await expect.poll(() => how.count()).toBe(1);
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
