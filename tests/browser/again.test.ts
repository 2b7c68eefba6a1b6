// Who comes again: is a case that is here already opened and not doubled, and can every answer be changed?
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { writeLink } from "../../packages/web/src/hand-over/link.ts";
import { LISTED } from "../../packages/web/src/text/en-answers.ts";
import { LINKED } from "../../packages/web/src/text/en-shelf.ts";
import {
  CHROMIUM,
  giveFile,
  openDemo,
  openPage,
  PHONE,
  ranked,
  see,
  useStage,
} from "../helper/page.ts";
import { DOC } from "../helper/room.ts";

const stage = useStage();

async function openLink(page: Page, hash: string): Promise<void> {
  await see(stage, page, hash, ".column .is-finish");
}

async function casesHere(page: Page): Promise<number> {
  await see(stage, page, "#/cases", ".cases > li");
  return page.locator(".cases > li").count();
}

describe.skipIf(!CHROMIUM)("a link that is opened twice", () => {
  it("opens the case that is here, and says so", async () => {
    const page = await openPage(stage, PHONE);
    const hash = await writeLink(DOC);
    await openLink(page, hash);
    await page.getByText(LINKED.help).waitFor();
    await page.getByRole("button", { name: LINKED.open }).tap();
    await ranked(page);
    expect(await casesHere(page)).toBe(1);
    await openLink(page, hash);
    await page.getByText(LINKED.isHere).waitFor();
    await page.getByRole("button", { name: LINKED.open }).tap();
    await ranked(page);
    expect(await casesHere(page)).toBe(1);
    expect(stage.complaints).toEqual([]);
  });

  it("makes a case of its own beside one that was changed since", async () => {
    const page = await openPage(stage, PHONE);
    const hash = await writeLink(DOC);
    await openLink(page, hash);
    await page.getByRole("button", { name: LINKED.open }).tap();
    await ranked(page);
    await see(stage, page, "#/answers", ".answers > li");
    await page
      .getByRole("button", { name: /^Remove/ })
      .first()
      .tap();
    await openLink(page, hash);
    await page.getByText(LINKED.help).waitFor();
    await page.getByRole("button", { name: LINKED.open }).tap();
    await ranked(page);
    expect(await casesHere(page)).toBe(2);
  });
});

describe.skipIf(!CHROMIUM)("a file that is opened twice", () => {
  it("opens the case that is here", async () => {
    const page = await openPage(stage, PHONE);
    for (let i = 0; i < 2; i++) {
      await see(stage, page, "#/", "label.file");
      await giveFile(page, DOC);
      await ranked(page);
    }
    expect(await casesHere(page)).toBe(1);
  });
});

describe.skipIf(!CHROMIUM)("a question that nobody could tell", () => {
  it("stands in the list of answers and is changed there like any other", async () => {
    const page = await openPage(stage, PHONE);
    await openDemo(stage, page);
    await page.getByRole("button", { name: "Can't tell" }).tap();
    await page.getByRole("button", { name: "Shakes at idle" }).tap();
    await page.getByRole("heading", { name: /codes/ }).waitFor();
    await see(stage, page, "#/answers", ".answers > li");
    const lamp = page.locator(".answers > li", { hasText: "The engine warning lamp?" });
    await lamp.getByText(LISTED.notKnown).waitFor();
    await lamp.getByRole("link", { name: /^Change/ }).tap();
    await page.getByRole("button", { name: "On, steady" }).tap();
    await page.getByRole("heading", { name: LISTED.title, exact: true }).waitFor();
    await lamp.getByText("On, steady").waitFor();
    expect(await page.locator(".answers > li").first().innerText()).toContain("On, steady");
  });
});
