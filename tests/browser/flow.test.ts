// Does each way lead back to where it came from, and does the page say what a button will do?
import { describe, expect, it } from "vitest";
import {
  CHROMIUM,
  DESK,
  openDemo,
  openDemoWithLamp,
  openPage,
  overhang,
  PHONE,
  RANKING,
  ranked,
  see,
  settled,
  tick,
  useStage,
} from "../helper/page.ts";

const stage = useStage();

describe.skipIf(!CHROMIUM)("a way", () => {
  it("from the answers into a question leads back to the answers", async () => {
    const page = await openPage(stage, PHONE);
    await openDemoWithLamp(stage, page);
    await see(stage, page, "#/answers", ".answers a");
    await page.locator(".answers a").first().tap();
    await page.getByRole("button", { name: "Blinking now" }).tap();
    await page.getByRole("heading", { name: "Answers" }).waitFor();
    await expect.poll(() => page.locator(".answers").innerText()).toContain("Blinking now");
    await page.locator(".answers a").first().tap();
    await page.getByRole("heading", { name: "The engine warning lamp?" }).waitFor();
    await page.locator(".foot").getByRole("link", { name: "Back" }).tap();
    await page.getByRole("heading", { name: "Answers" }).waitFor();
  });

  it("to another engine keeps every answer", async () => {
    const page = await openPage(stage, PHONE);
    await openDemoWithLamp(stage, page);
    await see(stage, page, "#/answers", ".answers a");
    await page.getByRole("link", { name: "Change the engine" }).tap();
    await page.getByRole("link", { name: "In one row" }).tap();
    await page.getByRole("link", { name: /^A coil on each plug/ }).tap();
    await page.getByRole("button", { name: /^1-3-4-2/ }).tap();
    await ranked(page);
    await page.getByRole("link", { name: "Answers (1)" }).first().waitFor();
  });

  it("out of every question of the engine is there: back, and can't tell", async () => {
    const page = await openPage(stage, PHONE);
    await see(stage, page, "#/pick/4/inline", "main.outside .is-dashed");
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
    await openDemoWithLamp(stage, page);
    await see(stage, page, "#/question/voltage/answers", ".figure input");
    const field = page.locator(".figure input");
    await field.fill("twelve");
    await page.getByRole("button", { name: "Use", exact: true }).tap();
    const wrong = page.getByText(/^Write a number/);
    await wrong.waitFor();
    await field.fill("12.4");
    await expect.poll(() => wrong.count()).toBe(0);
  });

  it("for what is at hand keeps it, also in the case", async () => {
    const page = await openPage(stage, PHONE);
    await openDemoWithLamp(stage, page);
    await see(stage, page, "#/hand", "fieldset.choices");
    const place = page.getByRole("button", { name: "At the roadside" });
    const tools = page.getByRole("button", { name: "hand tools" });
    const rate = page.getByLabel("An hour of your own time");
    await tick(place);
    await tick(tools);
    await rate.fill("twenty");
    await page.getByText(/^Write a number, such as 25/).waitFor();
    await rate.fill("20");
    await page.getByText(/^Write a number, such as 25/).waitFor({ state: "detached" });
    await rate.blur();
    await page.reload();
    await expect.poll(() => place.getAttribute("aria-pressed")).toBe("true");
    await expect.poll(() => tools.getAttribute("aria-pressed")).toBe("true");
    await expect.poll(() => rate.inputValue()).toBe("20");
  });
});

describe.skipIf(!CHROMIUM)("on a desk", () => {
  it("the answers of a question are within the first screenful", async () => {
    const page = await openPage(stage, DESK);
    await openDemo(stage, page);
    await page.getByRole("button", { name: /^Blinking now/ }).click();
    await page.getByRole("heading", { name: "What does the engine do?" }).waitFor();
    await see(stage, page, "#/question/spark", ".question .target");
    await page.locator(".drive-answer .drive-line").waitFor();
    await settled(page);
    const box = await page.locator(".question .options .option").last().boundingBox();
    expect((box?.y ?? 9999) + (box?.height ?? 0)).toBeLessThan(800);
  });

  it("nothing is wider than the window at twice the size of text, nor at 320 px", async () => {
    const page = await openPage(stage, { viewport: { width: 320, height: 640 } });
    await openDemo(stage, page);
    for (const [hash, whole] of [
      ["#/question", ".question .place"],
      ["#/ranking", RANKING],
      ["#/answers", 'a[href="#/record"]'],
      ["#/cases", ".cases > li"],
      ["#/hand", "fieldset.choices"],
      ["#/pick/4", 'a[href="#/pick/4/inline"]'],
    ] as const) {
      await see(stage, page, hash, whole);
      await settled(page);
      expect(await overhang(page), hash).toBeLessThanOrEqual(0);
    }
  });
});
