// Does each way lead back to where it came from, and does the page say what a button will do?
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { CHROMIUM, DESK, openPage, openStage, PHONE, ranked, type Stage } from "../helper/page.ts";

let stage: Stage;
beforeAll(async () => {
  if (CHROMIUM) stage = await openStage();
});
afterAll(() => stage?.close());

async function begin(page: Page): Promise<void> {
  await page.goto(`${stage.address}#/demo`);
  await page.getByRole("button", { name: /Dunlin/ }).tap();
  await page.getByRole("button", { name: "On, steady" }).tap();
  await page.getByRole("heading", { name: "What does the engine do?" }).waitFor();
}

async function screen(page: Page, hash: string): Promise<void> {
  await page.goto(`${stage.address}${hash}`);
  await page.locator("h1").first().waitFor();
}

describe.skipIf(!CHROMIUM)("a way", () => {
  it("from the answers into a question leads back to the answers", async () => {
    const page = await openPage(stage, PHONE);
    await begin(page);
    await screen(page, "#/answers");
    await page.locator(".answers a").tap();
    await page.getByRole("button", { name: "Blinking now" }).tap();
    await page.getByRole("heading", { name: "Answers" }).waitFor();
    expect(await page.locator(".answers").innerText()).toContain("Blinking now");
    await page.locator(".answers a").tap();
    await page.locator(".foot").getByRole("link", { name: "Back" }).tap();
    await page.getByRole("heading", { name: "Answers" }).waitFor();
  });

  it("to another engine keeps every answer", async () => {
    const page = await openPage(stage, PHONE);
    await begin(page);
    await screen(page, "#/answers");
    await page.getByRole("link", { name: "Change the engine" }).tap();
    await page.getByRole("link", { name: "In one row" }).tap();
    await page.getByRole("link", { name: /^A coil on each plug/ }).tap();
    await page.getByRole("button", { name: /^1-3-4-2/ }).tap();
    await ranked(page);
    await page.getByRole("link", { name: "Answers (1)" }).first().waitFor();
  });

  it("out of every question of the engine is there: back, and can't tell", async () => {
    const page = await openPage(stage, PHONE);
    await screen(page, "#/pick/4/inline");
    await page.getByRole("button", { name: "Can't tell" }).tap();
    await page.getByRole("link", { name: "Go on with a coil on each plug" }).tap();
    await page.getByRole("heading", { name: "In which order do they fire?" }).waitFor();
    for (const heading of ["How do the plugs get their spark?", "How do the cylinders stand?"]) {
      await page.getByRole("link", { name: "Back" }).tap();
      await page.getByRole("heading", { name: heading }).waitFor();
    }
    await page.getByRole("link", { name: "Back" }).tap();
    await page.getByRole("heading", { name: "How many cylinders has it?" }).waitFor();
  });
});

describe.skipIf(!CHROMIUM)("a button", () => {
  it("that complained of a figure is quiet again once the figure is mended", async () => {
    const page = await openPage(stage, PHONE);
    await begin(page);
    await screen(page, "#/question/voltage/answers");
    const field = page.locator(".figure input");
    await field.fill("twelve");
    await page.getByRole("button", { name: "Use", exact: true }).tap();
    const wrong = page.getByText(/^Write a number/);
    await wrong.waitFor();
    await field.fill("12.4");
    expect(await wrong.count()).toBe(0);
  });

  it("for what is at hand keeps it, also in the case", async () => {
    const page = await openPage(stage, PHONE);
    await begin(page);
    await screen(page, "#/hand");
    await page.getByRole("button", { name: "At the roadside" }).tap();
    await page.getByRole("button", { name: "hand tools" }).tap();
    await page.getByLabel("An hour of your own time").fill("twenty");
    await page.getByText(/^Write a number, such as 25/).waitFor();
    await page.getByLabel("An hour of your own time").fill("20");
    await page.getByLabel("An hour of your own time").blur();
    await page.reload();
    const isPressed = (name: string): Promise<string | null> =>
      page.getByRole("button", { name }).getAttribute("aria-pressed");
    expect(await isPressed("At the roadside")).toBe("true");
    expect(await isPressed("hand tools")).toBe("true");
    expect(await page.getByLabel("An hour of your own time").inputValue()).toBe("20");
  });
});

describe.skipIf(!CHROMIUM)("on a desk", () => {
  it("the answers of a question are within the first screenful", async () => {
    const page = await openPage(stage, DESK);
    await page.goto(`${stage.address}#/demo`);
    await page.getByRole("button", { name: /Dunlin/ }).click();
    await page.getByRole("button", { name: /^Blinking now/ }).click();
    await screen(page, "#/question/spark");
    const last = page.locator(".question .options .option").last();
    await last.waitFor();
    const box = await last.boundingBox();
    expect((box?.y ?? 9999) + (box?.height ?? 0)).toBeLessThan(800);
  });

  it("nothing is wider than the window at twice the size of text, nor at 320 px", async () => {
    const page = await openPage(stage, { viewport: { width: 320, height: 640 } });
    await page.goto(`${stage.address}#/demo`);
    await page.getByRole("button", { name: /Dunlin/ }).click();
    for (const hash of ["#/question", "#/ranking", "#/answers", "#/cases", "#/hand", "#/pick/4"]) {
      await screen(page, hash);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(over, hash).toBeLessThanOrEqual(0);
    }
  });
});
