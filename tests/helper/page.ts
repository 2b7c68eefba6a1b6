// The built page in a browser: a small server for its files, under the policy that it must live with.
import { existsSync, readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join } from "node:path";
import axe from "axe-core";
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Locator,
  type Page,
} from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect } from "vitest";
import { pagePolicy } from "../../packages/server/src/page-policy.ts";
import { LAZY } from "../../packages/web/src/text/en.ts";

export const CHROMIUM = process.env["CHROMIUM_PATH"] ?? "";

export const DIST = join(import.meta.dirname, "../../packages/web/dist");

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".json": "application/json",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".webmanifest": "application/manifest+json",
};

export const PHONE: BrowserContextOptions = {
  viewport: { width: 360, height: 740 },
  hasTouch: true,
  isMobile: true,
};
export const DESK: BrowserContextOptions = { viewport: { width: 1280, height: 800 } };

export interface Stage {
  readonly address: string;
  readonly browser: Browser;
  /** Everything that a page complained about: errors, and breaches of the policy. */
  readonly complaints: string[];
  /** Stops the server alone, as a network that is gone. */
  stopServing(): void;
  close(): Promise<void>;
}

interface StageOptions {
  /** Where the built page lies; its build unless told otherwise. */
  readonly folder?: string;
  /** Whether the worker of the build keeps the page; else one that fetches nothing, which leaves the processor free. */
  readonly keepsPage?: boolean;
}

/** The stage of a file of tests: opened before them and closed after them, and after each test the pages it opened. */
export function useStage(options?: StageOptions): Stage {
  let opened: Stage | undefined;
  let before: ReadonlySet<BrowserContext> = new Set();
  const now = (): Stage => {
    if (!opened) throw new Error("The stage opens before the first test.");
    return opened;
  };
  beforeAll(async () => {
    if (CHROMIUM) opened = await openStage(options);
  });
  beforeEach(() => {
    before = new Set(opened?.browser.contexts());
  });
  // What runs on in pages that nobody looks at would make the next test slow.
  afterEach(async () => {
    const own = opened?.browser.contexts().filter((context) => !before.has(context)) ?? [];
    await Promise.all(own.map((context) => context.close()));
  });
  afterAll(() => opened?.close());
  return {
    get address() {
      return now().address;
    },
    get browser() {
      return now().browser;
    },
    get complaints() {
      return now().complaints;
    },
    stopServing: () => now().stopServing(),
    close: () => now().close(),
  };
}

/** Serves the page on a free port of this machine and starts a browser. */
export async function openStage(options: StageOptions = {}): Promise<Stage> {
  const { folder = DIST, keepsPage = false } = options;
  if (!existsSync(join(folder, "index.html"))) {
    throw new Error(`${folder} is not built: run "npx vite build packages/web" first.`);
  }
  if (keepsPage && !existsSync(join(folder, "sw.js"))) {
    throw new Error('The page has no service worker yet: run "npm run build" first.');
  }
  const server = serve(folder, keepsPage);
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const browser = await chromium.launch({
    executablePath: CHROMIUM,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    browser,
    complaints: [],
    stopServing() {
      server.close();
      server.closeAllConnections();
    },
    async close() {
      await browser.close();
      if (server.listening) await new Promise((resolve) => server.close(resolve));
    },
  };
}

function serve(folder: string, keepsPage: boolean): Server {
  const policy = sayPolicy(pagePolicy(readFileSync(join(folder, "index.html"), "utf8")));
  return createServer((request, response) => {
    const path = (request.url ?? "/").split("?")[0] ?? "/";
    const file = join(folder, path === "/" ? "index.html" : path);
    if (!file.startsWith(folder) || !existsSync(file)) {
      response.writeHead(404).end();
      return;
    }
    const type = TYPES[extname(file)] ?? "application/octet-stream";
    response.writeHead(200, { "content-type": type, "content-security-policy": policy });
    response.end(path === "/sw.js" && !keepsPage ? "// Keeps nothing." : readFileSync(file));
  });
}

function sayPolicy(directives: ReturnType<typeof pagePolicy>): string {
  return Object.entries(directives)
    .map(([name, sources]) => [name, ...sources].join(" "))
    .join("; ");
}

/** A page of its own, with a store of its own. */
export async function openPage(
  stage: Stage,
  options: BrowserContextOptions,
  hash = "",
): Promise<Page> {
  const context = await stage.browser.newContext(options);
  const page = await context.newPage();
  page.on("pageerror", (error) => stage.complaints.push(String(error)));
  page.on("console", (message) => {
    if (message.type() === "error") stage.complaints.push(message.text());
  });
  await page.goto(`${stage.address}${hash}`);
  // The first screen stands before it answers to a hand.
  await ready(page);
  return page;
}

/** Both sizes, for tests of each. */
export const WAYS: readonly (readonly [string, BrowserContextOptions])[] = [
  ["phone", PHONE],
  ["desk", DESK],
];

/** Waits until the page answers to a hand. */
export async function ready(page: Page): Promise<void> {
  await page.waitForFunction(() => performance.getEntriesByName("ready").length > 0);
}

/** Goes to a screen and waits for what shows, by a selector of its own, that it is that one and whole. */
export async function see(stage: Stage, page: Page, hash: string, whole: string): Promise<void> {
  await page.goto(`${stage.address}${hash}`);
  await page.locator(whole).first().waitFor({ timeout: 60_000 });
}

/** The ranking with all that stands beside it, see `see`. */
export const RANKING = "main:has(.next:not(.is-planning) .act):has(.notes)";

const COMING =
  ".lazy, .is-weighing, .is-planning, [aria-busy=true], progress, .picture .dial:not(:has(.scale))";

/** Waits until nothing that a screen has called for is still to come. */
export async function settled(page: Page): Promise<void> {
  await page.waitForFunction(
    ([selector, words]) =>
      !document.querySelector(selector) && !document.body.innerText.includes(words),
    [COMING, LAZY.coming] as const,
    { polling: 50 },
  );
}

/** Waits two frames: by then what was entered is drawn, and what a new drawing calls for has begun. */
export function drawn(page: Page): Promise<void> {
  return page.evaluate(async () => {
    for (let i = 0; i < 2; i++) {
      await new Promise((go) => requestAnimationFrame(() => setTimeout(go)));
    }
  });
}

/** Opens an invented engine and waits until its first question stands, with the place that is asked beside it. */
export async function openDemo(stage: Stage, page: Page, name = /Dunlin/): Promise<void> {
  await see(stage, page, "#/demo", ".option.has-picture");
  await page.locator(".option.has-picture", { hasText: name }).click();
  await page.getByRole("heading", { name: "The engine warning lamp?" }).waitFor();
  await page.locator(".question .place").waitFor();
}

/** The same, with the lamp answered. */
export async function openDemoWithLamp(stage: Stage, page: Page, name?: RegExp): Promise<void> {
  await openDemo(stage, page, name);
  await page.getByRole("button", { name: "On, steady" }).click();
  await page.getByRole("heading", { name: "What does the engine do?" }).waitFor();
  // With its ranking come cautions, which push the options down.
  await page.locator(".foot .so-far, .desk-ranking .ranked-row").first().waitFor();
}

/** Hands a case file, or what pretends to be one, to the screen that stands. */
export async function giveFile(page: Page, file: unknown): Promise<void> {
  await page.locator("input[type=file]").setInputFiles({
    name: "case.json",
    mimeType: "application/json",
    buffer: Buffer.from(typeof file === "string" ? file : JSON.stringify(file)),
  });
}

/** Taps what stays pressed, and waits until it is: the touch is over before the page has heard of it. */
export async function tick(button: Locator): Promise<void> {
  // What still comes pushes down what stands below it, and the click goes where the button was.
  await settled(button.page());
  await button.tap();
  await expect.poll(() => button.getAttribute("aria-pressed")).toBe("true");
}

/** What is saved as a file by an act. */
export async function savedBy(page: Page, act: () => Promise<void>): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent("download"), act()]);
  return readFileSync(await download.path(), "utf8");
}

/** What axe finds wrong with the page once it stands, as lines to read. */
export async function violations(page: Page): Promise<readonly string[]> {
  await settled(page);
  // To hand it over takes longer than to run it.
  if (!(await page.evaluate(() => "axe" in globalThis))) await page.evaluate(axe.source);
  const { violations: found } = await page.evaluate(() =>
    (globalThis as unknown as { axe: typeof axe }).axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
      // Text is held to the stricter 7:1, which the page promises.
      rules: { "color-contrast-enhanced": { enabled: true }, "target-size": { enabled: true } },
      // Nobody reads what is right in full.
      resultTypes: ["violations"],
    }),
  );
  return found.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`));
}

/** The same in the light and in the dark. */
export async function violationsInBoth(page: Page): Promise<readonly string[]> {
  const found: string[] = [];
  for (const colorScheme of ["light", "dark"] as const) {
    await page.emulateMedia({ colorScheme });
    found.push(...(await violations(page)).map((line) => `${colorScheme}, ${line}`));
  }
  return found;
}

/** What a selector finds that is shown and lower than the 48 px of a thumb, or also what is narrower. */
export function smallTargets(
  page: Page,
  selector: string,
  sides: "height" | "both" = "height",
): Promise<readonly string[]> {
  return page.evaluate(
    ([all, of]) =>
      [...document.querySelectorAll(all)]
        .map((node) => ({ node, box: node.getBoundingClientRect() }))
        .filter(({ box }) => box.width > 0)
        .filter(({ box }) => box.height < 47.5 || (of === "both" && box.width < 47.5))
        .map(({ node, box }) => `${node.outerHTML.slice(0, 80)} ${box.width} × ${box.height}`),
    [selector, sides] as const,
  );
}

/** By how many px something reaches beyond the right edge of the window. */
export function overhang(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
}

/** Waits until the ranking shown is that of the answers given. */
export async function ranked(page: Page): Promise<void> {
  await page.locator(".ranking:not(.is-weighing) .ranked-row").first().waitFor();
}
