// Is each screen told from the others in the list of tabs, in the history, and by who reads titles aloud?
import { describe, expect, it } from "vitest";
import { NAME, RANKING, START } from "../../packages/web/src/text/en.ts";
import {
  CHROMIUM,
  openPage,
  RANKING as RANKED,
  ready,
  see,
  useStage,
  WAYS,
} from "../helper/page.ts";
import { DOC, openCase } from "../helper/room.ts";

const stage = useStage();

describe.skipIf(!CHROMIUM).each(WAYS)("the title of a page, on a %s", (_, options) => {
  it("is the heading of its screen, with the case where it is about one", async () => {
    const page = await openPage(stage, options);
    const titled = (...words: readonly string[]) =>
      expect.poll(() => page.title()).toBe([...words, NAME].join(" – "));
    await titled(START.title);
    await openCase(stage, page, DOC);
    await see(stage, page, "#/ranking", RANKED);
    await titled(RANKING.title, DOC.title ?? "");
    const titles = new Set<string>();
    for (const [hash, heading] of [
      ["#/question/lamp", "The engine warning lamp?"],
      ["#/question/onset", "How did it begin?"],
      ["#/answers", "Answers"],
      ["#/record", "Plugs out"],
    ] as const) {
      await page.goto(`${stage.address}${hash}`);
      await titled(heading, DOC.title ?? "");
      titles.add(await page.title());
    }
    expect(titles.size).toBe(4);
    for (const [hash, heading] of [
      ["#/glossary", "Words of the trade"],
      ["#/cases", "Cases"],
      ["#/pick/4", "How do the cylinders stand?"],
    ] as const) {
      await page.goto(`${stage.address}${hash}`);
      await titled(heading);
    }
    expect(stage.complaints).toEqual([]);
  });

  it("comes back with the screen, and stays with the entry that it belongs to", async () => {
    const page = await openPage(stage, options);
    await openCase(stage, page, DOC);
    await see(stage, page, "#/question/onset", ".question .option");
    await expect.poll(() => page.title()).toContain("How did it begin?");
    await page.locator(".question > .is-dashed").click();
    await expect.poll(() => page.title()).not.toContain("How did it begin?");
    const focused = page.locator("h1:focus, h2:focus");
    await expect.poll(() => focused.count()).toBe(1);
    const [heading] = (await page.title()).split(" – ");
    expect(await focused.innerText()).toBe(heading);
    await page.goBack();
    await expect.poll(() => page.title()).toContain("How did it begin?");
    await page.reload();
    await ready(page);
    await expect.poll(() => page.title()).toContain("How did it begin?");
  });
});
