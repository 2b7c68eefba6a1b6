// Cases drawn from the model itself, answered by the posterior, in all threads that the machine has. A case
// is the same whatever the number of threads: each chunk of cases has a seed of its own.
import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { isMainThread, parentPort, Worker } from "node:worker_threads";

export const KINDS = [
  ["inline four, rail", "generic.i4.1342.rail"],
  ["V6, packs", "generic.v6.123456.pack"],
  ["inline four, distributor", "generic.i4.1342.distributor"],
  ["inline four, coil per plug", "generic.i4.1342.coil-per-plug"],
  ["inline four, hybrid", "generic.i4.1342.hybrid"],
];

/** Cases of one kind that are drawn together. */
export const CHUNK = 50;

/**
 * Six or seven questions a case, another set from chunk to chunk: as much as a first visit tells.
 *
 * Without `plug.look` and `injector.cut`: they follow from the misfiring set and from signs of faults at
 * once, and the product of the two is no distribution over answers where a fault covers a cylinder
 * without making it miss.
 */
const QUESTIONS = [
  ["complaint.main", "codes", "work", "regime.worst", "smell", "cancel"],
  ["lamp", "codes", "plug.age", "regime.bumps", "swap.plug", "counts"],
  ["complaint.main", "complaint.now", "well.look", "counts", "lamp", "work"],
  ["codes", "counts", "cancel", "swap.plug", "smell", "regime.worst", "plug.age"],
];
const CYLINDER = { cancel: 2, "swap.plug": 2, "well.look": 3 };

/** Ways in which a posterior is made wrong on purpose, to see whether that is noticed. */
export const MISTAKES = {
  "codes counted twice": { change: twice },
  "one fault three times as common": { knowledge: tripled },
};

/**
 * The answered cases of jobs, in the order of the jobs.
 *
 * A job is `{ kind, chunk, seed }` with, if wanted, `sigma` (all weights shaken; case i by copy i of
 * `copies`) or `mistake` (a name of the above). An answered case holds `truth`, `fault` and `set`.
 */
export async function answerAll(jobs, told = () => undefined) {
  const results = new Array(jobs.length);
  let next = 0;
  let done = 0;
  const threads = Math.min(availableParallelism(), jobs.length);
  await Promise.all(
    Array.from({ length: threads }, () => {
      const worker = new Worker(fileURLToPath(import.meta.url));
      return new Promise((resolve, reject) => {
        const give = () => {
          const at = next++;
          if (at < jobs.length) return worker.postMessage({ at, job: jobs[at] });
          worker.terminate().then(resolve, reject);
        };
        worker.on("message", ({ at, answered }) => {
          results[at] = answered;
          told(++done);
          give();
        });
        worker.on("error", reject);
        give();
      });
    }),
  );
  return results;
}

// ---- in a thread -----------------------------------------------------------------------------------

if (!isMainThread) {
  const answer = await answerer();
  parentPort.on("message", ({ at, job }) => parentPort.postMessage({ at, answered: answer(job) }));
}

async function answerer() {
  const dist = "../../packages/core/dist";
  const { compile } = await import(`${dist}/compile/compile.js`);
  const { resolveEngine } = await import(`${dist}/engine/resolve-engine.js`);
  const { KNOWLEDGE, profileById } = await import(`${dist}/index.js`);
  const { posterior } = await import(`${dist}/inference/posterior.js`);
  const { shakenSets } = await import(`${dist}/inference/shake.js`);
  const { randomOf, samplerOf, shakenKnowledge } = await import(`${dist}/instrument/index.js`);
  const samplers = new Map();
  const shaken = new Map();

  return ({ kind, chunk, seed, sigma = 0, copies = 1, mistake }) => {
    const { engine, sampler } = drawing(kind, chunk % QUESTIONS.length);
    const drawn = drawAll(sampler, randomOf(seed + 1000 * kind + chunk));
    const { knowledge: wrong, change = (model) => model } = MISTAKES[mistake] ?? {};
    return drawn.map(({ truth, findings }, i) => {
      const copy = (chunk * CHUNK + i) % copies;
      const knowledge = sigma > 0 ? noisy(sigma, seed + 100 * kind + copy) : KNOWLEDGE;
      const { model } = compile(engine, findings, wrong ? wrong(knowledge) : knowledge);
      const asked = findings.map(({ finding }) => finding);
      const noise = { sigma, random: randomOf(seed + 7_000_000 + chunk * CHUNK + i) };
      const used = sigma > 0 ? shakenLooks(model, asked, noise) : change(model, asked);
      const { fault, set } = posterior(used, { tolerance: 1e-6 });
      return { truth, fault, set };
    });
  };

  function drawing(kind, questions) {
    const key = `${kind} ${questions}`;
    if (!samplers.has(key)) {
      const engine = resolveEngine(profileById(KINDS[kind][1]));
      const asked = QUESTIONS[questions].map((finding) => {
        const cylinder = CYLINDER[finding];
        return cylinder === undefined ? { finding } : { finding, cylinder };
      });
      samplers.set(key, { engine, sampler: samplerOf(engine, KNOWLEDGE, asked) });
    }
    return samplers.get(key);
  }

  function noisy(sigma, seed) {
    const key = `${sigma} ${seed}`;
    if (!shaken.has(key)) shaken.set(key, shakenKnowledge(KNOWLEDGE, sigma, seed));
    return shaken.get(key);
  }

  /** The tables of codes and counts are no part of a knowledge; the others are shaken already. */
  function shakenLooks(model, asked, shake) {
    const misfireObservations = model.misfireObservations.map((o) =>
      ["codes", "counts"].includes(asked[o.answer]) ? shakenSets(o, model.cylinders, shake) : o,
    );
    return { ...model, misfireObservations };
  }
}

function drawAll(sampler, random) {
  return Array.from({ length: CHUNK }, () => sampler.draw(random));
}

function twice(model, asked) {
  const misfireObservations = model.misfireObservations.flatMap((o) =>
    asked[o.answer] === "codes" ? [o, o] : [o],
  );
  return { ...model, misfireObservations };
}

function tripled(knowledge) {
  const faults = knowledge.faults.map((row) => {
    if (row.id !== "plug.gap-worn") return row;
    const shares = Object.entries(row.shares).map(([kind, share]) => [kind, 3 * share]);
    return { ...row, shares: Object.fromEntries(shares) };
  });
  return { ...knowledge, faults };
}
