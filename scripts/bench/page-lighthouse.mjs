// What does Lighthouse say of the page on a phone, where it is at hand? Its figures swing with whatever else the
// machine does, so it looks several times, and each time also at the document alone, without a script: what
// that costs is the machine's, and the rest is the page's. Beside the score stands the one that it would have
// given had it counted blocking by the processor time of each task, which others on the machine cannot stretch.
import { once } from "node:events";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

/** Its own folder holds it, since it is larger than all else together. */
const FOLDER = fileURLToPath(new URL("../../.cache/lighthouse", import.meta.url));
const PACKAGES = ["lighthouse@12.2.3", "chrome-launcher@1.2.1"];
/** As many as Lighthouse's own advice on variability asks for, of which the median counts. */
const ROUNDS = 5;
/** A task blocks for what it takes beyond this: Lighthouse's own documentation of the audit. */
const BLOCKS_FROM_MS = 50;
const BLOCKING = "total-blocking-time";
const TIMES = ["first-contentful-paint", "largest-contentful-paint", BLOCKING];

export async function lighthouse(address, chromePath, flags) {
  const at = (name) => join(FOLDER, "node_modules", name);
  console.log("\nLighthouse, phone");
  if (!existsSync(at("lighthouse"))) {
    console.log(`  not at hand; npm install --prefix .cache/lighthouse ${PACKAGES.join(" ")}`);
    return;
  }
  const { default: run } = await import(join(at("lighthouse"), "core/index.js"));
  const { default: blocking } = await import(
    join(at("lighthouse"), "core/audits/metrics/total-blocking-time.js")
  );
  const { launch } = await import(join(at("chrome-launcher"), "dist/index.js"));
  const look = (url) => lookOnce(run, launch, { url, chromePath, flags });
  const bare = await serveBare(address);
  const looks = { page: [], bare: [] };
  try {
    for (let round = 0; round < ROUNDS; round++) {
      looks.page.push(await look(address));
      looks.bare.push(await look(bare.address));
    }
  } finally {
    bare.server.close();
  }
  console.log(`  Lighthouse ${looks.page[0].lighthouseVersion}, medians of ${ROUNDS}`);
  const of = (list, read) => middle(list.map(read)).toFixed(2);
  for (const id of Object.keys(looks.page[0].categories)) {
    const all = looks.page.map(({ categories }) => categories[id].score).join(", ");
    console.log(`  ${id} ${of(looks.page, (lhr) => lhr.categories[id].score)} (${all})`);
  }
  const score = (lhr) => lhr.categories.performance.score;
  console.log(`  performance of the document alone ${of(looks.bare, score)}`);
  const calm = (lhr) => calmScore(lhr, blocking);
  console.log(
    `  performance by processor time ${of(looks.page, calm)}, alone ${of(looks.bare, calm)}`,
  );
  for (const id of TIMES) {
    const [own, alone] = [looks.page, looks.bare].map((list) =>
      middle(list.map(({ audits }) => audits[id].numericValue)).toFixed(0),
    );
    console.log(`  ${id} ${own} ms, of the document alone ${alone} ms`);
  }
  const own = looks.page.map(({ ownBlockingMs }) => ownBlockingMs.toFixed(0)).join(", ");
  console.log(`  ${BLOCKING} by processor time ${own} ms`);
}

/** The performance score with the blocking by processor time in place of that by the clock. */
function calmScore({ categories, audits, ownBlockingMs }, blocking) {
  const { scoring } = blocking.defaultOptions.mobile;
  const { weight } = categories.performance.auditRefs.find(({ id }) => id === BLOCKING);
  const calm = blocking.computeLogNormalScore(scoring, ownBlockingMs);
  return categories.performance.score + (weight / 100) * (calm - audits[BLOCKING].score);
}

async function lookOnce(run, launch, { url, chromePath, flags }) {
  const userDataDir = mkdtempSync(join(tmpdir(), "half-order-lighthouse-"));
  const chromeFlags = ["--headless=new", ...flags];
  const chrome = await launch({ chromePath, chromeFlags, userDataDir });
  try {
    const { lhr, artifacts } = await run(url, { port: chrome.port, logLevel: "error" });
    return { ...lhr, ownBlockingMs: ownBlocking(lhr, artifacts.Trace.traceEvents) };
  } finally {
    await chrome.kill();
    rmSync(userDataDir, { recursive: true, force: true });
  }
}

/**
 * What tasks after the first paint block, ms, by the processor time that each took: Lighthouse takes a slow phone
 * for so many times this machine, and whatever else ran meanwhile with it.
 */
function ownBlocking({ finalDisplayedUrl, configSettings }, events) {
  const {
    pid,
    tid,
    ts: began,
  } = events.findLast(
    ({ name, args }) =>
      name === "navigationStart" && args.data?.documentLoaderURL === finalDisplayedUrl,
  );
  const after = events.filter((event) => event.pid === pid && event.ts >= began);
  const painted = after.find(({ name }) => name === "firstContentfulPaint").ts;
  const tasks = after.filter(
    ({ name, ts, ...event }) => event.tid === tid && ts >= painted && name.endsWith("RunTask"),
  );
  const { cpuSlowdownMultiplier } = configSettings.throttling;
  const blocked = tasks.map(
    ({ tdur = 0 }) => (tdur / 1000) * cpuSlowdownMultiplier - BLOCKS_FROM_MS,
  );
  return blocked.reduce((sum, ms) => sum + Math.max(0, ms), 0);
}

/** The document as it is, but without all that would be fetched and run. */
async function serveBare(address) {
  const html = await (await fetch(address)).text();
  const alone = html.replace(/<script type="module".*?<\/script>|<link (?!rel="expect").*?>/gs, "");
  const server = createServer((_, response) => {
    response.writeHead(200, { "content-type": "text/html; charset=utf-8" }).end(alone);
  });
  server.listen(0, "127.0.0.1");
  await once(server, "listening");
  return { server, address: `http://127.0.0.1:${server.address().port}/` };
}

function middle(list) {
  return [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
}
