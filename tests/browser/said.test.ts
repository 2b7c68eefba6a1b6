// Is it said wherever it must be: that an engine is invented, and a figure in the units of who reads it?
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { writeLink } from "../../packages/web/src/hand-over/link.ts";
import { INVENTED } from "../../packages/web/src/text/en-invented.ts";
import { DIAL } from "../../packages/web/src/text/en-picture.ts";
import { CHROMIUM, DESK, openPage, PHONE, see, settled, useStage } from "../helper/page.ts";
import { openCase } from "../helper/room.ts";

const stage = useStage();

const FINDINGS = [
  { finding: "lamp", answer: "steady" },
  { finding: "codes", answer: ["P0302"] },
] as const;
const DOC = {
  halfOrderCase: 1,
  engine: "demo.wagtail",
  title: "Hill",
  findings: FINDINGS,
} as const;
/** Of no known firing order, and mended. */
const OWN = {
  ...DOC,
  engine: { cylinders: 4, ignition: "coil-per-plug" },
  title: "Ours",
  repairs: [{ repair: "repair.coil-single", cylinder: 2, result: "cured" }],
} as const;

const said = (page: Page): Promise<number> => page.getByText(INVENTED).count();

describe.skipIf(!CHROMIUM)("an invented engine", () => {
  it("is said to be one beside its ranking, on the sheet, and on paper", async () => {
    for (const options of [PHONE, DESK]) {
      const page = await openPage(stage, options);
      await openCase(stage, page, DOC);
      await expect.poll(() => said(page)).toBe(1);
      await see(stage, page, "#/hand-over", ".sheet");
      await expect.poll(() => said(page)).toBe(1);
      await page.emulateMedia({ media: "print" });
      await expect.poll(() => page.getByText(INVENTED).isVisible()).toBe(true);
    }
  });

  it("is said to be one of two that are compared, and an engine of one's own is not", async () => {
    const page = await openPage(stage, DESK);
    await openCase(stage, page, DOC);
    await openCase(stage, page, OWN);
    await settled(page);
    expect(await said(page)).toBe(0);
    await see(stage, page, "#/cases", ".column:has(input[type=file])");
    for (const { title } of [DOC, OWN]) {
      await page.getByRole("button", { name: `Compare ${title}` }).click();
    }
    await page.getByRole("link", { name: "See the two side by side" }).click();
    await expect.poll(() => page.locator(".pair > .aside").count()).toBe(2);
    await expect.poll(() => said(page)).toBe(1);
    await page
      .locator(".pair > .aside", { hasText: OWN.title })
      .getByText("then it ran well")
      .waitFor();
  });

  it("is said to be one before its case is taken from a link", async () => {
    const page = await openPage(stage, PHONE, await writeLink(DOC));
    await page.getByText("Hill, 2 answers").waitFor();
    await expect.poll(() => said(page)).toBe(1);
  });
});

/** Reads the ways to answer a question to which an address leads at once. */
async function optionsIn(locale: string): Promise<string> {
  const page = await openPage(stage, { ...PHONE, locale });
  await openCase(stage, page, OWN);
  await page.goto(`${stage.address}#/question/distance/add`);
  await page.reload();
  const options = page.locator(".question .options");
  await options.waitFor();
  return options.innerText();
}

describe.skipIf(!CHROMIUM)("figures of a question", () => {
  it("are in the units of the region from the first drawing on", async () => {
    for (const locale of ["en-US", "en-GB"]) {
      const said = await optionsIn(locale);
      expect(said, locale).toMatch(/37,000 to 75,000.mi/);
      expect(said, locale).not.toMatch(/km/);
    }
    expect(await optionsIn("en-IE")).toMatch(/60,000 to 120,000.km/);
  });
});

describe.skipIf(!CHROMIUM)("a chance that can be turned into a number", () => {
  it("is heard with the part whose chance it is, and begins with what is seen", async () => {
    const page = await openPage(stage, DESK);
    await openCase(stage, page, DOC);
    await settled(page);
    for (const row of await page.locator(".ranked-row").all()) {
      const part = (await row.locator(".name-of").innerText()).split("\n")[0] ?? "";
      const button = row.locator(".chance").first();
      const seen = (await button.textContent())?.split(" (")[0] ?? "";
      const heard = (await button.ariaSnapshot()).replace(/^- button "|"$/g, "");
      expect(part).not.toBe("");
      expect(heard).toContain(`(${part}, as a number)`);
      expect(heard.replaceAll(" ", "").startsWith(seen.replaceAll(" ", ""))).toBe(true);
    }
  });
});

describe.skipIf(!CHROMIUM)("a dial in words", () => {
  it("says that one coil serves all through a distributor, and never that they share it as a pair", async () => {
    const page = await openPage(stage, DESK);
    await openCase(stage, page, { ...DOC, engine: "demo.lapwing" });
    await settled(page);
    const lines = page.locator(".desk-picture .picture ul.vh > li");
    const [first = "", ...others] = await lines.allTextContents();
    expect(first).toBe(DIAL.throughDistributor);
    expect(others).toHaveLength(4);
    for (const line of others) expect(line).not.toContain("coil");
    await openCase(stage, page, { ...DOC, engine: "demo.dunlin" });
    await settled(page);
    expect((await lines.allTextContents())[0]).toMatch(/on one coil with 4/);
  });
});
