// Is a figure asked back that was rather read in another unit than the one that is set?
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { FIGURE } from "../../packages/web/src/text/en-measured.ts";
import { CHROMIUM, openPage, PHONE, ranked, savedBy, see, useStage } from "../helper/page.ts";
import { DOC, openCase } from "../helper/room.ts";

const stage = useStage();
/** Where gaps are thousandths of an inch. */
const IN_INCHES = { ...PHONE, locale: "en-US" };

async function at(hash: string): Promise<Page> {
  const page = await openPage(stage, IN_INCHES);
  await openCase(stage, page, { ...DOC, records: [] });
  await see(stage, page, hash, "main input:not([type=date])");
  return page;
}

/** The answer that the case holds to a finding. */
async function kept(page: Page, finding: string): Promise<unknown> {
  await see(stage, page, "#/answers", ".answers > li");
  const file = await savedBy(page, () =>
    page.getByRole("button", { name: "Save as a file" }).tap(),
  );
  const { findings } = JSON.parse(file) as { findings: { finding: string; answer: unknown }[] };
  return findings.find((each) => each.finding === finding)?.answer;
}

describe.skipIf(!CHROMIUM)("a figure of another unit", () => {
  it("is asked back at a question, and taken in its own unit", async () => {
    const page = await at("#/question/plug.gap/add");
    const field = page.getByLabel(/^Or the figure you read, in thou/);
    await field.fill("1.2");
    await page.getByRole("button", { name: FIGURE.use, exact: true }).tap();
    const asked = page.getByRole("alert");
    await asked.getByText("1.2\u00a0mm? You have thousandths of an inch set.").waitFor();
    expect(await field.getAttribute("aria-invalid")).toBe("true");
    await asked.getByRole("button", { name: /^It is 1.2\smm: show millimetres/ }).tap();
    await page.getByText(/ylinder 2: 1.2\smm/).waitFor();
    expect(await kept(page, "plug.gap")).toBe(1.2);
  });

  it("is kept as it is where that is meant", async () => {
    const page = await at("#/question/plug.gap/add");
    await page.getByLabel(/^Or the figure you read, in thou/).fill("1.2");
    await page.getByRole("button", { name: FIGURE.use, exact: true }).tap();
    await page.getByRole("button", { name: /^It is 1.2\sthou all the same/ }).tap();
    await page.getByText(/ylinder 2: 1.2\sthou/).waitFor();
    expect(await kept(page, "plug.gap")).toBeCloseTo(0.03048, 6);
  });

  it("is asked back at a compression that no engine has, with the unit that fits", async () => {
    const page = await at("#/question/compression/add");
    await page.getByLabel(/^Or the figure you read, in psi/).fill("12");
    await page.getByRole("button", { name: FIGURE.use, exact: true }).tap();
    await page.getByRole("button", { name: /^It is 12\sbar/ }).tap();
    await page.locator(".given li").first().waitFor();
    expect(await kept(page, "compression")).toBe(1200);
  });

  it("keeps a record from being kept until it is cleared up", async () => {
    const page = await at("#/record");
    const field = page.getByLabel(/^Gap as it came out, thou/);
    await field.fill("1.2");
    await page.getByText("1.2\u00a0mm? You have thousandths of an inch set.").waitFor();
    await page.getByRole("button", { name: /^It is 1.2\smm/ }).tap();
    const inMm = page.getByLabel(/^Gap as it came out, mm/);
    await expect.poll(() => inMm.inputValue()).toBe("1.2");
    expect(await page.getByRole("alert").count()).toBe(0);
    await inMm.fill("44");
    await page.getByText("44\u00a0thou? You have millimetres set.").waitFor();
    await page.getByText(/^Write a number from 0 to 5 mm/).waitFor();
    expect(await inMm.getAttribute("aria-invalid")).toBe("true");
    expect(stage.complaints).toEqual([]);
    await see(stage, page, "#/ranking", ".ranking");
    await ranked(page);
  });
});
