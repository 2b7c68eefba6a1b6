// Does the built server start, say where it is, and stop when told? Needs the build, as `npm test` has it.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync, readFileSync } from "node:fs";
import { get } from "node:https";
import { createServer } from "node:net";
import { join } from "node:path";
import { describe, expect, it } from "vitest";

const main = join(import.meta.dirname, "../../packages/server/dist/main.js");
/** A pair that is published with the tests, so it protects nothing. */
const tlsFile = (part: "cert" | "key"): string =>
  join(import.meta.dirname, `../../fixtures/tls/test-only-${part}.pem`);
const isBuilt = existsSync(join(main, "../app.js"));

function start(environment: Record<string, string>, words: readonly string[] = []) {
  const child = spawn(process.execPath, [main, ...words], {
    env: { ...process.env, ...environment },
  });
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

  it("serves by https with the certificate that it is given", async () => {
    const words = ["--tls-cert", tlsFile("cert"), "--tls-key", tlsFile("key")];
    const { child, said, closed } = start({ HOST: "127.0.0.1", PORT: "0" }, words);
    await once(child.stdout, "data");
    const [, address] = /^Half-Order is at (https:\/\/127\.0\.0\.1:\d+)\n$/.exec(said.out) ?? [];
    const [response] = await once(
      get(`${address}/healthz`, { ca: readFileSync(tlsFile("cert")) }),
      "response",
    );
    expect(response.statusCode).toBe(200);
    expect(response.socket.authorized).toBe(true);
    response.resume();
    child.kill("SIGTERM");
    expect(await closed).toEqual([0, null]);
  });

  it("refuses a certificate without its key, and says how the two are given", async () => {
    const { said, closed } = start({}, ["--tls-cert", tlsFile("cert")]);
    expect(await closed).toEqual([2, null]);
    expect(said.err).toContain("TLS_KEY: It is missing.");
    expect(said.err).toContain("--tls-key FILE");
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
