// The server for tests: asked directly, never on a port, with a small page of its own.
import { mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { FastifyInstance } from "fastify";
import { buildApp } from "../../packages/server/src/app.ts";

export const PAGE_TEXT = "<!doctype html><title>A page for tests</title>";

/** A folder as the build of the page leaves it. */
export function pageFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "half-order-page-"));
  mkdirSync(join(folder, "assets"));
  writeFileSync(join(folder, "index.html"), PAGE_TEXT);
  writeFileSync(join(folder, "sw.js"), "// worker");
  writeFileSync(
    join(folder, "assets", "index-abc123.js"),
    `export const x = 1;${" ".repeat(4000)}`,
  );
  return folder;
}

/** The server without a page. */
export async function buildBareApp(): Promise<FastifyInstance> {
  return await buildApp({ page: join(tmpdir(), "half-order-no-such-folder") });
}
