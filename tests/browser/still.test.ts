// Does an answer stay under the finger, whatever comes late, and are enough answers seen at once on a small phone?
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { CHROMIUM, openDemo, openPage, PHONE, settled, useStage } from "../helper/page.ts";
import { openCase } from "../helper/room.ts";

const stage = useStage();

const ANSWER = ".question .options > *";

/** Notes at each frame from now on, and after each reload, how far down the first answer of a question stands. */
async function watch(page: Page): Promise<void> {
  const look = (selector: string): void => {
    const tops: string[] = [];
    Object.assign(globalThis, { tops });
    const note = (): void => {
      const top = document.querySelector(selector)?.getBoundingClientRect().top;
      const asked = document.querySelector(".question h1")?.textContent;
      if (top !== undefined) tops.push(`${asked} ${Math.round(top)}`);
      requestAnimationFrame(note);
    };
    requestAnimationFrame(note);
  };
  await page.addInitScript(look, ANSWER);
  await page.evaluate(look, ANSWER);
}

/** By question where its first answer stood. */
async function places(page: Page): Promise<readonly string[]> {
  const tops = await page.evaluate(() => (globalThis as { tops?: string[] }).tops ?? []);
  return [...new Set(tops)];
}

/** What each level of driving, and each caution, is called for by. */
const GIVEN = [
  ["a steady lamp", [{ finding: "lamp", answer: "steady" }]],
  ["a lamp that blinks", [{ finding: "lamp", answer: "blinking" }]],
  ["no lamp", [{ finding: "lamp", answer: "off" }]],
  ["petrol on the outside", [{ finding: "smell", answer: ["petrol"] }]],
  ["nothing that is known", []],
] as const;

describe.skipIf(!CHROMIUM)("the answers to a question, on a phone", () => {
  it.each(GIVEN)(
    "stay where they are when the page comes up anew after %s",
    async (_, findings) => {
      const page = await openPage(stage, PHONE);
      await openCase(stage, page, { halfOrderCase: 1, engine: "demo.dunlin", findings });
      await watch(page);
      for (const hash of ["#/question/onset", "#/question"]) {
        await page.goto(`${stage.address}${hash}`);
        await page.reload();
        await page.locator(ANSWER).first().waitFor();
        await settled(page);
        if (findings.length > 0) await page.locator(".drive-answer .drive-line").waitFor();
        const seen = await places(page);
        expect(seen, hash).toHaveLength(1);
      }
    },
  );

  it("stay where they are from one first question to the next", async () => {
    const page = await openPage(stage, PHONE);
    await openDemo(stage, page);
    await settled(page);
    await watch(page);
    for (const [answer, next] of [
      ["Blinking now", "What does the engine do?"],
      ["Shakes at idle", "Which codes are stored or pending?"],
    ] as const) {
      await page.getByRole("button", { name: answer }).tap();
      await page.getByRole("heading", { name: next }).waitFor();
      await page.locator(".drive-answer .drive-line").waitFor();
      await settled(page);
    }
    expect(await places(page)).toHaveLength(3);
  });

  it("are seen, three and more of them whole, at each of the first questions", async () => {
    const page = await openPage(stage, PHONE);
    await openDemo(stage, page);
    for (let step = 1; step <= 6; step++) {
      await settled(page);
      const asked = await page.locator(".question h1").innerText();
      const whole = await page.evaluate(() => {
        const foot = document.querySelector(".foot")?.getBoundingClientRect().top ?? 0;
        const answers = [...document.querySelectorAll(".question .options :is(button, .seat)")];
        const boxes = answers.map((answer) => answer.getBoundingClientRect());
        return boxes.filter(({ top, bottom }) => top >= 0 && bottom <= foot).length;
      });
      expect(whole, asked).toBeGreaterThanOrEqual(step === 1 ? 4 : 3);
      const finish = page.locator(".question .is-finish");
      if ((await finish.count()) > 0) await finish.tap();
      else await page.locator(".question .options .option").first().tap();
      await page.waitForFunction((old) => document.querySelector("h1")?.innerText !== old, asked);
    }
  });
});
