// What the page costs a phone: bytes of the first visit, time from an answer to the ranking, the longest
// task, and Lighthouse where it is at hand.
//   npm run build && npm run bench, or by itself: node scripts/bench/page.mjs
// The built server serves on a free port; the browser slows its processor down four times and answers all
// questions as a thumb does. Chromium slows the page alone, not its threads: a brake put into the thread
// takes the time of its own work, and sleeps three more times that long before it answers. Measured is from
// the tap to the frame that shows the new ranking, or to the answer of the thread where the screen shows
// nothing new. Whatever else the machine does is in it too, so its load is printed beside.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync } from "node:fs";
import { loadavg } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { findChromium } from "../chromium.mjs";
import { answers } from "./page-answers.mjs";
import { answerAll, PHONE, until } from "./page-hand.mjs";
import { lighthouse } from "./page-lighthouse.mjs";

const FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--no-first-run",
  "--disable-background-networking",
];
const root = fileURLToPath(new URL("../..", import.meta.url));

/** Prints all of it; nothing but a line where there is no browser or no build. */
export async function benchPage() {
  const executablePath = findChromium();
  const main = join(root, "packages/server/dist/main.js");
  console.log("\nThe page on a phone\n");
  if (!executablePath) return console.log("Skipped: no Chromium found (set CHROMIUM_PATH).");
  if (!existsSync(main)) return console.log("Skipped: not built (npm run build).");
  const env = { ...process.env, HOST: "127.0.0.1", PORT: "0" };
  const server = spawn(process.execPath, [main], { env, stdio: ["ignore", "pipe", "inherit"] });
  try {
    const [line] = await once(server.stdout, "data");
    const address = `${String(line).trim().split(" ").at(-1)}/`;
    const browser = await chromium.launch({ executablePath, args: FLAGS });
    const load = loadavg()[0]?.toFixed(1);
    console.log(`Chromium ${browser.version()}, 360 × 740; load of the last minute ${load}`);
    await firstVisit(browser, address);
    await answers(browser, address);
    await browser.close();
    await lighthouse(address, executablePath, FLAGS);
  } finally {
    server.kill("SIGTERM");
  }
}

/** Every byte from the first request on, without what is kept for later by the service worker. */
async function firstVisit(browser, address) {
  const context = await browser.newContext({ ...PHONE, serviceWorkers: "block" });
  const page = await context.newPage();
  const pending = [];
  context.on("requestfinished", (request) => {
    const kind = kindOf(new URL(request.url()).pathname);
    const { startTime } = request.timing();
    pending.push(request.sizes().then((sizes) => ({ kind, startTime, ...sizes })));
  });
  await page.goto(address);
  // The ranking after the last answer needs no more files; what comes then is of the next step.
  const shown = await answerAll(page);
  await until(page, () => document.querySelector(".next") !== null);
  await page.waitForTimeout(2000);
  const all = await Promise.all(pending);
  say(
    "up to the first ranking and the drive answer",
    all.filter((r) => r.startTime <= shown),
  );
  say("and on to the next step", all);
  await context.close();
}

function say(what, requests) {
  // What comes out of the browser's own store has a size of 0.
  const fetched = requests.filter(({ responseBodySize }) => responseBodySize > 0);
  const sum = (list, field) => list.reduce((total, each) => total + each[field], 0);
  console.log(`\nFirst visit ${what}, compressed as served, bytes`);
  for (const kind of ["page", "style", "script", "data", "other"]) {
    const own = fetched.filter((each) => each.kind === kind);
    console.log(
      `  ${kind.padEnd(8)} ${String(sum(own, "responseBodySize")).padStart(7)}  in ${own.length}`,
    );
  }
  console.log(
    `  in all   ${String(sum(fetched, "responseBodySize")).padStart(7)}, headers not counted`,
  );
}

function kindOf(path) {
  if (/\.js$/.test(path)) return "script";
  if (/\.json$/.test(path)) return "data";
  if (/\.css$/.test(path)) return "style";
  return /\/$|\.html$/.test(path) ? "page" : "other";
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await benchPage();
