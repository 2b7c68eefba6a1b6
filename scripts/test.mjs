// The whole check: types, lint and format, then every test. Ends with one line that counts them all.
//   --check       types, lint and format only
//   anything else is handed to vitest, e.g. `npm test -- tests/core`
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { findChromium, SKIPPED_LINE } from "./chromium.mjs";
import { tallyLine } from "./tally.mjs";

process.chdir(join(dirname(fileURLToPath(import.meta.url)), ".."));
const words = process.argv.slice(2);
const isCheckOnly = words.includes("--check");
const tally = { passed: 0, failed: 0, skipped: 0 };

// The tests have this done by npm beforehand ("pretest").
if (isCheckOnly && runNode(["scripts/prepare.mjs"]) !== 0) process.exit(1);

const TSC = "node_modules/typescript/bin/tsc";
step("types", TSC, "--build", "tsconfig.json", "tests/tsconfig.json");
step("lint and format", "node_modules/@biomejs/biome/bin/biome", ...biomeWords());
if (!isCheckOnly) runTests();

if (!isCheckOnly && !findChromium()) print(SKIPPED_LINE);
print(tallyLine(tally));
process.exitCode = tally.failed > 0 ? 1 : 0;

/** A step counts as one: passed or failed. */
function step(name, ...command) {
  print(`\n== ${name}`);
  if (runNode(command) === 0) tally.passed += 1;
  else {
    print(`FAILED: ${name}`);
    tally.failed += 1;
  }
}

function biomeWords() {
  return ["check", "--error-on-warnings", "--no-errors-on-unmatched", "."];
}

function runTests() {
  print("\n== tests");
  mkdirSync(".cache", { recursive: true });
  const folder = mkdtempSync(".cache/tally-");
  const file = join(folder, "tally.json");
  const env = { ...process.env, CHROMIUM_PATH: findChromium(), TALLY_FILE: file };
  const status = runNode(["node_modules/vitest/vitest.mjs", "run", ...words], env);
  const counted = existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : undefined;
  rmSync(folder, { recursive: true, force: true });
  for (const key of Object.keys(tally)) tally[key] += counted?.[key] ?? 0;
  // vitest can fail without a failed test, e.g. when it finds no test or breaks half-way.
  if (status !== 0 && !counted?.failed) tally.failed += 1;
}

function runNode(command, env = process.env) {
  return spawnSync(process.execPath, command, { stdio: "inherit", env }).status;
}

function print(text) {
  writeSync(1, `${text}\n`);
}
