// Does the built server start, say where it is, and stop when told? Needs the build, as `npm test` has it.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import { describe, expect, it } from "vitest";

const main = join(import.meta.dirname, "../../packages/server/dist/main.js");
const isBuilt = existsSync(join(main, "../app.js"));

function start(environment: Record<string, string>) {
  const child = spawn(process.execPath, [main], { env: { ...process.env, ...environment } });
  const said = { out: "", err: "" };
  child.stdout.on("data", (piece) => (said.out += piece));
  child.stderr.on("data", (piece) => (said.err += piece));
  return { child, said, closed: once(child, "close") };
}

describe.skipIf(!isBuilt)("the process", () => {
  it.each(["SIGTERM", "SIGINT"] as const)("serves, and ends cleanly on %s", async (signal) => {
    const { child, said, closed } = start({ HOST: "127.0.0.1", PORT: "0" });
    await once(child.stdout, "data");
    const [, address] = /^Half-Order is at (http:\/\/127\.0\.0\.1:\d+)\n$/.exec(said.out) ?? [];
    const response = await fetch(`${address}/healthz`);
    expect(await response.json()).toMatchObject({ status: "ok" });
    child.kill(signal);
    expect(await closed).toEqual([0, null]);
    expect(said.err).toBe("");
  });

  it("says what to do when its port is taken", async () => {
    const other = createServer().listen(0, "127.0.0.1");
    await once(other, "listening");
    const address = other.address();
    const port = typeof address === "object" ? String(address?.port) : "";
    const { said, closed } = start({ HOST: "127.0.0.1", PORT: port });
    expect(await closed).toEqual([1, null]);
    other.close();
    expect(said.err).toContain(`Port ${port} is taken by another program.`);
    expect(said.err).toContain("PORT=");
    expect(said.out).toBe("");
  });

  it("refuses a port that is none", async () => {
    const { said, closed } = start({ PORT: "http" });
    expect(await closed).toEqual([2, null]);
    expect(said.err).toContain('PORT: "http" was not expected here.');
  });
});
