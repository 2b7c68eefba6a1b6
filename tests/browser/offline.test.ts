// Does the whole page work without a network, once it has been visited?
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import {
  CHROMIUM,
  DIST,
  openDemoWithLamp,
  openPage,
  openStage,
  PHONE,
  ranked,
  see,
  useStage,
} from "../helper/page.ts";

const stage = useStage({ keepsPage: true });

/** Each with what shows that it is whole. */
const ROOMS = [
  ["add", 'summary:text-is("Complaint")'],
  ["answers", ".answers > li"],
  ["cases", ".cases > li"],
  ["hand", "fieldset.choices"],
  ["glossary", ".words-of"],
  ["sketch", "form.sketch"],
  ["record", ".record-form"],
] as const;

/** Waits until the page has said that it is kept whole. */
async function kept(page: Page): Promise<void> {
  await page.getByText("it works without a network").waitFor({ timeout: 60_000 });
}

describe.skipIf(!CHROMIUM)("the page after one visit", () => {
  it("can be installed: it names itself, its first screen and its icons", async () => {
    const page = await openPage(stage, PHONE);
    const address = await page.locator("link[rel=manifest]").getAttribute("href");
    const response = await page.request.get(new URL(address ?? "", stage.address).href);
    const manifest = (await response.json()) as {
      readonly display: string;
      readonly icons: readonly { readonly src: string; readonly sizes: string }[];
    };
    expect(manifest).toMatchObject({ name: "Half-Order", display: "standalone", start_url: "./" });
    for (const { src, sizes } of manifest.icons) {
      const icon = await page.request.get(new URL(src, stage.address).href);
      expect(icon.status(), src).toBe(200);
      if (!src.endsWith(".png")) continue;
      // Width and height stand in the header of a PNG, RFC 2083, section 4.1.1.
      const bytes = await icon.body();
      expect(`${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`, src).toBe(sizes);
    }
  });

  it("says that a new version is there, and takes it when asked, with every answer", async () => {
    const folder = mkdtempSync(join(tmpdir(), "half-order-version-"));
    cpSync(DIST, folder, { recursive: true });
    const other = await openStage({ folder, keepsPage: true });
    const page = await openPage(other, PHONE);
    await openDemoWithLamp(other, page);
    await page.goto(other.address);
    await kept(page);
    const worker = join(folder, "sw.js");
    writeFileSync(
      worker,
      readFileSync(worker, "utf8").replace(/"version":"\w+"/, '"version":"next"'),
    );
    await page.reload();
    await page.getByText("A new version of this page is there.").waitFor();
    await expect.poll(() => page.evaluate(() => caches.keys())).toHaveLength(2);
    await page.getByRole("button", { name: "Load it" }).tap();
    await page.waitForFunction(async () => (await caches.keys()).join() === "half-order next");
    await page.getByText("A new version of this page is there.").waitFor({ state: "detached" });
    // Not the page of before, which is about to go.
    await kept(page);
    await see(other, page, "#/answers", ".answers > li");
    await page.locator(".answers").getByText("On, steady").waitFor();
    await other.close();
    rmSync(folder, { recursive: true });
  });

  it("works with the server stopped: every room, a ranking, a reload, an answer", async () => {
    const page = await openPage(stage, PHONE);
    await kept(page);
    stage.stopServing();
    await page.reload();
    await page.getByRole("link", { name: "4", exact: true }).tap();
    await page.getByRole("link", { name: "In one row" }).tap();
    await page.getByRole("link", { name: /^A coil rail/ }).tap();
    await page.getByRole("button", { name: /^1-3-4-2/ }).tap();
    await page.getByRole("button", { name: "On, steady" }).tap();
    await page.getByRole("heading", { name: "What does the engine do?" }).waitFor();
    await page.reload();
    for (const [room, whole] of ROOMS) {
      await see(stage, page, `#/${room}`, whole);
      await expect.poll(() => page.locator(".lazy").count(), { message: room }).toBe(0);
    }
    await page.goto(`${stage.address}#/ranking`);
    await ranked(page);
    await page.locator(".ranked-row > .name-of").first().tap();
    await page.locator(".ledger tfoot").waitFor();
    await page.getByRole("link", { name: "Answers (1)" }).first().waitFor();
  });
});
