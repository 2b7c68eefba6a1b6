// How long until engines that physics broke run right again, by the rule that says what to do next. Case
// number i of a seed is the same engine with the same fault whatever the rule and the number of workers.

import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { isMainThread, parentPort, Worker, workerData } from "node:worker_threads";
import { ENGINES } from "./engine.mjs";

const KINDS = Object.keys(ENGINES);

/** What lies ready; everything when left out. */
const TOOLS = {
  "bare hands and a reader": { tools: ["none", "light", "code reader"], skill: 2 },
  driveway: {
    tools: ["none", "light", "hand tools", "code reader", "meter", "spark tester"],
    skill: 2,
  },
  workshop: {},
};

const RULES = ["planned", "fixed order", "repairs only", "information"];

/** Prints minutes, money and parts bought in vain, rule beside rule. */
export async function evaluateVisits({ cases = 400, seed = 20269 } = {}) {
  const outcomes = await runAll(cases, seed);
  console.log(
    `\nSimulated engines until they run right: ${cases} cases for each tool set, seed ${seed}`,
  );
  console.log(
    "min: own work. min+: with parts, and the call of who gives up, as time at the usual rate.",
  );
  for (const tools of Object.keys(TOOLS)) {
    for (const kind of [...KINDS, "all"]) {
      const here = outcomes.filter((o) => o.tools === tools && (kind === "all" || o.kind === kind));
      console.log(`\n${tools}, ${kind} (${here.length / RULES.length} cases)`);
      console.log(
        `  ${"".padEnd(14)}   min    min+  against fixed  cured  checks  repairs  in vain`,
      );
      const fixed = mean(
        here.filter(({ rule }) => rule === "fixed order"),
        "minutesWithParts",
      );
      for (const rule of RULES) {
        const list = here.filter((each) => each.rule === rule);
        const all = mean(list, "minutesWithParts");
        console.log(
          `  ${rule.padEnd(14)} ${cell(mean(list, "minutes"), 6, 0)} ${cell(all, 7, 0)} ` +
            `${cell((all / fixed - 1) * 100, 12, 0)} % ` +
            `${cell(mean(list, "isCured"), 6, 2)} ${cell(mean(list, "checks"), 7, 1)} ` +
            `${cell(mean(list, "repairs"), 8, 1)} ${cell(mean(list, "boughtInVain"), 8, 2)}`,
        );
      }
    }
  }
}

function mean(list, field) {
  return list.reduce((sum, each) => sum + Number(each[field]), 0) / Math.max(1, list.length);
}

function cell(value, width, digits) {
  return value.toFixed(digits).padStart(width);
}

async function runAll(cases, seed) {
  const workers = Math.min(availableParallelism(), cases);
  const parts = await Promise.all(
    Array.from({ length: workers }, (_, from) => runPart({ cases, seed, from, workers })),
  );
  return parts.flat();
}

function runPart(data) {
  return new Promise((resolve, reject) => {
    const worker = new Worker(fileURLToPath(import.meta.url), { workerData: { visits: data } });
    worker.once("message", resolve);
    worker.once("error", reject);
  });
}

async function work({ cases, seed, from, workers }) {
  const core = "../../packages/core/dist";
  const { profileById } = await import(`${core}/index.js`);
  const { resolveEngine } = await import(`${core}/engine/resolve-engine.js`);
  const { visit, startOfVisit } = await import(`${core}/instrument/simulated-visit.js`);
  const rules = await import(`${core}/instrument/simulated-rule.js`);
  const { simulate, simulatedFaults } = await import(`${core}/physics/simulate.js`);
  const { randomOf } = await import(`${core}/units/random.js`);
  const byName = {
    planned: rules.PLANNED,
    "fixed order": rules.FIXED,
    "repairs only": rules.REPAIRS_ONLY,
    information: rules.INFORMATION,
  };
  const outcomes = [];
  for (let i = from; i < cases; i += workers) {
    for (const [tools, atHand] of Object.entries(TOOLS)) {
      for (const rule of RULES) {
        const random = randomOf(seed * 100_003 + i);
        const kind = KINDS[i % KINDS.length];
        const engines = ENGINES[kind];
        const engine = resolveEngine(profileById(engines[random.choice(engines.map(() => 1))]));
        const faults = simulatedFaults(engine);
        const fault = faults[random.choice(faults.map(() => 1))];
        const broken = simulate(engine, { fault }, random);
        const start = startOfVisit(engine, broken, atHand);
        const outcome = visit(broken, start, byName[rule], randomOf(seed + i));
        outcomes.push({ kind, tools, rule, fault, ...outcome });
      }
    }
  }
  return outcomes;
}

if (!isMainThread && workerData?.visits) {
  parentPort.postMessage(await work(workerData.visits));
}
