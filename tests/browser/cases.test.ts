// Several cases side by side, two tabs on one case, and steps back and forth: is any answer ever lost?
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import {
  CHROMIUM,
  DESK,
  openDemoWithLamp,
  openPage,
  PHONE,
  ranked,
  savedBy,
  see,
  useStage,
} from "../helper/page.ts";

const stage = useStage();

const names = (page: Page): Promise<readonly string[]> =>
  page
    .locator(".cases .resume")
    .evaluateAll((all) => all.map((node) => node.childNodes[0]?.textContent ?? ""));

describe.skipIf(!CHROMIUM)("cases of this device", () => {
  it("are renamed, copied, saved, deleted and put back", async () => {
    const page = await openPage(stage, PHONE);
    await openDemoWithLamp(stage, page, /Dunlin/);
    await openDemoWithLamp(stage, page, /Tern/);
    await see(stage, page, "#/cases", ".cases > li");
    await expect.poll(() => names(page)).toHaveLength(2);
    await page.getByRole("button", { name: /^Rename Tern/ }).tap();
    await page.getByLabel("Name of the case").fill("Red van");
    await page.getByRole("button", { name: "Use this name" }).tap();
    await page.getByRole("button", { name: /^Copy Red van/ }).tap();
    await page.getByRole("button", { name: /^Red van, copy/ }).waitFor();
    const save = page.getByRole("button", { name: "Save as a file Red van", exact: true });
    const file = JSON.parse(await savedBy(page, () => save.tap()));
    expect(file).toMatchObject({ title: "Red van", engine: "demo.tern" });
    await page.getByRole("button", { name: "Delete Red van", exact: true }).tap();
    await page.getByText("Deleted: Red van.").waitFor();
    await expect.poll(() => names(page)).not.toContain("Red van");
    await page.getByRole("button", { name: "Put it back" }).tap();
    await page.getByRole("button", { name: "Delete Red van", exact: true }).waitFor();
    await page.getByRole("button", { name: /^Dunlin/ }).tap();
    await ranked(page);
    await expect.poll(() => page.locator(".engine-name").innerText()).toMatch(/Dunlin/);
  });

  it("come up with the one that was worked on, in this tab and in another, and can step back", async () => {
    const page = await openPage(stage, PHONE);
    await openDemoWithLamp(stage, page, /Dunlin/);
    await see(stage, page, "#/cases", ".cases > li");
    await page.getByRole("button", { name: /^Copy Dunlin/ }).tap();
    await page.getByRole("button", { name: /^Dunlin.*, copy/ }).waitFor();
    await see(stage, page, "#/answers", ".answers > li");
    await page.reload();
    // The name and the answers are drawn at once: it is the case that came up.
    await page.locator(".answers > li").first().waitFor();
    expect(await page.locator(".engine-name").innerText()).not.toMatch(/copy/);
    const other = await page.context().newPage();
    await see(stage, other, "#/answers", ".answers > li");
    expect(await other.locator(".engine-name").innerText()).not.toMatch(/copy/);
    await page.getByRole("button", { name: "Undo" }).tap();
    await page.getByText("No answer yet.").waitFor();
    await page.getByRole("button", { name: "Redo" }).tap();
    await page.locator(".answers").getByText("On, steady").waitFor();
  });

  it("take a step back and forth by button and by key", async () => {
    const page = await openPage(stage, DESK);
    await openDemoWithLamp(stage, page, /Dunlin/);
    const answers = page.getByRole("link", { name: /^Answers/ });
    const undo = page.getByRole("button", { name: "Undo" });
    const redo = page.getByRole("button", { name: "Redo" });
    const says = (words: string) => expect.poll(() => answers.innerText()).toBe(words);
    await says("Answers (1)");
    await page.keyboard.press("Control+z");
    await says("Answers (0)");
    await page.keyboard.press("Control+y");
    await says("Answers (1)");
    await undo.click();
    await says("Answers (0)");
    await redo.click();
    await says("Answers (1)");
  });
});

/** With the advice on driving above it, which moves the answers down when it comes. */
const WHOLE = "main:has(.drive-answer a) .question .option";

describe.skipIf(!CHROMIUM)("two tabs on one case", () => {
  it("show each other's answers, and say so", async () => {
    const one = await openPage(stage, PHONE);
    await openDemoWithLamp(stage, one, /Dunlin/);
    const two = await one.context().newPage();
    await see(stage, two, "#/question/onset", WHOLE);
    await two.getByRole("button", { name: "Suddenly while driving" }).tap();
    await one.getByText("changed in another tab too").waitFor();
    await see(stage, one, "#/answers", ".answers > li");
    const shown = (): Promise<string> => one.locator(".answers").innerText();
    await expect.poll(shown).toContain("On, steady");
    await expect.poll(shown).toContain("Suddenly while driving");
  });

  it("lose nothing when the one had not heard of the other", async () => {
    const one = await openPage(stage, PHONE);
    await openDemoWithLamp(stage, one, /Dunlin/);
    const two = await one.context().newPage();
    // Such as a tab that was asleep: it hears nothing, and finds out when it writes.
    await two.addInitScript(() => {
      Object.defineProperty(globalThis, "BroadcastChannel", { value: undefined });
    });
    await see(stage, two, "#/question/onset", WHOLE);
    await see(stage, one, "#/question/lamp", ".question .place");
    await one.getByRole("button", { name: "Blinking now" }).tap();
    await one.getByRole("heading", { name: "What does the engine do?" }).waitFor();
    await two.getByRole("button", { name: "Suddenly while driving" }).tap();
    await two.getByText("changed in another tab too").waitFor();
    await see(stage, two, "#/answers", ".answers > li");
    const shown = (): Promise<string> => two.locator(".answers").innerText();
    await expect.poll(shown).toContain("Blinking now");
    await expect.poll(shown).toContain("Suddenly while driving");
  });
});
