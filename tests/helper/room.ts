// A case for the rooms beside the ranking, and the ways into them: by file, by address, by keyboard alone.
import type { Finding } from "@half-order/core";
import type { CaseDocument } from "@half-order/core/wire";
import type { Locator, Page } from "playwright-core";
import { DESK, drawn, giveFile, ranked, type Stage, see } from "./page.ts";

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
  await see(stage, page, "#/cases", ".column:has(input[type=file])");
  await giveFile(page, doc);
}

export async function openCase(stage: Stage, page: Page, doc: CaseDocument): Promise<void> {
  await openFile(stage, page, doc);
  await ranked(page);
}

/** Presses Tab until the thing of this role and name has the focus. */
export async function tabTo(
  page: Page,
  role: "button" | "link" | "searchbox" | "textbox",
  name: string | RegExp,
): Promise<Locator> {
  const wanted = page.getByRole(role, { name }).first();
  await wanted.waitFor();
  for (let i = 0; i < 150; i++) {
    if (await wanted.evaluate((node) => node === document.activeElement)) return wanted;
    await page.keyboard.press("Tab");
  }
  throw new Error(`Tab never came to ${String(name)}.`);
}

// Each goes to what Tab has come to: a heading that is still to be drawn may have taken the focus from it.
export async function press(
  page: Page,
  role: "button" | "link",
  name: string | RegExp,
): Promise<void> {
  await (await tabTo(page, role, name)).press("Enter");
}

export async function type(page: Page, name: string | RegExp, text: string): Promise<void> {
  await (await tabTo(page, "textbox", name)).pressSequentially(text);
  // What is entered next goes to a page that has drawn this.
  await drawn(page);
}

/** The screen takes the focus with its heading. */
export async function atHeading(page: Page, name: string | RegExp): Promise<void> {
  await page.getByRole("heading", { name, exact: true }).and(page.locator(":focus")).waitFor();
}

/** A V6 of whose pair both cylinders are named. */
export const PAIR_DOC = {
  halfOrderCase: 1,
  engine: "demo.tern",
  findings: [
    { finding: "lamp", answer: "steady" },
    { finding: "codes", answer: ["P0302", "P0305"] },
  ],
} as const;
