// Several cases side by side, two tabs on one case, and steps back and forth: is any answer ever lost?
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { CHROMIUM, DESK, openPage, openStage, PHONE, ranked, type Stage } from "../helper/page.ts";

let stage: Stage;
beforeAll(async () => {
  if (CHROMIUM) stage = await openStage();
});
afterAll(() => stage?.close());

async function begin(page: Page, name: RegExp): Promise<void> {
  await page.goto(`${stage.address}#/demo`);
  await page.getByRole("button", { name }).click();
  await page.getByRole("button", { name: "On, steady" }).click();
  await page.getByRole("heading", { name: "What does the engine do?" }).waitFor();
}

async function screen(page: Page, hash: string): Promise<void> {
  await page.goto(`${stage.address}${hash}`);
  await page.locator("h1").first().waitFor();
}

const names = (page: Page): Promise<readonly string[]> =>
  page
    .locator(".cases .resume")
    .evaluateAll((all) => all.map((node) => node.childNodes[0]?.textContent ?? ""));

describe.skipIf(!CHROMIUM)("cases of this device", () => {
  it("are renamed, copied, saved, deleted and put back", async () => {
    const page = await openPage(stage, PHONE);
    await begin(page, /Dunlin/);
    await begin(page, /Tern/);
    await screen(page, "#/cases");
    expect(await names(page)).toHaveLength(2);
    await page.getByRole("button", { name: /^Rename Tern/ }).tap();
    await page.getByLabel("Name of the case").fill("Red van");
    await page.getByRole("button", { name: "Use this name" }).tap();
    await page.getByRole("button", { name: /^Copy Red van/ }).tap();
    await page.getByRole("button", { name: /^Red van, copy/ }).waitFor();
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save as a file Red van", exact: true }).tap();
    const file = JSON.parse(readFileSync(await (await download).path(), "utf8"));
    expect(file).toMatchObject({ title: "Red van", engine: "demo.tern" });
    await page.getByRole("button", { name: "Delete Red van", exact: true }).tap();
    await page.getByText("Deleted: Red van.").waitFor();
    expect(await names(page)).not.toContain("Red van");
    await page.getByRole("button", { name: "Put it back" }).tap();
    await page.getByRole("button", { name: "Delete Red van", exact: true }).waitFor();
    await page.getByRole("button", { name: /^Dunlin/ }).tap();
    await ranked(page);
    expect(await page.locator(".engine-name").innerText()).toMatch(/Dunlin/);
  });

  it("come up with the one that was worked on, in this tab and in another, and can step back", async () => {
    const page = await openPage(stage, PHONE);
    await begin(page, /Dunlin/);
    await screen(page, "#/cases");
    await page.getByRole("button", { name: /^Copy Dunlin/ }).tap();
    await page.getByRole("button", { name: /^Dunlin.*, copy/ }).waitFor();
    await screen(page, "#/answers");
    await page.reload();
    await page.locator(".engine-name").waitFor();
    expect(await page.locator(".engine-name").innerText()).not.toMatch(/copy/);
    const other = await page.context().newPage();
    await screen(other, "#/answers");
    expect(await other.locator(".engine-name").innerText()).not.toMatch(/copy/);
    await page.getByRole("button", { name: "Undo" }).tap();
    await page.getByText("No answer yet.").waitFor();
    await page.getByRole("button", { name: "Redo" }).tap();
    await page.locator(".answers").getByText("On, steady").waitFor();
  });

  it("take a step back and forth by button and by key", async () => {
    const page = await openPage(stage, DESK);
    await begin(page, /Dunlin/);
    const answers = page.getByRole("link", { name: /^Answers/ });
    expect(await answers.innerText()).toBe("Answers (1)");
    await page.keyboard.press("Control+z");
    expect(await answers.innerText()).toBe("Answers (0)");
    await page.keyboard.press("Control+y");
    expect(await answers.innerText()).toBe("Answers (1)");
    await page.getByRole("button", { name: "Undo" }).click();
    expect(await answers.innerText()).toBe("Answers (0)");
    await page.getByRole("button", { name: "Redo" }).click();
    expect(await answers.innerText()).toBe("Answers (1)");
  });
});

describe.skipIf(!CHROMIUM)("two tabs on one case", () => {
  it("show each other's answers, and say so", async () => {
    const one = await openPage(stage, PHONE);
    await begin(one, /Dunlin/);
    const two = await one.context().newPage();
    await screen(two, "#/question/onset");
    await two.getByRole("button", { name: "Suddenly while driving" }).tap();
    await one.getByText("changed in another tab too").waitFor();
    await screen(one, "#/answers");
    const shown = one.locator(".answers");
    expect(await shown.innerText()).toContain("On, steady");
    expect(await shown.innerText()).toContain("Suddenly while driving");
  });

  it("lose nothing when the one had not heard of the other", async () => {
    const one = await openPage(stage, PHONE);
    await begin(one, /Dunlin/);
    const two = await one.context().newPage();
    // Such as a tab that was asleep: it hears nothing, and finds out when it writes.
    await two.addInitScript(() => {
      Object.defineProperty(globalThis, "BroadcastChannel", { value: undefined });
    });
    await screen(two, "#/question/onset");
    await screen(one, "#/question/lamp");
    await one.getByRole("button", { name: "Blinking now" }).tap();
    await one.getByRole("heading", { name: "What does the engine do?" }).waitFor();
    await two.getByRole("button", { name: "Suddenly while driving" }).tap();
    await two.getByText("changed in another tab too").waitFor();
    await screen(two, "#/answers");
    const shown = await two.locator(".answers").innerText();
    expect(shown).toContain("Blinking now");
    expect(shown).toContain("Suddenly while driving");
  });
});
