// Is anything lost that was ticked and not confirmed, and does the place of the car reach the first step?
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { CHROMIUM, openPage, openStage, PHONE, ranked, type Stage } from "../helper/page.ts";

let stage: Stage;
beforeAll(async () => {
  if (CHROMIUM) stage = await openStage();
});
afterAll(() => stage?.close());

async function begin(): Promise<Page> {
  const page = await openPage(stage, PHONE, "#/demo");
  await page.getByRole("button", { name: /Dunlin/ }).tap();
  await page.getByRole("heading", { name: "The engine warning lamp?" }).waitFor();
  return page;
}

const cylinder = (page: Page, name: number) =>
  page.getByRole("button", { name: new RegExp(`^Cylinder ${name},`) });

describe.skipIf(!CHROMIUM)("ticks that are not confirmed", () => {
  it("wait for their question, whichever way it is left and after a reload", async () => {
    const page = await begin();
    await page.getByRole("button", { name: "On, steady" }).tap();
    await page.goto(`${stage.address}#/question/codes`);
    await cylinder(page, 2).tap();
    await page.getByLabel(/^Other codes/).fill("P0171");
    await page.locator(".foot .so-far").tap();
    await ranked(page);
    await page.reload();
    await page.getByRole("link", { name: /^Ticked, and not counted yet/ }).tap();
    await cylinder(page, 2).and(page.locator("[aria-pressed=true]")).waitFor();
    expect(await page.getByLabel(/^Other codes/).inputValue()).toBe("P0171");
    await page.getByRole("button", { name: "These 2 are all" }).tap();
    await page.goto(`${stage.address}#/answers`);
    await page.getByText("P0302, P0171").waitFor();
    await page.goto(`${stage.address}#/ranking`);
    await ranked(page);
    expect(await page.getByText("Ticked, and not counted yet").count()).toBe(0);
  });

  it("can be confirmed without scrolling on a phone", async () => {
    const page = await begin();
    await page.goto(`${stage.address}#/question/codes`);
    await cylinder(page, 3).tap();
    await page.evaluate(() => scrollTo(0, 0));
    const confirm = page.getByRole("button", { name: "This is the only code" });
    const box = await confirm.boundingBox();
    const foot = await page.locator(".foot").boundingBox();
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual((foot?.y ?? 0) + 1);
  });

  it("are kept by who goes on without being sure", async () => {
    const page = await begin();
    await page.goto(`${stage.address}#/question/work`);
    const tick = page.locator(".option.is-several").first();
    await tick.tap();
    await page.getByRole("button", { name: "Not sure yet: keep the ticks, go on" }).tap();
    await page.getByRole("heading", { name: "When is it worst?" }).waitFor();
    await page.goto(`${stage.address}#/question/work`);
    await page.locator(".option.is-several[aria-pressed=true]").waitFor();
  });

  it("are kept of counts too", async () => {
    const page = await begin();
    await page.goto(`${stage.address}#/question/counts`);
    await page.getByLabel("Cylinder 2").fill("131");
    await page.goto(`${stage.address}#/answers`);
    await page.getByText("No answer yet.").waitFor();
    await page.reload();
    await page.goto(`${stage.address}#/question/counts`);
    expect(await page.getByLabel("Cylinder 2").inputValue()).toBe("131");
  });
});

describe.skipIf(!CHROMIUM)("at the roadside", () => {
  it("the place and what is at hand are asked beside the first question, and hold for the first step", async () => {
    const page = await begin();
    await page.getByText("Where is the car?").waitFor();
    await page.getByRole("button", { name: "Roadside" }).tap();
    await page.getByRole("button", { name: "Bare hands" }).tap();
    await page.getByRole("button", { name: "On, steady" }).tap();
    await page.getByRole("heading", { name: "What does the engine do?" }).waitFor();
    await page.goto(`${stage.address}#/ranking`);
    await page.locator(".next:not(.is-planning) .act").waitFor();
    const next = await page.locator(".next").innerText();
    expect(next).toContain("Only what can be done at the roadside is offered.");
    expect(next).not.toContain("Still to come");
    await page.goto(`${stage.address}#/hand`);
    const chosen = page.locator(".option[aria-pressed=true]");
    await chosen.first().waitFor();
    expect(await chosen.allInnerTexts()).toEqual(["At the roadside", "Nothing: bare hands only"]);
  });
});

describe.skipIf(!CHROMIUM)("an older car", () => {
  it("without a port is asked for no lamp and no codes, and says so until it is taken back", async () => {
    const page = await begin();
    const tick = page.getByRole("button", { name: "No port for a code reader" });
    await page.getByRole("heading", { name: "The engine warning lamp?" }).waitFor();
    await tick.tap();
    await page.getByRole("heading", { name: "What does the engine do?" }).waitFor();
    expect(await page.locator(".question .facts").innerText()).toBe("Question 1 of at most 4");
    expect(await tick.getAttribute("aria-pressed")).toBe("true");
    await page.goto(`${stage.address}#/add`);
    await page.getByText("Complaint", { exact: true }).waitFor();
    expect(await page.getByText("Lamp and codes", { exact: true }).count()).toBe(0);
    await page.goto(`${stage.address}#/hand`);
    await page.getByRole("button", { name: /^It has no port/ }).tap();
    await page.goto(`${stage.address}#/question`);
    await page.getByRole("heading", { name: "The engine warning lamp?" }).waitFor();
  });

  it("with a coil rail is not asked for cables, and a part is told apart from one way to fail", async () => {
    const page = await begin();
    await page.goto(`${stage.address}#/question/work`);
    await page.getByRole("button", { name: "New spark plugs" }).waitFor();
    expect(await page.getByRole("button", { name: /cables/ }).count()).toBe(0);
    await page.goto(`${stage.address}#/ranking`);
    const row = page.locator(".ranked-row").filter({ hasText: "other ways" }).first();
    await row.locator(".name-of").tap();
    const detail = page.locator(".detail .help").first();
    await detail.waitFor();
    const chances = await row.locator(".chance").allInnerTexts();
    const [whole, own] = [chances[0]?.split("\n")[0], chances[1]?.split("\n")[0]];
    expect(await detail.innerText()).toMatch(/^That it failed in this way: .+ in whatever way: .+/);
    expect(await detail.innerText()).toContain(own?.split(",")[0]);
    expect(await detail.innerText()).toContain(whole?.split(",")[0]);
    await row.getByText("Above: failed in whatever way. Here: each way by itself.").waitFor();
  });
});

describe.skipIf(!CHROMIUM)("the browser", () => {
  it("had nothing to complain of", () => {
    expect(stage.complaints).toEqual([]);
  });
});
