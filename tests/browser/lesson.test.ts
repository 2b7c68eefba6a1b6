// Can a part be broken and watched, by tap and by key, and does the page show what the simulator says?
import { profileById, resolveEngine } from "@half-order/core";
import { watch } from "@half-order/core/physics";
import type { BrowserContextOptions, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { places } from "../../packages/core/src/engine/place.ts";
import { LESSON } from "../../packages/web/src/text/en-lesson.ts";
import {
  CHROMIUM,
  DESK,
  openPage,
  overhang,
  PHONE,
  smallTargets,
  useStage,
  violationsInBoth,
  WAYS,
} from "../helper/page.ts";

const stage = useStage();

const SIX = "generic.i6.153624.pack";
const DEAD_PAIR = `#/lesson/${SIX}/driver.dead/coil%201+6`;

/** Opens a lesson and waits until its engine was broken. */
async function openLesson(options: BrowserContextOptions, hash: string): Promise<Page> {
  const page = await openPage(stage, options, hash);
  await settled(page);
  return page;
}

async function settled(page: Page): Promise<void> {
  await page.locator(".lesson-working:empty").waitFor({ state: "attached" });
  await page.locator(".lesson-trace").waitFor();
}

/** Waits until the list of places stands at one. */
async function isAt(page: Page, place: string): Promise<void> {
  const where = page.getByLabel("Where", { exact: true });
  await where.and(page.locator(`select:has(option:checked[value="${place}"])`)).waitFor();
  await settled(page);
}

/** What of the words is wider than the room of a closed list with this label. */
function cutOff(page: Page, label: string, words: readonly string[]): Promise<readonly string[]> {
  return page.getByLabel(label, { exact: true }).evaluate((list, all) => {
    /** The arrow at its end. */
    const ARROW_PX = 24;
    const { fontFamily, fontSize, paddingLeft, paddingRight } = getComputedStyle(list);
    const span = document.createElement("span");
    span.style.cssText = `position: absolute; white-space: nowrap; font: ${fontSize} ${fontFamily}`;
    document.body.append(span);
    const sides = Number.parseFloat(paddingLeft) + Number.parseFloat(paddingRight);
    const cut = all.filter((each) => {
      span.textContent = each;
      return span.offsetWidth > list.clientWidth - sides - ARROW_PX;
    });
    span.remove();
    return cut;
  }, words);
}

describe.skipIf(!CHROMIUM)("the lists to choose from", () => {
  it("show every fault whole when they are closed, on a desk each engine too", async () => {
    const faults = Object.values(LESSON.faults);
    for (const width of [360, 900, 1280]) {
      const page = await openLesson({ viewport: { width, height: 800 } }, "#/lesson");
      expect(await cutOff(page, LESSON.how, faults), `${width} px`).toEqual([]);
      const options = page.getByLabel(LESSON.engine, { exact: true }).locator("option");
      const engines = await options.allTextContents();
      expect(engines.length).toBeGreaterThan(5);
      if (width >= 900) expect(await cutOff(page, LESSON.engine, engines)).toEqual([]);
    }
  });
});

describe.skipIf(!CHROMIUM)("a broken engine", () => {
  it("shows in its table, codes, beat and circuit what the simulator says", async () => {
    const page = await openLesson(PHONE, DEAD_PAIR);
    const profile = profileById(SIX);
    if (!profile) throw new Error("no profile");
    const engine = resolveEngine(profile);
    const place = places(engine, "coil").find(({ id }) => id === "coil 1+6");
    if (!place) throw new Error("no place");
    const seen = watch(engine, { fault: "driver.dead", place }, 1);
    const rows = await page.locator(".lesson-scroll tbody tr").all();
    expect(rows).toHaveLength(seen?.regimes.length ?? -1);
    for (const [i, row] of rows.entries()) {
      const cells = await row.locator("td").allInnerTexts();
      expect(cells.map(Number)).toEqual(seen?.regimes[i]?.share.map((s) => Math.round(s * 100)));
    }
    const codes = await page.locator(".lesson-list dt b").allInnerTexts();
    // The lamp stands below the codes.
    expect(codes.slice(0, seen?.codes.length)).toEqual(seen?.codes.map(({ what }) => what));
    expect(await page.locator(".lesson-counters b").allInnerTexts()).toEqual(
      seen?.counts.map(String),
    );
    await page.getByText("once every turn", { exact: false }).waitFor();
    expect(await page.locator(".lesson-circuit .spark").count()).toBe(0);
    expect(await page.locator(".lesson-says").allInnerTexts()).toContainEqual(
      expect.stringContaining("In 100 of 100 cycles the coil itself stays silent"),
    );
    expect(stage.complaints).toEqual([]);
  });

  it("is broken elsewhere by a tap on the dial, and a reload loses nothing", async () => {
    const page = await openLesson(DESK, DEAD_PAIR);
    const leg = page.locator('.dial [data-place="cylinder 3"] .mark').first();
    await leg.click({ force: true });
    await isAt(page, "cylinder 3");
    await page.getByLabel("How it fails").selectOption("injector.dead");
    await page.getByText("There is a spark at 3", { exact: false }).waitFor();
    await page.waitForURL(/injector\.dead/);
    await settled(page);
    const address = page.url();
    await page.reload();
    await settled(page);
    expect(page.url()).toBe(address);
    await isAt(page, "cylinder 3");
    await page.getByText("once in two turns", { exact: false }).first().waitFor();
  });

  it("can be any engine, also one that does not run at all", async () => {
    const page = await openLesson(PHONE, DEAD_PAIR);
    await page.getByLabel("Cylinders").selectOption("3");
    const cells = page.locator(".lesson-scroll tbody tr").first().locator("td");
    await expect.poll(() => cells.count()).toBe(3);
    await page.getByLabel("Ignition").selectOption("coil-per-plug");
    await page.getByText("On this engine no coil has two plugs.").waitFor();
    await page.getByLabel("Engine", { exact: true }).selectOption({ index: 1 });
    await page.waitForURL(/#\/lesson\/demo\./);
    await settled(page);
    await page.goto(`${stage.address}#/lesson/generic.i2.12.rail/driver.dead/coil%201+2`);
    await page.getByText("In no size that was tried", { exact: false }).waitFor();
  });
});

describe.skipIf(!CHROMIUM)("the voltage panel", () => {
  it("says where the spark fails, by keyboard", async () => {
    const page = await openLesson(DESK, DEAD_PAIR);
    await page.getByText("It fires.").waitFor();
    const strength = page.getByLabel("Energy of the coil");
    await strength.press("Home");
    await page.getByText("It fails.").waitFor();
    await expect.poll(() => page.locator(".lesson-voltage .is-failing").count()).toBe(1);
    await expect.poll(() => strength.getAttribute("aria-valuetext")).toBe("10 %");
  });
});

describe.skipIf(!CHROMIUM)("the keyboard", () => {
  it("reaches everything, in order, and works it", async () => {
    const page = await openLesson(DESK, DEAD_PAIR);
    await page.getByLabel("Engine", { exact: true }).focus();
    const walked: string[] = [];
    for (let i = 0; i < 40; i++) {
      await page.keyboard.press("Tab");
      walked.push(
        await page.evaluate(() => {
          const { activeElement: node } = document;
          if (!node || node === document.body) return "";
          const name =
            node.getAttribute("aria-label") ?? (node as HTMLInputElement).labels?.[0]?.textContent;
          return (name ?? node.textContent ?? "").slice(0, 40);
        }),
      );
    }
    const at = (start: string): number => walked.findIndex((name) => name.startsWith(start));
    const order = [
      "Where",
      "How it fails",
      "Break it in another size",
      "Cold start",
      "Bad road",
      "Crank angle",
      "To the next firing",
      "Turn slowly",
      "Hear it",
      "All rhythms in it",
      "1 is to fire",
      "6 is to fire",
      "Gap",
      "Centre electrode positive",
    ].map(at);
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(order[0]).toBeGreaterThanOrEqual(0);
    await page.getByRole("button", { name: "Bad road" }).press("Enter");
    await page
      .getByText(/^Bad road: /)
      .first()
      .waitFor();
    await page.getByRole("button", { name: "To the next firing" }).press("Enter");
    await page.getByText(/^120°: .*; 5 fired last$/).waitFor();
  });
});

describe.skipIf(!CHROMIUM)("motion", () => {
  it("comes on request alone, and is not offered to who wants none", async () => {
    const page = await openLesson(DESK, DEAD_PAIR);
    const angle = page.getByLabel("Crank angle");
    expect(await angle.inputValue()).toBe("0");
    await page.getByRole("button", { name: "Turn slowly" }).click();
    await page.waitForFunction(
      () => Number(document.querySelector<HTMLInputElement>(".lesson-turning input")?.value) > 10,
    );
    await page.getByRole("button", { name: "Stop turning" }).click();
    const still = await openLesson({ ...DESK, reducedMotion: "reduce" }, DEAD_PAIR);
    expect(await still.getByRole("button", { name: "Turn slowly" }).count()).toBe(0);
    expect(await still.getByRole("button", { name: "To the next firing" }).count()).toBe(1);
  });
});

describe.skipIf(!CHROMIUM).each(WAYS)("on a %s", (_, options) => {
  it("has no violation, light or dark, no sideways scroll, and room for a thumb", async () => {
    const page = await openLesson(options, "#/lesson/demo.whimbrel/lead.open/lead%208");
    await page.getByText("All rhythms in it").click();
    await page.locator("details[open] .lesson-table").waitFor();
    await page.setViewportSize({ width: page.viewportSize()?.width ?? 360, height: 6000 });
    expect(await violationsInBoth(page)).toEqual([]);
    expect(await overhang(page)).toBeLessThanOrEqual(0);
    const all = "main button, main summary, main select, main input";
    expect(await smallTargets(page, all)).toEqual([]);
  });
});
