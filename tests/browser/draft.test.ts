// Is anything lost that was ticked and not confirmed, and does the place of the car reach the first step?
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { STEP } from "../../packages/web/src/text/en-mend.ts";
import { PLACE } from "../../packages/web/src/text/en-place.ts";
import {
  CHROMIUM,
  openDemo,
  openDemoWithLamp,
  openPage,
  PHONE,
  RANKING,
  ranked,
  see,
  settled,
  tick,
  useStage,
} from "../helper/page.ts";

const stage = useStage();

async function begin(): Promise<Page> {
  const page = await openPage(stage, PHONE);
  await openDemo(stage, page);
  return page;
}

const cylinder = (page: Page, name: number) =>
  page.getByRole("button", { name: new RegExp(`^Cylinder ${name},`) });

describe.skipIf(!CHROMIUM)("ticks that are not confirmed", () => {
  it("wait for their question, whichever way it is left and after a reload", async () => {
    const page = await openPage(stage, PHONE);
    await openDemoWithLamp(stage, page);
    await see(stage, page, "#/question/codes", "#codes-help");
    await tick(cylinder(page, 2));
    const others = page.getByLabel(/^Other codes/);
    await others.fill("P0171");
    await page.getByRole("button", { name: "These 2 are all" }).waitFor();
    await page.locator(".foot .so-far").tap();
    await ranked(page);
    await page.reload();
    await page.getByRole("link", { name: /^Ticked, and not weighed yet/ }).tap();
    await cylinder(page, 2).and(page.locator("[aria-pressed=true]")).waitFor();
    await expect.poll(() => others.inputValue()).toBe("P0171");
    await page.getByRole("button", { name: "These 2 are all" }).tap();
    await others.waitFor({ state: "detached" });
    await see(stage, page, "#/answers", ".answers > li");
    await page.getByText("P0302, P0171").waitFor();
    await see(stage, page, "#/ranking", RANKING);
    expect(await page.getByText("Ticked, and not weighed yet").count()).toBe(0);
  });

  it("forbid driving at once where they speak against it", async () => {
    const page = await begin();
    await page.getByRole("link", { name: PLACE.alarm }).tap();
    await tick(page.getByRole("button", { name: /^Liquid petrol seen/ }));
    await page.locator(".drive-line.is-stop-now").waitFor();
    await see(stage, page, "#/ranking", RANKING);
    await page
      .getByRole("link", { name: /^Ticked, and not weighed yet: Is any of this/ })
      .waitFor();
    await page.locator(".next").getByText(STEP.stopFirst).waitFor();
    await see(stage, page, "#/question/alarm", ".question .option");
    await page.getByRole("button", { name: /^Liquid petrol seen/ }).tap();
    await page.locator(".drive-line.is-stop-now").waitFor({ state: "detached" });
  });

  it("can be confirmed without scrolling on a phone", async () => {
    const page = await begin();
    await see(stage, page, "#/question/codes", "#codes-help");
    await tick(cylinder(page, 3));
    const confirm = page.getByRole("button", { name: "This is the only code" });
    await confirm.waitFor();
    await settled(page);
    await page.evaluate(() => scrollTo(0, 0));
    const box = await confirm.boundingBox();
    const foot = await page.locator(".foot").boundingBox();
    expect((box?.y ?? 9999) + (box?.height ?? 0)).toBeLessThanOrEqual((foot?.y ?? 0) + 1);
  });

  it("are kept by who goes on without being sure", async () => {
    const page = await begin();
    await see(stage, page, "#/question/work", ".option.is-several");
    await tick(page.locator(".option.is-several").first());
    await page.getByRole("button", { name: "Not sure yet: keep the ticks, go on" }).tap();
    await page.getByRole("heading", { name: "When is it worst?" }).waitFor();
    await see(stage, page, "#/question/work", ".option.is-several[aria-pressed=true]");
  });

  it("are kept of counts too", async () => {
    const page = await begin();
    await see(stage, page, "#/question/counts", ".counts input");
    await page.getByLabel("Cylinder 2").fill("131");
    await page.goto(`${stage.address}#/answers`);
    await page.getByText("No answer yet.").waitFor();
    await page.reload();
    await see(stage, page, "#/question/counts", ".counts input");
    await expect.poll(() => page.getByLabel("Cylinder 2").inputValue()).toBe("131");
  });
});

describe.skipIf(!CHROMIUM)("at the roadside", () => {
  it("the place and what is at hand are asked beside the first question, and hold for the first step", async () => {
    const page = await begin();
    await page.getByText("Where is the car?").waitFor();
    await tick(page.getByRole("button", { name: "Roadside" }));
    await tick(page.getByRole("button", { name: "Bare hands" }));
    await page.getByRole("button", { name: "On, steady" }).tap();
    await page.getByRole("heading", { name: "What does the engine do?" }).waitFor();
    await see(stage, page, "#/ranking", RANKING);
    const next = page.locator(".next:not(.is-planning)");
    const here = "Only what can be done at the roadside is offered.";
    await next.filter({ hasText: here }).waitFor();
    expect(await next.innerText()).not.toContain("Still to come");
    await see(stage, page, "#/hand", "fieldset.choices");
    const chosen = page.locator(".option[aria-pressed=true]");
    await expect
      .poll(() => chosen.allInnerTexts())
      .toEqual(["At the roadside", "Nothing: bare hands only"]);
  });
});

describe.skipIf(!CHROMIUM)("an older car", () => {
  it("without a port is asked for no lamp and no codes, and says so until it is taken back", async () => {
    const page = await begin();
    await tick(page.getByRole("button", { name: "No port for a code reader" }));
    await page.getByRole("heading", { name: "What does the engine do?" }).waitFor();
    const step = (): Promise<string> => page.locator(".question .facts").innerText();
    await expect.poll(step).toBe("Question 1 of at most 4");
    await see(stage, page, "#/add", 'summary:text-is("Complaint")');
    expect(await page.getByText("Lamp and codes", { exact: true }).count()).toBe(0);
    await see(stage, page, "#/hand", "fieldset.choices");
    const noPort = page.getByRole("button", { name: /^It has no port/ });
    await noPort.tap();
    await expect.poll(() => noPort.getAttribute("aria-pressed")).toBe("false");
    await page.goto(`${stage.address}#/question`);
    await page.getByRole("heading", { name: "The engine warning lamp?" }).waitFor();
  });

  it("with a coil rail is not asked for cables, and a part is told apart from one way to fail", async () => {
    const page = await begin();
    await see(stage, page, "#/question/work", ".option.is-several");
    await page.getByRole("button", { name: "New spark plugs" }).waitFor();
    expect(await page.getByRole("button", { name: /cables/ }).count()).toBe(0);
    await see(stage, page, "#/ranking", RANKING);
    await settled(page);
    const row = page.locator(".ranked-row").filter({ hasText: "other ways" }).first();
    await row.locator(".name-of").tap();
    const detail = page.locator(".detail .help").first();
    // The full look may change the chances and their order: all of it is read at once.
    const said = (): Promise<{ readonly chances: string[]; readonly words: string }> =>
      detail.evaluate((node) => ({
        chances: [...(node.closest(".ranked-row")?.querySelectorAll(".chance") ?? [])].map(
          (each) => (each as HTMLElement).innerText.split("\n")[0]?.split(",")[0] ?? "",
        ),
        words: (node as HTMLElement).innerText,
      }));
    await expect
      .poll(async () => (await said()).words)
      .toMatch(/^That it failed in this way: .+ in whatever way: .+/);
    const { chances, words } = await said();
    expect(chances.length).toBeGreaterThan(1);
    for (const chance of chances.slice(0, 2)) expect(words).toContain(chance);
    await row.getByText("Above: failed in whatever way. Here: each way by itself.").waitFor();
  });
});

describe.skipIf(!CHROMIUM)("the browser", () => {
  it("had nothing to complain of", () => {
    expect(stage.complaints).toEqual([]);
  });
});
