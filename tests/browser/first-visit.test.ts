// Does the first visit stay small? Every file that the built page fetches up to the first ranking and the drive
// answer is counted, compressed as the server sends it.
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { CHROMIUM, DIST, PHONE, ranked, useStage } from "../helper/page.ts";

/** kB of 1000 bytes. */
const MOST_KB = { script: 60, inAll: 80 };

const stage = useStage();

describe.skipIf(!CHROMIUM)("the first visit", () => {
  it("stays within its budget up to the first ranking and the drive answer", async () => {
    const context = await stage.browser.newContext({ ...PHONE, serviceWorkers: "block" });
    const page = await context.newPage();
    const fetched = new Set<string>();
    let isOver = false;
    context.on("request", (request) => {
      const { origin, pathname } = new URL(request.url());
      if (!isOver && `${origin}/` === stage.address) fetched.add(pathname);
    });
    await page.goto(stage.address);
    await answerAll(page, () => {
      isOver = true;
    });
    await ranked(page);
    await page.locator(".drive-answer a").waitFor();
    const sizes = [...fetched].map((path) => ({ path, bytes: sizeOf(path) }));
    expect(sizes.filter(({ path }) => path.endsWith(".json"))).not.toHaveLength(0);
    const inAll = sum(sizes);
    const script = sum(sizes.filter(({ path }) => path.endsWith(".js")));
    expect(script, JSON.stringify(sizes, null, 1)).toBeLessThanOrEqual(MOST_KB.script * 1000);
    expect(inAll, JSON.stringify(sizes, null, 1)).toBeLessThanOrEqual(MOST_KB.inAll * 1000);
    await context.close();
  });
});

/** The first questions, each answered by its first option. Calls before the last answer: what is fetched after it is for the next step. */
async function answerAll(page: Page, atLast: () => void): Promise<void> {
  await page.getByRole("link", { name: "4", exact: true }).tap();
  await page.getByRole("link", { name: "In one row" }).tap();
  await page.getByRole("link", { name: /^A coil rail/ }).tap();
  await page.getByRole("button", { name: /^1-3-4-2/ }).tap();
  for (;;) {
    await page.locator(".question h1").waitFor();
    const asked = await page.locator("h1").first().innerText();
    const [step, of] = (await page.locator(".question .facts").innerText()).match(/\d+/g) ?? [];
    if (step === of) {
      // Ranking and drive answer of the answers before: all that the last one needs is there by now.
      await page.locator(".drive-answer a").waitFor();
      await page.locator(".foot .so-far").waitFor();
      atLast();
    }
    const finish = page.locator(".question .is-finish");
    if ((await finish.count()) > 0) await finish.tap();
    else await page.locator(".question .option").first().tap();
    if (step === of) return;
    await page.waitForFunction((old) => document.querySelector("h1")?.innerText !== old, asked);
  }
}

/** Bytes as the server sends them: it prefers the compressed file where the build made one. */
function sizeOf(path: string): number {
  const file = join(DIST, path === "/" ? "index.html" : path);
  return readFileSync(existsSync(`${file}.br`) ? `${file}.br` : file).length;
}

function sum(sizes: readonly { readonly bytes: number }[]): number {
  return sizes.reduce((total, { bytes }) => total + bytes, 0);
}
