// Does a tap on the dial open what sits at that mark?
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { CHROMIUM, DESK, openPage, openStage, PHONE, ranked, type Stage } from "../helper/page.ts";

let stage: Stage;
beforeAll(async () => {
  if (CHROMIUM) stage = await openStage();
});
afterAll(() => stage?.close());

/** A V6 that fires 1-2-3-4-5-6 from a coil rail, with codes of 2 and 5. */
async function withCodes(page: Page): Promise<void> {
  await page.locator("input[type=file]").setInputFiles({
    name: "case.json",
    mimeType: "application/json",
    buffer: Buffer.from(
      JSON.stringify({
        halfOrderCase: 1,
        engine: "demo.tern",
        findings: [{ finding: "codes", answer: ["P0302", "P0305"] }],
      }),
    ),
  });
  await ranked(page);
}

/** Taps the dial at a point of its own drawing, which is 412 wide round its centre. */
async function tapDial(page: Page, x: number, y: number): Promise<string> {
  // Not the room that is kept for it until it has come.
  const dial = page.locator(".picture .dial:has(.scale)");
  await dial.scrollIntoViewIfNeeded();
  const box = await dial.boundingBox();
  if (!box) throw new Error("no dial");
  await page.mouse.click(
    box.x + (box.width * (x + 206)) / 412,
    box.y + (box.height * (y + 206)) / 412,
  );
  const there = page.locator(".at-mark [aria-pressed=true]");
  await there.waitFor();
  return there.innerText();
}

const WAYS = [
  ["phone", PHONE],
  ["desk", DESK],
] as const;

describe.skipIf(!CHROMIUM).each(WAYS)("a tap on the dial of a %s", (_, options) => {
  it("opens the likeliest fault of the mark, its row with it, and names the others", async () => {
    const page = await openPage(stage, options);
    await withCodes(page);
    const open = page.locator(".ranked-row.is-open");
    // The hub, where all coils cross: not the one that happens to lie on top.
    expect(await tapDial(page, 0, 0)).toMatch(/^Coil of 2 and 5/);
    expect(await open.innerText()).toContain("Coil of 2 and 5");
    await page
      .locator(".at-mark")
      .getByText(/^Coil connector/)
      .waitFor();
    // The ring of the hub, between two spokes.
    expect(await tapDial(page, 23, -39.8)).toMatch(/^Coil connector/);
    expect(await open.innerText()).toContain("Coil connector");
    // The disc of a cylinder: what is its own, the likeliest of it first.
    expect(await tapDial(page, 114.3, -66)).toMatch(/of cylinder 2/);
    expect(await open.innerText()).toMatch(/of 2|cylinder 2/);
    // Another of the same mark is one tap away.
    const other = page.locator(".at-mark [aria-pressed=false]").first();
    const name = await other.innerText();
    await other.click();
    await page.locator(".at-mark [aria-pressed=true]").getByText(name).waitFor();
  });
});
