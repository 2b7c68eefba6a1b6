// Makes a fresh clone ready with Node's own modules only: dependencies, then a browser, then the build.
//   --browser  look for Chromium, and install it where that is possible without asking
//   --build    build the packages if their sources changed since the last build
//   --force    build even if nothing changed
// Each step leaves a stamp, so a second run costs next to nothing.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { findChromium, SKIPPED_LINE } from "./chromium.mjs";

const OLDEST_NODE = [20, 19];
const INSTALL_STAMP = "node_modules/.half-order-install";
const BUILD_STAMP = ".cache/build-stamp";
const BUILD_OUTPUTS = [
  "packages/core/dist/index.js",
  "packages/core/dist/wire/index.js",
  "packages/server/dist/main.js",
  "packages/server/dist/command.js",
  "packages/web/dist/index.html",
  "packages/web/dist/sw.js",
];
/** Everything the build writes: removed before a build, or outputs of deleted sources would live on. */
const BUILD_FOLDERS = [
  "packages/core/dist",
  "packages/server/dist",
  "packages/web/dist",
  ".cache/types",
  ".cache/sw",
  ".cache/tsc",
];

process.chdir(join(dirname(fileURLToPath(import.meta.url)), ".."));
const asked = new Set(process.argv.slice(2));

checkNode();
installDependencies();
if (asked.has("--browser")) installBrowser();
if (asked.has("--build")) build();

function checkNode() {
  const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
  const [oldestMajor, oldestMinor] = OLDEST_NODE;
  if (major > oldestMajor || (major === oldestMajor && minor >= oldestMinor)) return;
  stop(`Node ${OLDEST_NODE.join(".")} or newer is needed; this is ${process.versions.node}.`);
}

function installDependencies() {
  const platform = `${process.version} ${process.platform} ${process.arch}`;
  const stamp = hashOf(["package-lock.json", ".npmrc"], platform);
  if (read(INSTALL_STAMP) === stamp) return;
  say("Installing dependencies (npm ci) ...");
  // npm names its own program to the scripts it runs; by hand there is only the command.
  const npm = process.env.npm_execpath;
  const words = ["ci", "--include=dev", "--no-audit", "--no-fund"];
  if (npm) run(process.execPath, [npm, ...words], "npm ci");
  else run("npm", words, "npm ci", { shell: process.platform === "win32" });
  write(INSTALL_STAMP, stamp);
}

function installBrowser() {
  if (process.env.CHROMIUM_PATH === undefined && !findChromium() && canUseApt()) {
    say("Installing Chromium for the browser tests (apt-get) ...");
    const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
    const options = { stdio: ["ignore", "ignore", "inherit"], env };
    spawnSync("apt-get", ["update", "-qq"], options);
    const words = ["install", "-y", "-qq", "--no-install-recommends", "chromium"];
    spawnSync("apt-get", words, options);
  }
  if (!findChromium()) say(SKIPPED_LINE);
}

function canUseApt() {
  const isRoot = process.platform === "linux" && process.getuid?.() === 0;
  return isRoot && spawnSync("apt-get", ["--version"], { stdio: "ignore" }).status === 0;
}

function build() {
  const stamp = hashOf(buildSources(), process.version);
  const isBuilt = read(BUILD_STAMP) === stamp && BUILD_OUTPUTS.every((file) => existsSync(file));
  if (isBuilt && !asked.has("--force")) return;
  say("Building ...");
  for (const path of [BUILD_STAMP, ...BUILD_FOLDERS])
    rmSync(path, { recursive: true, force: true });
  run(process.execPath, ["node_modules/typescript/bin/tsc", "--build"], "The type check");
  const vite = ["node_modules/vite/bin/vite.js", "build", "packages/web", "--logLevel", "warn"];
  run(process.execPath, vite, "The build of the page");
  run(process.execPath, ["scripts/finish-page.mjs"], "The end of the build of the page");
  // The stamp is of the sources as they were before: a change made meanwhile is built next time.
  write(BUILD_STAMP, stamp);
}

function buildSources() {
  const inPackages = readdirSync("packages", { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name))
    .filter((path) => !/[\\/](node_modules|dist)[\\/]/.test(path));
  return [...inPackages.sort(), "tsconfig.json", "tsconfig.base.json", "package-lock.json"];
}

function hashOf(files, ...more) {
  const hash = createHash("sha256").update(more.join("\0"));
  for (const file of files) {
    const bytes = readFileSync(file);
    hash.update(`\0${file}\0${bytes.length}\0`).update(bytes);
  }
  return hash.digest("hex");
}

function run(program, words, name, options = {}) {
  const { status, error } = spawnSync(program, words, { stdio: "inherit", ...options });
  if (error) stop(`${name} could not be started: ${error.message}`);
  if (status !== 0) stop(`${name} failed: see the messages above.`);
}

function read(file) {
  return existsSync(file) ? readFileSync(file, "utf8") : "";
}

function write(file, text) {
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
}

function say(text) {
  console.log(text);
}

function stop(text) {
  console.error(text);
  // Before the tests, a failure here is the run's only result: it is counted like any other.
  if (asked.has("--browser")) console.log("0 passed, 1 failed");
  process.exit(1);
}
