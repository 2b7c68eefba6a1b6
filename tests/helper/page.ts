// The built page in a browser: a small server for its files, under the policy that it must live with.
import { existsSync, readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join } from "node:path";
import axe from "axe-core";
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";

export const CHROMIUM = process.env["CHROMIUM_PATH"] ?? "";

export const DIST = join(import.meta.dirname, "../../packages/web/dist");

const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; " +
  "connect-src 'self'; manifest-src 'self'; worker-src 'self'; font-src 'self'; " +
  "base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

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

/** Serves the page, from its build unless told otherwise, on a free port of this machine and starts a browser. */
export async function openStage(folder = DIST): Promise<Stage> {
  if (!existsSync(join(folder, "index.html"))) {
    throw new Error(`${folder} is not built: run "npx vite build packages/web" first.`);
  }
  const server = serve(folder);
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

function serve(folder: string): Server {
  return createServer((request, response) => {
    const path = (request.url ?? "/").split("?")[0] ?? "/";
    const file = join(folder, path === "/" ? "index.html" : path);
    if (!file.startsWith(folder) || !existsSync(file)) {
      response.writeHead(404).end();
      return;
    }
    const type = TYPES[extname(file)] ?? "application/octet-stream";
    response.writeHead(200, { "content-type": type, "content-security-policy": POLICY });
    response.end(readFileSync(file));
  });
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
  return page;
}

/** What axe finds wrong with the page as it stands, as lines to read. */
export async function violations(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  const { violations: found } = await page.evaluate(() =>
    (globalThis as unknown as { axe: typeof axe }).axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
      // Text is held to the stricter 7:1, which the page promises.
      rules: { "color-contrast-enhanced": { enabled: true }, "target-size": { enabled: true } },
    }),
  );
  return found.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`));
}

/** Waits until the ranking shown is that of the answers given. */
export async function ranked(page: Page): Promise<void> {
  await page.locator(".ranking:not(.is-weighing) .ranked-row").first().waitFor();
}
