// Does the first screen stand before the scripts have come, and is nothing lost that was done meanwhile?
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { START } from "../../packages/web/src/text/en.ts";
import { DOCUMENT } from "../../packages/web/src/text/en-document.ts";
import { CHROMIUM, drawn, openPage, PHONE, ready, useStage } from "../helper/page.ts";
import { openCase } from "../helper/room.ts";

const stage = useStage();

const DOC = { halfOrderCase: 1, engine: "demo.tern", title: "Hill", findings: [] } as const;

/** The page while its scripts are on their way; `arrive` lets them come. */
async function early(hash = ""): Promise<{ page: Page; arrive: () => void }> {
  const context = await stage.browser.newContext(PHONE);
  const page = await context.newPage();
  page.on("pageerror", (error) => stage.complaints.push(String(error)));
  page.on("console", (message) => {
    if (message.type() === "error") stage.complaints.push(message.text());
  });
  let arrive = (): void => undefined;
  const held = new Promise<void>((resolve) => {
    arrive = resolve;
  });
  await context.route(/\.js$/, async (route) => {
    await held;
    await route.continue();
  });
  // Scripts that are modules hold back `load` and `DOMContentLoaded`.
  await page.goto(`${stage.address}${hash}`, { waitUntil: "commit" });
  await page.locator("noscript").waitFor({ state: "attached" });
  return { page, arrive };
}

const heading = (page: Page) => page.getByRole("heading", { name: START.title });

describe.skipIf(!CHROMIUM)("the first screen", () => {
  it("is read, with its styles, while the scripts are on their way, and stays as it was", async () => {
    const { page, arrive } = await early();
    await heading(page).waitFor();
    const before = await page.locator("#app").innerText();
    expect(await page.locator(".numbers a").count()).toBeGreaterThan(5);
    const box = await page.locator(".numbers a").first().boundingBox();
    expect(box?.height).toBeGreaterThanOrEqual(48);
    arrive();
    await ready(page);
    const after = await page.locator("#app").innerText();
    expect(after.startsWith(before), `${before}\n=>\n${after}`).toBe(true);
    expect(await page.locator("h1").count()).toBe(1);
    expect(stage.complaints).toEqual([]);
  });

  it("is not seen by who comes back to another screen", async () => {
    const { page, arrive } = await early("#/glossary");
    expect(await heading(page).isVisible()).toBe(false);
    arrive();
    await page.locator("main.outside h1").waitFor();
    expect(await heading(page).count()).toBe(0);
    expect(stage.complaints).toEqual([]);
  });

  it("has its picture from the document alone, also when it comes back", async () => {
    const { page, arrive } = await early("#/more");
    const drawn = await page.locator(".hero").innerHTML();
    expect(drawn).toContain('class="scale"');
    arrive();
    await page.locator("main.outside h1").waitFor();
    expect(await page.locator(".hero").count()).toBe(0);
    await page.locator("a.brand").click();
    await heading(page).waitFor();
    expect(await page.locator(".hero").innerHTML()).toBe(drawn);
    expect(stage.complaints).toEqual([]);
  });

  it("leads on, once the scripts are there, where it was tapped before, and shows the tap meanwhile", async () => {
    const { page, arrive } = await early();
    const six = page.getByRole("link", { name: "6", exact: true });
    const ground = () => six.evaluate((node) => getComputedStyle(node).backgroundColor);
    const before = await ground();
    await six.tap();
    await expect.poll(ground).not.toBe(before);
    arrive();
    await page.getByRole("link", { name: "In a V" }).waitFor();
    await page.goBack();
    await heading(page).waitFor();
    expect(stage.complaints).toEqual([]);
  });

  it("has its cases first for who has some, from the first sight on", async () => {
    const page = await openPage(stage, PHONE);
    await openCase(stage, page, DOC);
    await page.locator("a.brand").click();
    await heading(page).waitFor();
    const seen = await page.context().newPage();
    await seen.addInitScript(() => {
      // What is seen of the first number, at each frame.
      const seenAt: number[] = [];
      Object.assign(globalThis, { seenAt });
      const look = (): void => {
        const number = document.querySelector(".numbers a");
        if (number && getComputedStyle(number).visibility === "visible") {
          seenAt.push(Math.round(number.getBoundingClientRect().top));
        }
        requestAnimationFrame(look);
      };
      requestAnimationFrame(look);
    });
    await seen.goto(stage.address);
    await ready(seen);
    const mine = await seen.getByRole("button", { name: /Hill/ }).boundingBox();
    const number = await seen.locator(".numbers a").first().boundingBox();
    expect(mine?.y).toBeLessThan(number?.y ?? 0);
    await drawn(seen);
    const tops = await seen.evaluate(() => (globalThis as { seenAt?: number[] }).seenAt ?? []);
    expect(new Set(tops).size).toBe(1);
  });

  it("says when a script does not come, and comes up whole at the next reload", async () => {
    const context = await stage.browser.newContext(PHONE);
    const page = await context.newPage();
    await context.route(/engine-[^/]*\.js$/, (route) => route.abort());
    await page.goto(stage.address);
    await page.getByRole("alert").getByText(DOCUMENT.lost).waitFor();
    await heading(page).waitFor();
    await context.unroute(/engine-[^/]*\.js$/);
    await page.reload();
    await ready(page);
    expect(await page.getByText(DOCUMENT.lost).count()).toBe(0);
  });

  it("opens the file that was chosen before", async () => {
    const { page, arrive } = await early();
    await page.locator("input[type=file]").setInputFiles({
      name: "case.json",
      mimeType: "application/json",
      buffer: Buffer.from(JSON.stringify(DOC)),
    });
    arrive();
    await page.locator(".ranking .ranked-row").first().waitFor();
    expect(page.url()).toMatch(/#\/ranking$/);
    expect(stage.complaints).toEqual([]);
  });

  it("is drawn by styles of its own alone: the policy lets no attribute style a part of it", async () => {
    const html = await (await fetch(stage.address)).text();
    expect(html).toContain(START.lead);
    expect(html).not.toMatch(/\sstyle=/);
    expect(html).not.toMatch(/<link rel="stylesheet"/);
  });
});
