// The rooms beside the ranking: the record of plugs, handing over, links, words, all cases, two side by side, how
// sure it is. Free of what axe can find, in both schemes, and walked by keyboard alone.
import { type Finding, profileById, sensitivity } from "@half-order/core";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { writeLink } from "../../packages/web/src/hand-over/link.ts";
import {
  CHROMIUM,
  DESK,
  openPage,
  PHONE,
  ranked,
  savedBy,
  see,
  settled,
  smallTargets,
  useStage,
  violationsInBoth,
  WAYS,
} from "../helper/page.ts";
import { atHeading, DOC, FINDINGS, METRIC, openCase, press, type } from "../helper/room.ts";

const stage = useStage();

/** Each with what shows that it is whole. */
const ROOMS: readonly (readonly [string, (page: Page) => Promise<void>])[] = [
  ["the record of plugs", (page) => see(stage, page, "#/record", ".wear-table")],
  [
    "a record that is written",
    async (page) => {
      await see(stage, page, "#/record", ".wear-table");
      await page.getByRole("button", { name: "A new record" }).click();
      await page.locator(".plug-looks").waitFor();
    },
  ],
  [
    "the question of looks",
    async (page) => {
      await see(stage, page, "#/question/plug.look", ".target");
      await page.locator(".target").nth(1).click();
      await page.locator(".target[aria-pressed=true]:not(:first-of-type)").waitFor();
      await page.locator(".plug-looks").waitFor();
    },
  ],
  ["handing over", (page) => see(stage, page, "#/hand-over", ".qr")],
  ["the words of the trade", (page) => see(stage, page, "#/glossary", ".words-of")],
  ["a link", async (page) => see(stage, page, await writeLink(DOC), ".is-finish")],
  [
    "a broken link",
    async (page) => see(stage, page, (await writeLink(DOC)).slice(0, -20), ".column [role=alert]"),
  ],
  ["how sure it is", (page) => see(stage, page, "#/sure", ".shaken")],
  ["all cases", (page) => see(stage, page, "#/cases", ".cases > li")],
  [
    "two cases side by side",
    async (page) => {
      await see(stage, page, "#/cases", ".cases > li");
      for (const name of ["Hill road", "Valley road"]) {
        await page.getByRole("button", { name: `Compare ${name}` }).click();
        await page.getByRole("button", { name, pressed: true }).waitFor();
      }
      await page.getByRole("link", { name: "See the two side by side" }).click();
      await page.locator(".first-three").nth(1).waitFor();
    },
  ],
];

const TARGETS = "main button, main summary, main .links a, main input:not(.vh)";

describe.skipIf(!CHROMIUM).each(WAYS)("on a %s", (_, options) => {
  let page: Page;
  beforeAll(async () => {
    page = await openPage(stage, options);
    await openCase(stage, page, DOC);
    await openCase(stage, page, { ...DOC, title: "Valley road", findings: FINDINGS.slice(1) });
    // As tall as any of them, or what scrolls under the foot would count as covered.
    await page.setViewportSize({ width: page.viewportSize()?.width ?? 360, height: 5000 });
  });

  afterAll(() => page?.context().close());

  it.each(ROOMS)(
    "%s has no violation, light or dark, and nothing too small to tap",
    async (...room) => {
      const [where, come] = room;
      await see(stage, page, "#/answers", ".answers > li");
      await come(page);
      expect(await violationsInBoth(page), where).toEqual([]);
      expect(await smallTargets(page, TARGETS), where).toEqual([]);
    },
  );
});

describe.skipIf(!CHROMIUM)("by keyboard alone", () => {
  it("plugs are recorded, the next service comes up, and goes into a calendar", async () => {
    const page = await openPage(stage, METRIC);
    await openCase(stage, page, { ...DOC, records: [] });
    await press(page, "link", /^Answers/);
    await press(page, "link", "Plugs that came out");
    await atHeading(page, "Plugs out");
    await type(page, /^Odometer now/, "120000");
    await type(page, /^Odometer when these plugs went in/, "60000");
    await type(page, /^Gap as it came out/, "1.3");
    await press(page, "button", /^Wet black oil/);
    await page.getByRole("button", { name: /^Wet black oil/, pressed: true }).waitFor();
    await press(page, "button", /^Next: plug of cylinder 2/);
    // Its fields have the same names.
    await page.getByRole("button", { name: /^Next: plug of cylinder 3/ }).waitFor();
    await type(page, /^Gap as it came out/, "0.9");
    await press(page, "button", "Keep this record");
    await page.getByRole("heading", { name: /^What the record of/ }).waitFor();
    await expect.poll(() => page.locator(".wear-table").innerText()).toContain("Wet black oil");
    await press(page, "button", "New plugs");
    await type(page, /^You drive in a year/, "15000");
    await page.locator(".due", { hasText: /^At .*\skm, by / }).waitFor();
    const entry = await savedBy(page, () => press(page, "button", "Save to the calendar"));
    expect(entry).toMatch(/^BEGIN:VCALENDAR\r\n/);
    expect(entry).toMatch(/\r\nDTSTART;VALUE=DATE:\d{8}\r\n/);
    expect(entry).toContain("SUMMARY:Spark plugs: Wagtail 1.0");
    expect(entry).toMatch(/END:VCALENDAR\r\n$/);
    await see(stage, page, "#/answers", ".answers > li");
    await expect.poll(() => page.locator(".answers").innerText()).toMatch(/1\.3\smm/);
  });

  it("a case is handed over as a link, and is the same on another device", async () => {
    const page = await openPage(stage, DESK);
    await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
    await openCase(stage, page, DOC);
    await see(stage, page, "#/hand-over", ".qr");
    await press(page, "button", "Copy the link");
    await page.getByText("Copied.").waitFor();
    const link = await page.evaluate(() => navigator.clipboard.readText());
    const other = await openPage(stage, { ...PHONE, locale: "en-IE" });
    await other.goto(link);
    await other.getByText("Hill road, 4 answers").waitFor();
    await press(other, "button", "Open it");
    await ranked(other);
    await see(stage, other, "#/hand-over", ".sheet");
    const save = (from: Page) => savedBy(from, () => press(from, "button", "Save as a file"));
    const [ours, theirs] = [await save(page), await save(other)];
    expect(JSON.parse(theirs)).toEqual(JSON.parse(ours));
    expect(JSON.parse(theirs)).toEqual(DOC);
    await expect
      .poll(() => other.locator(".sheet").innerText())
      .toMatch(/2: 1\.4\smm, Wet black oil/);
  });

  it("it is said how sure the ranking is, as the library has it, also after a step back", async () => {
    const engine = profileById("demo.wagtail");
    if (!engine) throw new Error("demo.wagtail is gone");
    const page = await openPage(stage, DESK);
    // A gap is a sign of several parts; an exchange would leave no other part a chance.
    const found = FINDINGS.with(-1, { finding: "plug.gap", cylinder: 2, answer: "wide" });
    await openCase(stage, page, { ...DOC, findings: found, repairs: [], work: {} });
    await press(page, "link", /^How sure is this/);
    await atHeading(page, "How sure is this?");
    const shaken = page.locator(".shaken");
    const staying = (given: readonly Finding[]): readonly RegExp[] =>
      sensitivity(engine, given).stability.map(
        ({ first }) => new RegExp(`stays in ${Math.round(first * 100)} of 100`),
      );
    await shaken.waitFor({ timeout: 60_000 });
    for (const words of staying(found)) {
      await expect.poll(() => shaken.innerText()).toMatch(words);
    }
    await page.getByText("The weakest link").waitFor();
    // An answer more, and the way back by key while it is worked out anew.
    await see(stage, page, "#/question/onset", ".options");
    await press(page, "button", "Suddenly while driving");
    await see(stage, page, "#/sure", "progress");
    await page.keyboard.press("Control+z");
    await shaken.waitFor({ timeout: 60_000 });
    for (const words of staying(found)) {
      await expect.poll(() => shaken.innerText()).toMatch(words);
    }
    await expect.poll(() => page.locator("progress").count()).toBe(0);
  });

  it("two cases are picked and seen side by side", async () => {
    const page = await openPage(stage, DESK);
    await openCase(stage, page, DOC);
    const other = [{ finding: "lamp", answer: "off" }, ...FINDINGS.slice(1, 3)];
    await openCase(stage, page, { engine: "demo.tern", title: "Valley road", findings: other });
    await see(stage, page, "#/cases", ".cases > li");
    await page.getByText("To see two cases side by side").waitFor();
    await press(page, "button", "Compare Hill road");
    await press(page, "button", "Compare Valley road");
    await press(page, "link", "See the two side by side");
    await atHeading(page, "Two cases side by side");
    await page.locator(".first-three").nth(1).waitFor();
    await settled(page);
    const [hill, valley] = await page.locator(".pair > section").allInnerTexts();
    expect(hill).toContain("Wagtail 1.0");
    expect(hill).toContain("it changed nothing");
    expect(valley).toContain("Tern");
    expect(valley).toContain("Nothing yet.");
    const differing = await page.locator(".differences > li").allInnerTexts();
    expect(differing).toHaveLength(2);
    expect(differing[0]).toMatch(/On, steady\s+Valley road\s+Off/);
    expect(differing[1]).toMatch(/not answered/);
    await page.getByText("2 answers are the same.").waitFor();
    await press(page, "button", /^Open this case.*Hill road/);
    await ranked(page);
    await expect.poll(() => page.locator(".engine-name").innerText()).toBe("Hill road");
  });
});

describe.skipIf(!CHROMIUM)("the browser", () => {
  it("had nothing to complain of", () => {
    expect(stage.complaints).toEqual([]);
  });
});
