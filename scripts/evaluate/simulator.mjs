// The ranking against engines that physics broke: faults drawn evenly, first visit and three checks. Case
// number i of a seed is the same whatever the number of workers.

import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { isMainThread, parentPort, Worker, workerData } from "node:worker_threads";
import { ENGINES } from "./engine.mjs";

const KINDS = Object.keys(ENGINES);
const GOAL = { top1: 0.75, top3: 0.93 };
const NAMED_PAIRS = 25;

/** Prints how often the ranking finds what the simulator broke. */
export async function evaluateSimulator({ cases = 2000, seed = 20269 } = {}) {
  const outcomes = await runAll(cases, seed, []);
  console.log(`\nSimulated engines: ${cases} cases, seed ${seed}, first visit and three checks`);
  console.log(`Goal: top-1 at least ${GOAL.top1}, top-3 at least ${GOAL.top3}.\n`);
  const byKind = KINDS.map((kind) => [kind, outcomes.filter((o) => o.kind === kind)]);
  printRows([...byKind, ["all", outcomes]]);
  console.log("\nBy fault, the hardest first");
  printRows(byFault(outcomes));
  console.log("\nTaken for something else, most often first");
  for (const [pair, count] of confusions(outcomes)) console.log(`  ${count}  ${pair}`);
  const fewer = Math.ceil(cases / 4);
  const blind = await runAll(fewer, seed, ["plug.gap"]);
  console.log(`\nWithout the measured gap, whose formula the ranking shares (${fewer} cases)`);
  printRows([["all", blind]]);
}

async function runAll(cases, seed, without) {
  const workers = Math.min(availableParallelism(), cases);
  const parts = await Promise.all(
    Array.from({ length: workers }, (_, from) => runPart({ cases, seed, without, from, workers })),
  );
  return parts.flat();
}

function runPart(data) {
  return new Promise((resolve, reject) => {
    const worker = new Worker(fileURLToPath(import.meta.url), { workerData: data });
    worker.once("message", resolve);
    worker.once("error", reject);
  });
}

async function work({ cases, seed, without, from, workers }) {
  const core = "../../packages/core/dist";
  const { profileById } = await import(`${core}/index.js`);
  const { resolveEngine } = await import(`${core}/engine/resolve-engine.js`);
  const { simulatedCase } = await import(`${core}/instrument/simulated-case.js`);
  const { SIMULATED_BREAKS } = await import(`${core}/physics/simulated-break.js`);
  const { randomOf } = await import(`${core}/units/random.js`);
  const ids = Object.keys(SIMULATED_BREAKS);
  const outcomes = [];
  for (let i = from; i < cases; i += workers) {
    const random = randomOf(seed * 100_003 + i);
    const kind = KINDS[i % KINDS.length];
    const engines = ENGINES[kind];
    const engine = resolveEngine(profileById(engines[random.choice(engines.map(() => 1))]));
    const { truth, first, rankBefore, rankAfter, isComponentRight } = simulatedCase(
      engine,
      ids,
      random,
      { without },
    );
    outcomes.push({ kind, truth, first, rankBefore, rankAfter, isComponentRight });
  }
  return outcomes;
}

function byFault(outcomes) {
  const faults = new Map();
  for (const outcome of outcomes) {
    const fault = faultOf(outcome);
    faults.set(fault, [...(faults.get(fault) ?? []), outcome]);
  }
  return [...faults].sort(([, a], [, b]) => share(a, isFirst) - share(b, isFirst));
}

function confusions(outcomes) {
  const counts = new Map();
  for (const outcome of outcomes) {
    if (isFirst(outcome)) continue;
    const [fault] = outcome.first.split("@");
    const taken = fault === faultOf(outcome) ? "the same elsewhere" : fault;
    const pair = `${faultOf(outcome)} taken for ${taken}`;
    counts.set(pair, (counts.get(pair) ?? 0) + 1);
  }
  return [...counts].sort(([, a], [, b]) => b - a).slice(0, NAMED_PAIRS);
}

function printRows(rows) {
  console.log(`${"".padEnd(26)}cases  top-1  top-3  mrr    part   top-1 before checks`);
  for (const [name, list] of rows) {
    const figures = [
      share(list, isFirst),
      share(list, ({ rankAfter }) => rankAfter <= 3),
      list.reduce((sum, { rankAfter }) => sum + 1 / rankAfter, 0) / list.length,
      share(list, ({ isComponentRight }) => isComponentRight),
      share(list, ({ rankBefore }) => rankBefore === 1),
    ];
    const shown = figures.map((figure) => figure.toFixed(3)).join("  ");
    console.log(`${name.padEnd(26)}${String(list.length).padStart(5)}  ${shown}`);
  }
}

function faultOf({ truth }) {
  return truth.split("@")[0];
}

function isFirst({ rankAfter }) {
  return rankAfter === 1;
}

function share(list, test) {
  return list.filter(test).length / list.length;
}

if (!isMainThread && parentPort) parentPort.postMessage(await work(workerData));
