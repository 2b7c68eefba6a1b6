// Is nothing lost: by a reload, by leaving the page, by a file that is broken?
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import {
  CHROMIUM,
  giveFile,
  openDemoWithLamp,
  openPage,
  PHONE,
  ranked,
  savedBy,
  see,
  useStage,
} from "../helper/page.ts";

const stage = useStage();

async function begin(): Promise<Page> {
  const page = await openPage(stage, PHONE);
  await openDemoWithLamp(stage, page);
  return page;
}

const save = (page: Page): Promise<string> =>
  savedBy(page, () => page.getByRole("button", { name: "Save as a file" }).tap());

describe.skipIf(!CHROMIUM)("a case", () => {
  it("survives a reload, with the screen that was open", async () => {
    const page = await begin();
    await page.reload();
    await page.getByRole("heading", { name: "What does the engine do?" }).waitFor();
    await page.getByRole("link", { name: "Answers (1)" }).tap();
    await expect.poll(() => page.locator(".answers").innerText()).toContain("On, steady");
  });

  it("can be changed and taken back, and is found again on the first screen", async () => {
    const page = await begin();
    await see(stage, page, "#/answers", ".answers > li");
    await page.getByRole("button", { name: /^Remove/ }).tap();
    await page.getByText("No answer yet.").waitFor();
    await page.getByRole("link", { name: "Another case" }).tap();
    await page.getByRole("button", { name: /^Dunlin/ }).waitFor();
  });

  it("goes out as a file and comes in again", async () => {
    const page = await begin();
    await see(stage, page, "#/answers", ".answers > li");
    const text = await save(page);
    expect(JSON.parse(text)).toMatchObject({
      halfOrderCase: 1,
      engine: "demo.dunlin",
      findings: [{ finding: "lamp", answer: "steady" }],
    });
    const other = await openPage(stage, PHONE);
    await giveFile(other, text);
    await ranked(other);
    await other.getByRole("link", { name: "Answers (1)" }).first().waitFor();
  });

  it("loses nothing that its file held, and warns at once of a blinking lamp", async () => {
    const file = {
      halfOrderCase: 1,
      title: "Shakes since Tuesday",
      note: "The rail was off.",
      engine: "demo.dunlin",
      findings: [{ finding: "lamp", answer: "blinking" }],
    };
    const page = await openPage(stage, PHONE);
    await giveFile(page, file);
    await ranked(page);
    await page
      .locator(".caution > p")
      .getByText(/A blinking lamp means/)
      .waitFor();
    await see(stage, page, "#/question/onset", ".question .option");
    await page
      .locator(".caution > p")
      .getByText(/A blinking lamp means/)
      .waitFor();
    await see(stage, page, "#/answers", ".answers > li");
    expect(JSON.parse(await save(page))).toEqual(file);
  });

  it.each([
    ["that is no JSON", "{ cylinders", /not JSON: at line 1, column 3/],
    ["that is no case", '{"halfOrderCase":1}', /engine/],
    ["with an engine that cannot be", caseOn({ cylinders: 0, ignition: "rail" }), /cylinders/i],
    [
      "with a finding nobody knows",
      caseOn("demo.dunlin", [{ finding: "lmap", answer: "off" }]),
      /lmap/,
    ],
  ])("in a file %s is refused with a clear message", async (_, text, message) => {
    const page = await openPage(stage, PHONE);
    await giveFile(page, text);
    await expect.poll(() => page.getByRole("alert").innerText()).toMatch(message);
    expect(new URL(page.url()).hash).toBe("");
  });

  it("that the device refuses to keep is said so, with a way to save it", async () => {
    const page = await openPage(stage, PHONE);
    await page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException("full", "QuotaExceededError");
      };
    });
    await page.evaluate(() => {
      location.hash = "#/demo";
    });
    await page.getByRole("button", { name: /Dunlin/ }).tap();
    const alert = page.getByRole("alert").filter({ hasText: "could not be kept" });
    await alert.waitFor();
    await alert.getByRole("button", { name: "Save as a file" }).waitFor();
  });
});

function caseOn(engine: unknown, findings: readonly unknown[] = []): string {
  return JSON.stringify({ halfOrderCase: 1, engine, findings });
}
