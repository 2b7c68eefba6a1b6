// Does the page come with the right headers, and only where a page is asked for?
import { createHash } from "node:crypto";
import { rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { brotliCompressSync, brotliDecompressSync, gunzipSync } from "node:zlib";
import { afterAll, describe, expect, it } from "vitest";
import { buildApp } from "../../packages/server/src/app.ts";
import { pagePolicy } from "../../packages/server/src/page-policy.ts";
import { buildBareApp, PAGE_TEXT, pageFolder } from "../helper/build-app.ts";

const folder = pageFolder();
const app = await buildApp({ page: folder });
afterAll(() => rmSync(folder, { recursive: true }));

const browse = (url: string, accept = "text/html,*/*;q=0.8") =>
  app.inject({ url, headers: { accept } });

describe("the page", () => {
  it.each(["/", "/index.html", "/narrow/plugs", "/case?id=1"])("is at %s, fresh", async (url) => {
    const response = await browse(url);
    expect(response.statusCode).toBe(200);
    expect(response.body).toBe(PAGE_TEXT);
    expect(response.headers["cache-control"]).toBe("no-cache");
    expect(response.headers["content-type"]).toMatch(/^text\/html/);
  });

  it("answers HEAD", async () => {
    const response = await app.inject({ method: "HEAD", url: "/" });
    expect(response.statusCode).toBe(200);
    expect(response.body).toBe("");
  });

  it("may run nothing but its own files", async () => {
    const { headers } = await browse("/");
    expect(headers["content-security-policy"]?.toString().split(";").sort()).toEqual([
      "base-uri 'none'",
      "connect-src 'self'",
      "default-src 'none'",
      "font-src 'self'",
      "form-action 'self'",
      "frame-ancestors 'none'",
      "img-src 'self' data:",
      "manifest-src 'self'",
      "script-src 'self'",
      "style-src 'self'",
      "worker-src 'self'",
    ]);
    expect(headers["x-content-type-options"]).toBe("nosniff");
    expect(headers["x-frame-options"]).toBe("DENY");
  });

  it("runs what stands in its document, and nothing that gets into it", async () => {
    // The example of Content Security Policy Level 2 and 3, section on hashes for inline scripts: a
    // script of this text, and the SHA-256 of it.
    const script = "alert('Hello, world.');";
    const hash = "'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='";
    const style = "p{color:red}";
    const policy = pagePolicy(
      `<script>${script}</script><script src="./a.js"></script><style>${style}</style>`,
    );
    const ofStyle = createHash("sha256").update(style).digest("base64");
    expect(policy["script-src"]).toEqual(["'self'", hash]);
    expect(policy["style-src"]).toEqual(["'self'", `'sha256-${ofStyle}'`]);
  });

  it("is not sent to programs, for missing files, or under /api", async () => {
    expect((await browse("/narrow/plugs", "application/json")).statusCode).toBe(404);
    expect((await browse("/assets/gone.js", "*/*")).statusCode).toBe(404);
    expect((await browse("/api/v1/nothing")).statusCode).toBe(404);
    expect((await browse("/api")).statusCode).toBe(404);
    expect((await app.inject({ method: "POST", url: "/narrow" })).statusCode).toBe(404);
  });

  it("goes out as the build compressed it, to those who can read that", async () => {
    const file = join(folder, "assets/later-abc123.json");
    writeFileSync(file, '{"as":"it is"}');
    writeFileSync(`${file}.br`, brotliCompressSync('{"as":"compressed"}'));
    const ask = (encoding: string) =>
      app.inject({ url: "/assets/later-abc123.json", headers: { "accept-encoding": encoding } });
    const small = await ask("gzip, deflate, br");
    expect(small.headers).toMatchObject({
      "content-encoding": "br",
      "content-type": "application/json; charset=utf-8",
      "cache-control": "public, max-age=31536000, immutable",
      vary: expect.stringMatching(/accept-encoding/i),
    });
    expect(brotliDecompressSync(small.rawPayload).toString()).toBe('{"as":"compressed"}');
    const plain = await ask("identity");
    expect(plain.headers["content-encoding"]).toBeUndefined();
    expect(plain.body).toBe('{"as":"it is"}');
  });

  it("does not let anyone out of its folder", async () => {
    for (const url of ["/../package.json", "/%2e%2e/package.json", "/assets/..%2f..%2fx"]) {
      const response = await browse(url, "*/*");
      expect(response.statusCode).toBeGreaterThanOrEqual(400);
      expect(response.headers["content-type"]).toMatch(/^application\/problem\+json/);
    }
  });
});

describe("its files", () => {
  it("with a hash in the name may be kept for ever", async () => {
    const response = await browse("/assets/index-abc123.js", "*/*");
    expect(response.statusCode).toBe(200);
    expect(response.headers["cache-control"]).toBe("public, max-age=31536000, immutable");
  });

  it("without one are asked for again", async () => {
    const response = await browse("/sw.js", "*/*");
    expect(response.statusCode).toBe(200);
    expect(response.headers["cache-control"]).toBe("no-cache");
  });

  it("are sent packed to those who can unpack", async () => {
    const response = await app.inject({
      url: "/assets/index-abc123.js",
      headers: { "accept-encoding": "gzip" },
    });
    expect(response.headers["content-encoding"]).toBe("gzip");
    expect(gunzipSync(response.rawPayload).toString()).toMatch(/^export const x = 1;/);
  });
});

it("a server whose page is not built answers everything else", async () => {
  const bare = await buildBareApp();
  const response = await bare.inject({ url: "/", headers: { accept: "text/html" } });
  expect(response.statusCode).toBe(404);
  expect(response.json().title).toBe("Not Found");
  expect((await bare.inject({ url: "/healthz" })).statusCode).toBe(200);
});
