// How long is it from an answer to its ranking, on a phone four times slower than this machine, and which tasks
// keep the page busy?
import { loadavg } from "node:os";
import { answerAll, ENGINES, PHONE } from "./page-hand.mjs";
import { brake, watch } from "./page-watch.mjs";

const SLOWDOWN = 4;
/** Tells the page's own thread among all those of the browser. */
const MARK = "half-order";
/** A finger notices what lies above. */
const LONG_MS = 50;
/** Visits whose answers are put together: the machine is never as calm as one would like. */
const VISITS = 2;

/** From the tap on an answer to the ranking that knows it, and the tasks that kept the page busy. */
export async function answers(browser, address) {
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
    console.log(`  ${engine.name}; load ${load}`);
    console.log(`    ${middleAndMost(all.times)}, of ${all.times.length} answers`);
    console.log(`    the thread alone, at full speed: ${middleAndMost(all.own)}`);
    console.log(`    tasks of the page: ${longest(all.tasks, "wallMs")}`);
    console.log(`    without what else ran meanwhile: ${longest(all.tasks, "ownMs")}`);
  }
}

function middleAndMost(times) {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (index) => (sorted.at(index) ?? 0).toFixed(0);
  return `median ${at(Math.floor(sorted.length / 2))}, longest ${at(-1)}`;
}

function longest(tasks, time) {
  const most = Math.max(0, ...tasks.map((task) => task[time]));
  const long = tasks.filter((task) => task[time] >= LONG_MS).length;
  return `longest ${most.toFixed(0)}, ${long} of ${LONG_MS} or more`;
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
  // As long as a hand needs at least to find its engine.
  await page.waitForTimeout(1500);
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: SLOWDOWN });
  await browser.startTracing(page, { categories: ["toplevel", "blink.user_timing"] });
  await page.evaluate((mark) => performance.mark(mark), MARK);
  // Nothing is asked of the page meanwhile: each look at it would be a task too.
  await answerAll(page, engine, async () => {
    do await page.waitForTimeout(600);
    while (await page.evaluate(() => globalThis.watched.answered.some(({ after }) => !after)));
  });
  const { answered } = await page.evaluate(() => globalThis.watched);
  const tasks = tasksOf(JSON.parse(String(await browser.stopTracing())).traceEvents);
  // What the next step still fetches is no longer of interest.
  await context.unrouteAll({ behavior: "ignoreErrors" });
  await context.close();
  return { answered, tasks };
}

/** The tasks of the page's main thread: from beginning to end, and the time of the processor that they took. */
function tasksOf(events) {
  const marked = events.find(({ name }) => name === MARK);
  return events
    .filter(
      ({ name, pid, tid }) => /RunTask$/.test(name) && pid === marked.pid && tid === marked.tid,
    )
    .map(({ dur = 0, tdur = 0 }) => ({ wallMs: dur / 1000, ownMs: tdur / 1000 }));
}
