// Does a tap on the dial open what sits at that mark?
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import {
  CHROMIUM,
  DESK,
  giveFile,
  openPage,
  PHONE,
  RANKING,
  ranked,
  settled,
  useStage,
} from "../helper/page.ts";

const stage = useStage();

/** A V6 that fires 1-2-3-4-5-6 from a coil rail, with codes of 2 and 5. */
async function withCodes(page: Page): Promise<void> {
  await giveFile(page, {
    halfOrderCase: 1,
    engine: "demo.tern",
    findings: [{ finding: "codes", answer: ["P0302", "P0305"] }],
  });
  await ranked(page);
  // All that would move the dial under the finger has come.
  await page.locator(".drive-answer .drive-line").waitFor();
  await page.locator(RANKING).waitFor();
  await settled(page);
}

/** Taps the dial at a point of its own drawing, which is 412 wide round its centre, and waits for what is there. */
async function tapDial(page: Page, x: number, y: number, there: RegExp): Promise<void> {
  // Not the room that is kept for it until it has come.
  const dial = page.locator(".picture .dial:has(.scale)");
  const box = await dial.boundingBox();
  if (!box) throw new Error("no dial");
  const position = { x: (box.width * (x + 206)) / 412, y: (box.height * (y + 206)) / 412 };
  await dial.click({ position });
  await page.locator(".at-mark [aria-pressed=true]").filter({ hasText: there }).waitFor();
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
    await tapDial(page, 0, 0, /^Coil of 2 and 5/);
    await expect.poll(() => open.innerText()).toContain("Coil of 2 and 5");
    await page
      .locator(".at-mark")
      .getByText(/^Coil connector/)
      .waitFor();
    // The ring of the hub, between two spokes.
    await tapDial(page, 23, -39.8, /^Coil connector/);
    await expect.poll(() => open.innerText()).toContain("Coil connector");
    // The disc of a cylinder: what is its own, the likeliest of it first.
    await tapDial(page, 114.3, -66, /of cylinder 2/);
    await expect.poll(() => open.innerText()).toMatch(/of 2|cylinder 2/);
    // Another of the same mark is one tap away.
    const other = page.locator(".at-mark [aria-pressed=false]").first();
    const name = await other.innerText();
    await other.click();
    await page.locator(".at-mark [aria-pressed=true]").getByText(name).waitFor();
  });
});
