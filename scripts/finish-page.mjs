// After the build of the page: compresses its files once and for all, and tells the service worker their
// names, so that the page works without a network.  node scripts/finish-page.mjs
import { createHash } from "node:crypto";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { brotliCompressSync, gzipSync } from "node:zlib";

/** Below this nothing is won. */
const WORTH_COMPRESSING = 200;

const root = fileURLToPath(new URL("..", import.meta.url));
const dist = join(root, "packages/web/dist");

const files = readdirSync(dist, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map((entry) => join(entry.parentPath ?? entry.path, entry.name))
  .filter((path) => !/sw\.js$|\.(?:br|gz)$/.test(path))
  .sort();

const worker = readFileSync(join(root, ".cache/sw/sw.js"), "utf8").replace("export {};\n", "");
const hash = createHash("sha256").update(worker);
for (const path of files) {
  const bytes = readFileSync(path);
  hash.update(`\0${path.slice(dist.length)}\0`).update(bytes);
  if (bytes.length < WORTH_COMPRESSING || path.endsWith(".png")) continue;
  writeFileSync(`${path}.br`, brotliCompressSync(bytes));
  writeFileSync(`${path}.gz`, gzipSync(bytes, { level: 9 }));
}

const addresses = files.map((path) => path.slice(dist.length + 1).replaceAll("\\", "/"));
const build = {
  version: hash.digest("hex").slice(0, 12),
  files: addresses.map((address) => (address === "index.html" ? "./" : address)),
};
writeFileSync(join(dist, "sw.js"), `const BUILD = ${JSON.stringify(build)};\n${worker}`);
