// One case is one document: does a broken file leave it alone, does all of it go and come back, and does the work on
// the engine travel with it?
import { PUT_BACK } from "@half-order/core";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { CHROMIUM, DESK, openPage, PHONE, savedBy, see, useStage } from "../helper/page.ts";
import { DOC, FINDINGS, openCase, openFile, press } from "../helper/room.ts";

const stage = useStage({ keepsPage: true });

const BROKEN: readonly (readonly [string, unknown, RegExp])[] = [
  ["no JSON", "{ engine: ", /JSON/],
  ["no case", "[1, 2]", /./],
  ["an engine that nobody knows", { ...DOC, engine: "demo.turn" }, /demo\.tern/],
  [
    "an answer that is none",
    { ...DOC, findings: [{ finding: "lamp", answer: "purple" }] },
    /purple.*at \/findings\/0\/answer/s,
  ],
  ["a drive that is none", { ...DOC, work: { drives: [{ of: "0" }] } }, /at \/work\/drives\/0/],
];

describe.skipIf(!CHROMIUM)("a broken case file", () => {
  it("is refused in words that name the place, and the open case stays", async () => {
    const page = await openPage(stage, PHONE);
    await openCase(stage, page, DOC);
    for (const [what, file, words] of BROKEN) {
      await page.reload();
      await openFile(stage, page, file);
      const alert = page.locator("main [role=alert]");
      await expect.poll(() => alert.innerText(), { message: what }).toMatch(words);
      expect(await alert.innerText(), what).not.toContain("undefined");
    }
    await see(stage, page, "#/answers", ".answers > li");
    await expect
      .poll(() => page.locator(".answers > li:has(button)").count())
      .toBe(FINDINGS.length);
  });
});

/** A picture of one dot. */
const DOT = Buffer.from(
  "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==",
  "base64",
);

/** The keys of a store of the device. */
function keysOf(page: Page, database: string, store: string): Promise<readonly unknown[]> {
  return page.evaluate(
    ([name = "", of = ""]) =>
      new Promise<readonly unknown[]>((resolve, reject) => {
        const request = indexedDB.open(name);
        request.onerror = () => reject(request.error);
        request.onsuccess = () => {
          const keys = request.result.transaction(of).objectStore(of).getAllKeys();
          keys.onerror = () => reject(keys.error);
          keys.onsuccess = () => {
            request.result.close();
            resolve(keys.result);
          };
        };
      }),
    [database, store],
  );
}

const photos = (page: Page) => keysOf(page, "half-order-photos", "photos");

describe.skipIf(!CHROMIUM)("a case that is deleted", () => {
  it("takes its photos along, and brings them back when it is put back", async () => {
    const page = await openPage(stage, PHONE);
    await openCase(stage, page, { ...DOC, records: [] });
    await see(stage, page, "#/record", ".plug-form");
    await page
      .locator(".plug-form input[type=file]")
      .setInputFiles({ name: "plug.png", mimeType: "image/png", buffer: DOT });
    await page.locator("img.photo").waitFor();
    await expect.poll(() => photos(page)).toHaveLength(1);
    await see(stage, page, "#/cases", ".cases > li");
    await page.getByRole("button", { name: "Delete Hill road" }).tap();
    await page.getByText("Deleted: Hill road.").waitFor();
    await expect.poll(() => photos(page)).toEqual([]);
    await page.getByRole("button", { name: "Put it back" }).tap();
    await page.getByRole("button", { name: "Delete Hill road" }).waitFor();
    // The case is back before its photos are.
    await expect.poll(() => photos(page)).toHaveLength(1);
  });
});

describe.skipIf(!CHROMIUM)("the work on an engine", () => {
  const ticked = (page: Page) => page.locator(".ticks [aria-pressed=true]");
  const line = (page: Page, n: number) => page.locator(".ticks .option").nth(n);

  it("is merged between two tabs, undone by key, and saved with the case", async () => {
    const one = await openPage(stage, DESK);
    await openCase(stage, one, { ...DOC, work: {} });
    const two = await one.context().newPage();
    await see(stage, one, "#/mend/repair.plug-set", ".ticks");
    await see(stage, two, "#/mend/repair.plug-set", ".ticks");
    await line(one, 0).click();
    await two.locator(".ticks [aria-pressed=true]").waitFor();
    await line(two, 1).click();
    await one.locator(".ticks [aria-pressed=true]").nth(1).waitFor();
    await line(one, 2).click();
    await one.locator(".ticks [aria-pressed=true]").nth(2).waitFor();
    await one.keyboard.press("Control+z");
    await expect.poll(() => ticked(one).count()).toBe(2);
    await see(stage, one, "#/hand-over", ".sheet");
    const file = await savedBy(one, () => press(one, "button", "Save as a file"));
    expect(JSON.parse(file).work.ticks).toHaveLength(2);
  });

  it("that the first pages kept beside the case goes into it", async () => {
    const { work: _, ...doc } = DOC;
    const page = await openPage(stage, DESK);
    await openCase(stage, page, doc);
    // As such a page had left it.
    const ticks = { "repair.plug-set": PUT_BACK.map(({ id }) => id) };
    const old = JSON.stringify({ open: [], spent: [], ticks, drives: {} });
    await expect.poll(() => keysOf(page, "half-order", "cases")).toHaveLength(1);
    const [id] = await keysOf(page, "half-order", "cases");
    await page.evaluate(
      ([key = "", text = ""]) => localStorage.setItem(key, text),
      [`half-order.work.${id}`, old],
    );
    await page.reload();
    await see(stage, page, "#/mend/repair.plug-set", ".ticks [aria-pressed=true]");
    const left = () =>
      page.evaluate(() => Object.keys(localStorage).filter((key) => key.includes(".work.")));
    await expect.poll(left).toEqual([]);
    await page.reload();
    await see(stage, page, "#/mend/repair.plug-set", ".ticks [aria-pressed=true]");
  });
});

describe.skipIf(!CHROMIUM)("the browser", () => {
  it("had nothing to complain of", () => {
    expect(stage.complaints).toEqual([]);
  });
});
