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
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { findChromium } from "../chromium.mjs";

const SLOWDOWN = 4;
const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };
const FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--no-first-run",
  "--disable-background-networking",
];
/** Engines weighed: those that the first questions lead to by these words, and by the first order after them. */
const ENGINES = [
  { name: "four, coil rail", count: "4", layout: "In one row", isKnown: true },
  { name: "six, coil rail", count: "6", layout: "In a V", isKnown: true },
  { name: "six, firing order not known", count: "6", layout: "In a V", isKnown: false },
];
/** Visits whose answers are put together: the machine is never as calm as one would like. */
const VISITS = 2;
const LIGHTHOUSE = ["lighthouse@12.2.3", "chrome-launcher@1.2.1"];
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
    await lighthouse(address, executablePath);
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
  await page.locator(".next").waitFor();
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

/**
 * The six questions, each answered by its first option, up to the ranking and the drive answer. Gives the
 * time of the last tap.
 */
async function answerAll(page, engine = ENGINES[0], onAnswer = async () => undefined) {
  await page.getByRole("link", { name: engine.count, exact: true }).tap();
  await page.getByRole("link", { name: engine.layout }).tap();
  await page.getByRole("link", { name: /^A coil rail/ }).tap();
  const order = page.locator(engine.isKnown ? "button.option:not(.is-dashed)" : "button.is-dashed");
  await order.first().tap();
  // A question is read before it is answered.
  await onAnswer();
  let last = 0;
  for (;;) {
    const title = page.locator("h1").first();
    await page.locator(".question h1, .ranked-row").first().waitFor();
    if ((await page.locator(".question").count()) === 0) break;
    const asked = await title.innerText();
    last = Date.now();
    const confirm = page.locator(".question .is-finish");
    if ((await confirm.count()) > 0) await confirm.tap();
    else await page.locator(".question .option").first().tap();
    await onAnswer();
    await page.waitForFunction((old) => document.querySelector("h1")?.innerText !== old, asked);
  }
  await page.locator(".ranking:not(.is-weighing) .ranked-row").first().waitFor();
  await page.locator(".drive-answer").waitFor();
  return last;
}

/** From the tap on an answer to the ranking that knows it, and the tasks that kept the page busy. */
async function answers(browser, address) {
  console.log(`\nFrom an answer to its ranking, processor ${SLOWDOWN} times slower, ms`);
  for (const engine of ENGINES) {
    const all = { tasks: [], times: [], own: [] };
    for (let visit = 0; visit < VISITS; visit++) {
      const { tasks, answered } = await visited(browser, address, engine);
      all.tasks.push(...tasks);
      all.times.push(...answered.map(({ after }) => after));
      all.own.push(...answered.map(({ thread }) => thread));
    }
    const load = loadavg()[0]?.toFixed(1);
    const longest = Math.max(0, ...all.tasks);
    console.log(`  ${engine.name}; load ${load}`);
    console.log(`    ${middleAndMost(all.times)}, of ${all.times.length} answers`);
    console.log(`    the thread alone, at full speed: ${middleAndMost(all.own)}`);
    console.log(
      `    longest task of the page ${longest > 0 ? longest.toFixed(0) : "under 50"}, ${all.tasks.length} of 50 or more`,
    );
  }
}

function middleAndMost(times) {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (index) => (sorted.at(index) ?? 0).toFixed(0);
  return `median ${at(Math.floor(sorted.length / 2))}, longest ${at(-1)}`;
}

async function visited(browser, address, engine) {
  // Without the service worker, which would hand out the script before the brake is in it.
  const context = await browser.newContext({ ...PHONE, serviceWorkers: "block" });
  const page = await context.newPage();
  await page.addInitScript(watch);
  await context.route(/assets\/.*\.js$/, async (route) => {
    const response = await route.fetch();
    const body = `${await response.text()};(${brake})(${SLOWDOWN});`;
    await route.fulfill({ response, body });
  });
  await page.goto(address);
  await page.waitForFunction(() => globalThis.watched.isWarm);
  // What looks for links in the page is slow the first time, and no task of the page's own.
  await page.getByRole("link", { name: engine.count, exact: true }).count();
  // As long as a hand needs at least to find its engine.
  await page.waitForTimeout(1500);
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: SLOWDOWN });
  await page.evaluate(() => globalThis.watched.tasks.splice(0));
  // Nothing is asked of the page meanwhile: each look at it would be a task too.
  await answerAll(page, engine, async () => {
    do await page.waitForTimeout(600);
    while (await page.evaluate(() => globalThis.watched.answered.some(({ after }) => !after)));
  });
  const watched = await page.evaluate(() => globalThis.watched);
  // What the next step still fetches is no longer of interest.
  await context.unrouteAll({ behavior: "ignoreErrors" });
  await context.close();
  return watched;
}

/** In the thread: it answers as late as a processor so many times slower would, and tells its own time. */
function brake(slowdown) {
  if (typeof document !== "undefined" || globalThis.hasBrake) return;
  globalThis.hasBrake = true;
  const own = globalThis.postMessage.bind(globalThis);
  // The one kind of memory that a thread may sleep on without further headers.
  const { buffer } = new WebAssembly.Memory({ initial: 1, maximum: 1, shared: true });
  const sleep = (ownMs) => Atomics.wait(new Int32Array(buffer), 0, 0, (slowdown - 1) * ownMs);
  let began = 0;
  addEventListener("message", () => {
    began = performance.now();
  });
  globalThis.postMessage = (thought) => {
    if (thought.ahead !== undefined) return own(thought);
    const ownMs = performance.now() - began;
    sleep(ownMs);
    own({ ...thought, ownMs });
  };
  // What it thinks ahead of the next question takes its time too.
  const later = globalThis.setTimeout;
  globalThis.setTimeout = (then, ms) =>
    later(() => {
      const start = performance.now();
      then();
      sleep(performance.now() - start);
    }, ms);
}

/** In the page: when an answer was tapped, when the first ranking after it was seen, what took long. */
function watch() {
  /** A ranking that changes nothing on the screen by then changes nothing. */
  const UNCHANGED_MS = 300;
  const watched = { tasks: [], answered: [], isWarm: false };
  globalThis.watched = watched;
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) watched.tasks.push(duration);
  }).observe({ type: "longtask", buffered: true });
  let tapped;
  addEventListener(
    "click",
    ({ target, timeStamp }) => {
      if (target.closest?.(".question .option")) tapped = timeStamp;
    },
    true,
  );
  const seen = (then) => {
    const back = performance.now();
    const observer = new MutationObserver(() => {
      stop();
      requestAnimationFrame(() => {
        // Handed out after the frame that has just begun.
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => then(performance.now());
        port2.postMessage(0);
      });
    });
    const late = setTimeout(() => {
      stop();
      then(back);
    }, UNCHANGED_MS);
    const stop = () => {
      observer.disconnect();
      clearTimeout(late);
    };
    const all = { subtree: true, childList: true, characterData: true, attributes: true };
    observer.observe(document.body, all);
  };
  const Own = globalThis.Worker;
  globalThis.Worker = class extends Own {
    postMessage(message) {
      const from = tapped;
      if (!message.advice) tapped = undefined;
      this.addEventListener("message", () => {
        watched.isWarm = true;
      });
      if (from !== undefined && !message.advice) {
        const answer = { after: 0, thread: 0 };
        watched.answered.push(answer);
        // Thought ahead: it is in the drawing that comes now.
        if (message.isKnown) {
          seen((at) => {
            answer.after = at - from;
          });
        }
        const hear = ({ data }) => {
          seen((at) => {
            answer.after = at - from;
            answer.thread = data.ownMs;
          });
        };
        if (!message.isKnown) this.addEventListener("message", hear, { once: true });
      }
      super.postMessage(message);
    }
  };
}

/** Its own folder holds it, since it is larger than all else together. */
async function lighthouse(address, chromePath) {
  const folder = join(root, ".cache/lighthouse");
  const at = (name) => join(folder, "node_modules", name);
  console.log("\nLighthouse, phone");
  if (!existsSync(at("lighthouse"))) {
    console.log(`  not at hand; npm install --prefix .cache/lighthouse ${LIGHTHOUSE.join(" ")}`);
    return;
  }
  const { default: run } = await import(join(at("lighthouse"), "core/index.js"));
  const { launch } = await import(join(at("chrome-launcher"), "dist/index.js"));
  const userDataDir = mkdtempSync(join(tmpdir(), "half-order-lighthouse-"));
  const chromeFlags = ["--headless=new", ...FLAGS];
  const chrome = await launch({ chromePath, chromeFlags, userDataDir });
  try {
    const { lhr } = await run(address, { port: chrome.port, logLevel: "error" });
    console.log(`  Lighthouse ${lhr.lighthouseVersion}`);
    for (const { id, score } of Object.values(lhr.categories)) console.log(`  ${id} ${score}`);
    for (const id of [
      "first-contentful-paint",
      "largest-contentful-paint",
      "total-blocking-time",
    ]) {
      console.log(`  ${id} ${lhr.audits[id].displayValue}`);
    }
  } finally {
    await chrome.kill();
    rmSync(userDataDir, { recursive: true, force: true });
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await benchPage();
