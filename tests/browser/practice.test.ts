// Can somebody look for a hidden fault: read its story, check, mend, and see both ways as the library has them; with a
// reload in the middle, and by keyboard alone?
import { profileById } from "@half-order/core";
import { comparePaths, hideFault, type PracticeAct, practise } from "@half-order/core/instrument";
import type { BrowserContextOptions, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { PRACTICE, sayCost } from "../../packages/web/src/text/en-practice.ts";
import {
  CHROMIUM,
  DESK,
  openPage,
  overhang,
  PHONE,
  see,
  settled,
  smallTargets,
  useStage,
  violationsInBoth,
  WAYS,
} from "../helper/page.ts";
import { press, tabTo } from "../helper/room.ts";

const stage = useStage();

const ENGINE = "generic.i4.1342.rail";
const SEED = 5;
const BEGIN = `#/practice/${ENGINE}/${SEED}`;
const COUNTS: PracticeAct = { kind: "check", check: "check.counts" };
const PLUGS: PracticeAct = { kind: "check", check: "check.plugs-out", cylinder: 2 };
const REPAIR = { repair: "repair.plug-set" };
const MIDDLE = `${BEGIN}/check.counts/check.plugs-out@2`;
const END = `${MIDDLE}/peek/repair.plug-set`;

const WORKED_OUT = ".practice:has(.practice-state:empty) .practice-known";
const COMPARED = ".practice:has(.practice-state:empty) .practice-way";

function hidden() {
  const profile = profileById(ENGINE);
  if (!profile) throw new Error("no profile");
  return hideFault(profile, SEED);
}

async function openPractice(options: BrowserContextOptions, hash: string): Promise<Page> {
  const page = await openPage(stage, options);
  await see(stage, page, hash, WORKED_OUT);
  await settled(page);
  return page;
}

/** The headings of what was done, once there are so many. */
async function done(page: Page, count: number): Promise<readonly string[]> {
  const headings = page.locator(".practice-known .practice-steps h3");
  await expect.poll(() => headings.count()).toBe(count);
  return headings.allInnerTexts();
}

/** Opens one of a list, found by its name. */
async function choose(page: Page, field: string, name: string): Promise<void> {
  await page.getByLabel(field).fill(name);
  await page.getByRole("button", { name: new RegExp(`^${name}`), expanded: false }).click();
}

describe.skipIf(!CHROMIUM)("a hidden fault", () => {
  it("is looked for: its story, a check, a place, the ranking on request, and a reload in between", async () => {
    const page = await openPractice(PHONE, BEGIN);
    const { truth, start } = hidden();
    const told = page.locator(".practice-told > div");
    await expect.poll(() => told.count()).toBe(start.findings.length);
    await page.getByText("No real car", { exact: false }).waitFor();
    const codes = start.findings.find(({ finding }) => finding === "codes")?.answer;
    await told.getByText(String(codes), { exact: true }).waitFor();
    expect(await page.locator("main").innerText()).not.toContain(truth.name);

    await page.getByText("With a code reader").click();
    await page.getByRole("button", { name: /^Read the misfire counts/ }).click();
    await page.getByRole("button", { name: /^Check it/ }).click();
    expect(await done(page, 1)).toEqual(["Read the misfire counts of each cylinder"]);
    await page.locator(".practice-steps h3:focus").waitFor();
    const [made] = practise(hidden(), [COUNTS]).steps;
    const counts = Object.entries(made?.kind === "check" ? (made.shows[0]?.answer ?? {}) : {});
    await page.getByText(counts.map(([name, n]) => `${name}: ${n}`).join(", ")).waitFor();
    await page.getByText("Checks so far: 10 minutes.").waitFor();

    await choose(page, "Find a check by a word", "Take the plugs out");
    await page.locator(".practice-open .caution").waitFor();
    await page.getByRole("button", { name: /^2\+3/ }).click();
    const minutes = practise(hidden(), [COUNTS, PLUGS]).minutes;
    await page.getByText(`Checks so far: ${sayCost(minutes)}.`).waitFor();
    await page.waitForURL(/check\.counts\/check\.plugs-out%402$/);

    const known = await page.locator(".practice-known").innerText();
    await page.reload();
    await page.locator(WORKED_OUT).waitFor();
    await expect.poll(() => page.locator(".practice-known").innerText()).toBe(known);

    await page.getByRole("button", { name: /^Look at the ranking/ }).click();
    expect((await done(page, 3)).at(-1)).toBe("Looked at the ranking");
    const peek = practise(hidden(), [COUNTS, PLUGS, { kind: "peek" }]).steps.at(-1);
    const [leader] = peek?.kind === "peek" ? peek.leaders : [];
    await page
      .locator(".practice-steps")
      .getByText(leader?.name ?? "-")
      .waitFor();
    expect(stage.complaints).toEqual([]);
  });

  it("comes to light with the repair, and both ways stand as the library lays them", async () => {
    const page = await openPractice(PHONE, MIDDLE);
    await choose(page, "Find a repair by a word", "Renew all spark plugs");
    const passed = await page.evaluateHandle(() => {
      const names: string[] = [];
      addEventListener("focusin", ({ target }) => names.push((target as Element).className));
      return names;
    });
    await page.getByRole("button", { name: /^Mend it/ }).click();
    await page.getByRole("heading", { name: "What it was" }).and(page.locator(":focus")).waitFor();
    // While it was being worked out the focus was on what says so.
    expect(await passed.jsonValue()).toContain("practice-state");
    const both = comparePaths(hidden(), [COUNTS, PLUGS], REPAIR);
    const isRight = async (): Promise<void> => {
      await expect.poll(() => page.locator(".practice-truth").innerText()).toBe(both.truth.name);
      const ways = page.locator(COMPARED);
      await expect.poll(() => ways.count()).toBe(2);
      for (const [i, { steps, checkMinutes, minutes, end }] of [
        both.learner,
        both.library,
      ].entries()) {
        const lines = ways.nth(i).locator(".practice-steps > li");
        // The story before, how it ended after.
        await expect.poll(() => lines.count()).toBe(steps.length + 2);
        await ways.nth(i).getByText(PRACTICE.end[end]).waitFor();
        const names = steps.flatMap((step) => (step.kind === "repair" ? [step.name] : []));
        for (const name of names) await ways.nth(i).getByText(name).first().waitFor();
        await expect
          .poll(() => ways.nth(i).locator(".practice-sums dd").allInnerTexts())
          .toEqual([sayCost(checkMinutes), sayCost(minutes)]);
        const answers = steps.flatMap((step) => (step.kind === "check" ? step.shows : []));
        await expect
          .poll(() => ways.nth(i).locator(".practice-told dd").count())
          .toBe(answers.length);
      }
      await page.getByRole("heading", { name: both.truth.name }).waitFor();
      await page.getByRole("heading", { name: "What exactly is broken" }).waitFor();
      const [best] = both.mends;
      await page.getByText(`What mends it: ${best?.name},`).waitFor();
      await page.getByRole("heading", { name: "Where the ways part" }).waitFor();
    };
    await isRight();
    await page.waitForURL(/repair\.plug-set$/);
    await page.reload();
    await isRight();
    await page.getByRole("link", { name: "Break this part and watch" }).click();
    await page.waitForURL(/#\/lesson\//);
    expect(stage.complaints).toEqual([]);
  });

  it("is found from everything else and from the lesson, and each time it is another one", async () => {
    const page = await openPage(stage, DESK, "#/more");
    await page.getByRole("link", { name: "Look for a hidden fault" }).click();
    await page.locator(WORKED_OUT).waitFor();
    await page.waitForURL(/#\/practice\/demo\.[a-z]+\/\d+$/);
    const first = page.url();
    await page.locator(".practice-head summary").click();
    await page.getByRole("button", { name: "Hide another fault" }).click();
    await expect.poll(() => page.url()).not.toBe(first);
    await page
      .getByLabel("Engine", { exact: true })
      .selectOption({ label: "Another, by its kind" });
    await page.waitForURL(/#\/practice\/generic\./);
    await page.locator(WORKED_OUT).waitFor();
    await page.goto(`${stage.address}#/lesson/demo.dunlin`);
    await page.getByRole("link", { name: /hide a fault/ }).click();
    await page.waitForURL(/#\/practice\//);
    await page.locator(WORKED_OUT).waitFor();
  });

  it("is another one where the address is damaged, and says which part was not understood", async () => {
    const page = await openPage(stage, PHONE, "#/practice/demo.nope/1");
    await page.getByText("“demo.nope”").waitFor();
    await page.locator(WORKED_OUT).waitFor();
    await page.getByText("“demo.nope”").waitFor();
    await page.locator(".practice-head summary").click();
    await page.getByRole("button", { name: "Hide another fault" }).click();
    await expect.poll(() => page.getByText("“demo.nope”").count()).toBe(0);
    const other = await openPage(stage, PHONE, "#/practice/demo.tern/abc");
    await other.getByText("“abc”").waitFor();
    await other.locator(WORKED_OUT).waitFor();
  });

  it("goes one step back with the device's own button, and forward again, to the story and no further", async () => {
    const page = await openPage(stage, PHONE, "#/more");
    await see(stage, page, BEGIN, WORKED_OUT);
    await settled(page);
    await choose(page, "Find a check by a word", "Read the misfire counts");
    await page.getByRole("button", { name: /^Check it/ }).click();
    await done(page, 1);
    await choose(page, "Find a check by a word", "Take the plugs out");
    await page.getByRole("button", { name: /^2\+3/ }).click();
    const plugs = "Take the plugs out and lay them in order: cylinders 2 and 3";
    expect((await done(page, 2)).at(-1)).toBe(plugs);
    await choose(page, "Find a repair by a word", "Renew all spark plugs");
    await page.getByRole("button", { name: /^Mend it/ }).click();
    await page.locator(COMPARED).first().waitFor();

    await page.goBack();
    await page.locator(".practice-choose").waitFor();
    expect(await page.locator(".practice-way").count()).toBe(0);
    expect((await done(page, 2)).at(-1)).toBe(plugs);
    await page.goBack();
    expect(await done(page, 1)).toEqual(["Read the misfire counts of each cylinder"]);
    await page.waitForURL(/check\.counts$/);
    await page.goForward();
    expect((await done(page, 2)).at(-1)).toBe(plugs);
    await page.goBack();
    await done(page, 1);
    // What is done from here on takes the place of what was gone back on.
    await page.getByRole("button", { name: /^Look at the ranking/ }).click();
    expect((await done(page, 2)).at(-1)).toBe("Looked at the ranking");
    await page.goBack();
    await done(page, 1);
    await page.goBack();
    await done(page, 0);
    await page.waitForURL(new RegExp(`${SEED}$`));
    await page.goBack();
    await page.waitForURL(/#\/more$/);
    await page.getByRole("link", { name: "Look for a hidden fault" }).waitFor();
    expect(stage.complaints).toEqual([]);
  });

  it("says what of an address after the repair is left out", async () => {
    const page = await openPage(stage, PHONE, `${END}/check.codes`);
    await page.getByText("“check.codes”").waitFor();
    await page.locator(COMPARED).first().waitFor();
    await page.getByText("“check.codes”").waitFor();
  });

  it("is told to be none where the address holds no such check", async () => {
    const page = await openPage(stage, PHONE, `${BEGIN}/check.nothing`);
    await page.getByRole("alert").getByText("check.nothing", { exact: false }).waitFor();
    await page.locator(".practice-head summary").click();
    await page.getByRole("button", { name: "Hide another fault" }).click();
    await page.locator(WORKED_OUT).waitFor();
  });
});

describe.skipIf(!CHROMIUM)("by keyboard alone", () => {
  it("a check is made and a repair chosen", async () => {
    const page = await openPractice(DESK, BEGIN);
    await (await tabTo(page, "searchbox", "Find a check by a word")).pressSequentially("counts");
    await press(page, "button", /^Read the misfire counts/);
    await press(page, "button", /^Check it/);
    await page.locator(".practice-steps h3:focus").waitFor();
    await (await tabTo(page, "searchbox", "Find a repair by a word")).pressSequentially(
      "all spark",
    );
    await press(page, "button", /^Renew all spark plugs/);
    await press(page, "button", /^Mend it/);
    await page.getByRole("heading", { name: "What it was" }).and(page.locator(":focus")).waitFor();
  });
});

/** Words of the trade in a sentence are as high as its lines. */
const TARGETS = "main button:not(.term-word), main summary, main input, main select, main a";

describe.skipIf(!CHROMIUM).each(WAYS)("on a %s", (_, options) => {
  it("has no violation, light or dark, no sideways scroll, and room for a thumb", async () => {
    const page = await openPractice(options, MIDDLE);
    await page.locator(".practice-head summary").click();
    await choose(page, "Find a check by a word", "Take the plugs out");
    await page.getByText(/^All repairs \(\d+\)$/).click();
    await page.setViewportSize({ width: page.viewportSize()?.width ?? 360, height: 9000 });
    expect(await violationsInBoth(page)).toEqual([]);
    expect(await overhang(page)).toBeLessThanOrEqual(0);
    expect(await smallTargets(page, TARGETS)).toEqual([]);
    await see(stage, page, END, COMPARED);
    await settled(page);
    expect(await violationsInBoth(page)).toEqual([]);
    expect(await overhang(page)).toBeLessThanOrEqual(0);
    expect(await smallTargets(page, TARGETS)).toEqual([]);
  });
});
