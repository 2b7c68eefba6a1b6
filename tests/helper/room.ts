// A case for the rooms beside the ranking, and the ways into them: by file, by address, by keyboard alone.
import { readFileSync } from "node:fs";
import type { Finding } from "@half-order/core";
import type { CaseDocument } from "@half-order/core/wire";
import type { Page } from "playwright-core";
import { DESK, ranked, type Stage } from "./page.ts";

export const WHEN = "2026-05-01T09:30:00.000Z";
export const FINDINGS: readonly Finding[] = [
  { finding: "lamp", answer: "steady" },
  { finding: "codes", answer: ["P0302"] },
  { finding: "plug.age", answer: "over-100" },
  { finding: "swap.plug", cylinder: 2, answer: "moved" },
];
export const DOC: CaseDocument = {
  halfOrderCase: 1,
  engine: "demo.wagtail",
  title: "Hill road",
  findings: FINDINGS,
  repairs: [{ repair: "repair.plug-set", result: "same", when: WHEN }],
  records: [
    {
      when: "2026-04-02",
      odometerKm: 120_000,
      fittedAtKm: 60_000,
      plugs: [
        { cylinder: 1, gapMm: 0.9, look: "tan" },
        { cylinder: 2, gapMm: 1.4, look: "wet-oil" },
        { cylinder: 3, look: "dry-black" },
      ],
    },
  ],
  work: {
    ticks: [{ list: "repair.plug-set", line: "boot.home", when: WHEN }],
    drives: [{ of: WHEN, misfire: "none", when: "2026-05-02T09:30:00.000Z" }],
  },
};

/** Where distances are kilometres and gaps millimetres. */
export const METRIC = { ...DESK, locale: "en-IE" };

export async function openFile(stage: Stage, page: Page, doc: unknown): Promise<void> {
  await page.goto(`${stage.address}#/cases`);
  await page.locator("h1").waitFor();
  await page.locator("input[type=file]").setInputFiles({
    name: "case.json",
    mimeType: "application/json",
    buffer: Buffer.from(typeof doc === "string" ? doc : JSON.stringify(doc)),
  });
}

export async function openCase(stage: Stage, page: Page, doc: CaseDocument): Promise<void> {
  await openFile(stage, page, doc);
  await ranked(page);
}

export async function see(stage: Stage, page: Page, hash: string, whole: string): Promise<void> {
  await page.goto(`${stage.address}${hash}`);
  await page.locator(whole).first().waitFor({ timeout: 60_000 });
}

/** Presses Tab until the thing of this role and name has the focus. */
export async function tabTo(
  page: Page,
  role: "button" | "link" | "textbox",
  name: string | RegExp,
) {
  const wanted = page.getByRole(role, { name }).first();
  await wanted.waitFor();
  for (let i = 0; i < 150; i++) {
    if (await wanted.evaluate((node) => node === document.activeElement)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`Tab never came to ${String(name)}.`);
}

export async function press(
  page: Page,
  role: "button" | "link",
  name: string | RegExp,
): Promise<void> {
  await tabTo(page, role, name);
  await page.keyboard.press("Enter");
}

export async function type(page: Page, name: string | RegExp, text: string): Promise<void> {
  await tabTo(page, "textbox", name);
  await page.keyboard.type(text);
}

/** The screen takes the focus with its heading. */
export async function atHeading(page: Page, name: string): Promise<void> {
  await page.waitForFunction(
    (wanted) =>
      /^H[12]$/.test(document.activeElement?.tagName ?? "") &&
      document.activeElement?.textContent === wanted,
    name,
  );
}

/** What is saved when a key is pressed. */
export async function savedBy(page: Page, act: () => Promise<void>): Promise<string> {
  const download = page.waitForEvent("download");
  await act();
  return readFileSync(await (await download).path(), "utf8");
}
