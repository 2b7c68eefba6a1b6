// How long ranking takes, and how long a general-purpose exact inference library takes beside it.
//   npm run build && npm run bench
// Everything is drawn from a fixed seed. Times are of one call on one core, after a warm-up, in
// milliseconds; every call gets other answers. Nothing is written but the tables below.
import bayes from "bayesjs";
import { compile } from "../packages/core/dist/compile/compile.js";
import { resolveEngine } from "../packages/core/dist/engine/resolve-engine.js";
import {
  FINDINGS,
  KNOWLEDGE,
  profileById,
  rank,
  suitsEngine,
} from "../packages/core/dist/index.js";
import { posterior } from "../packages/core/dist/inference/posterior.js";
import { benchNext } from "./bench/next.mjs";
import { benchPage } from "./bench/page.mjs";
import { plannerTables } from "./bench/planner.mjs";

/** Two programs that compute the same may differ by rounding, and by no more. */
const CLOSE = 1e-9;
/** Time given to one row of a table; all but the planner's stay under a minute together. */
const BUDGET_MS = 1000;
/** A row of rank() is left out when the row before says that one call would take longer than this. */
const LONGEST_MS = 4000;
const SEED = 20269;

const began = performance.now();
const random = randomFrom(SEED);
console.log(`Node ${process.version}, ${process.platform} ${process.arch}, seed ${SEED}`);

// ---- our own times -------------------------------------------------------------------------------

function catalogueTable() {
  const engines = [
    ["inline four, rail", "generic.i4.1342.rail"],
    ["V6, rail", "generic.v6.123456.rail"],
    ["V8, packs", "generic.v8.18436572.pack"],
    ["V12, packs", "generic.v12.1-7-5-11-3-9-6-12-2-8-4-10.pack"],
  ];
  heading(
    "The whole catalogue, by engine and number of answers",
    "rank() is all that a caller waits for: checks, compiling, the posterior, fit, ambiguity.",
    "posterior() is the sum over hypotheses of up to three faults alone, on a compiled model.",
  );
  const rows = engines.flatMap(([name, id]) => {
    const times = timesByAnswers(profileOf(id), [5, 15, 30, 70]);
    return times.map((row) => [name, ...row]);
  });
  table(["engine", "answers", ...TIMES], rows);
}

function cylinderTable() {
  heading(
    "Growth with cylinders: inline, a coil on each plug, 15 answers",
    "Faults grow with the cylinders, and the sets that two of them reach with their fourth power.",
  );
  const rows = [3, 4, 5, 6, 8, 10, 12, 16].map((n) => [n, ...timesOf(inline(n), 15).shown]);
  table(["cylinders", ...TIMES], rows);
}

function answerTable() {
  heading("Growth with answers: V6, rail", "Many of them about single cylinders.");
  const profile = profileOf("generic.v6.123456.rail");
  table(["answers", ...TIMES], timesByAnswers(profile, [5, 10, 20, 30, 40, 50, 60, 70]));
}

const LEFT_OUT = ["-", `over ${LONGEST_MS / 1000} s`, "-", 0];

function profileOf(id) {
  const profile = profileById(id);
  if (!profile) throw new Error(`no profile ${id}`);
  return profile;
}

/** Odd cylinders first, then the even ones: an order that fires evenly, nothing more. */
function inline(cylinders) {
  const all = Array.from({ length: cylinders }, (_, i) => i + 1);
  const firingOrder = [...all.filter((c) => c % 2 === 1), ...all.filter((c) => c % 2 === 0)];
  return { cylinders, layout: "inline", firingOrder, ignition: "coil-per-plug" };
}

const TIMES = [
  "rank min",
  "median",
  "p99",
  "calls",
  "posterior min",
  "median",
  "p99",
  "calls",
  "hypotheses",
  "unsearched at most",
];

/** Rows for growing numbers of answers; rank() takes at most the square of them longer. */
function timesByAnswers(profile, counts) {
  let last;
  return counts.map((answers) => {
    const expected = last ? last.rankMs * (answers / last.answers) ** 2 : 0;
    const { shown, rankMs } = timesOf(profile, answers, expected < LONGEST_MS);
    if (rankMs !== undefined) last = { answers, rankMs };
    return [answers, ...shown];
  });
}

function timesOf(profile, answers, withRank = true) {
  const engine = resolveEngine(profile);
  // Answers are drawn before the clock runs.
  const drawn = Array.from({ length: 20 }, () => findingsFor(engine, answers));
  const models = drawn.map((findings) => compile(engine, findings, KNOWLEDGE).model);
  let unsearched = 0;
  let visited = 0;
  const sum = measure((i) => {
    const told = posterior(models[i % models.length]);
    unsearched = Math.max(unsearched, told.unsearched);
    visited = told.visited;
  });
  const whole = withRank ? measure((i) => rank(profile, drawn[i % drawn.length])) : undefined;
  const shown = [
    ...(whole ? [whole.min, whole.median, whole.p99].map(ms).concat(whole.calls) : LEFT_OUT),
    ...[sum.min, sum.median, sum.p99].map(ms).concat(sum.calls),
    visited.toLocaleString("en"),
    unsearched.toExponential(1),
  ];
  return { shown, rankMs: whole?.median };
}

// ---- beside a general-purpose library --------------------------------------------------------------

function peerTable() {
  const sizes = [
    [6, 5, 2],
    [8, 6, 3],
    [10, 8, 3],
    [12, 10, 3],
    [14, 10, 4],
    [16, 11, 4],
  ];
  heading(
    "Beside bayesjs 0.6.5 (general-purpose, exact) on noisy-OR models, three findings seen, the rest not",
    "Ours: all posteriors, one to three causes together. Theirs: ONE posterior, any number of causes,",
    "tables of the findings written out, a new evidence object each call, by its faster algorithm here.",
    "The questions differ in what they admit, so both are held against one plain enumeration in this",
    "run: theirs where it admits every subset, ours where it admits one to three. Largest difference last.",
  );
  let differs = false;
  const rows = sizes.map(([causes, findings, parents]) => {
    const m = noisyOr(causes, findings, parents);
    const model = asModel(m);
    const network = asNetwork(m);
    const evidence = Object.fromEntries(m.leak.map((_, f) => [`f${f}`, f < SEEN ? "yes" : "no"]));
    const algorithms = {
      elimination: bayes.inferences.variableElimination.infer,
      "junction tree": bayes.inferences.junctionTree.infer,
    };
    const ours = measure(() => posterior(model, { tolerance: 0 }));
    const theirs = Object.entries(algorithms)
      .map(([name, infer]) => {
        const asks = (i) => infer(network, { [`d${i % causes}`]: "yes" }, { ...evidence });
        return { name, infer, ...measure(asks, BUDGET_MS / 2) };
      })
      .sort((a, b) => a.median - b.median);
    const best = theirs[0];
    const all = enumerate(m, () => true);
    const upToThree = enumerate(m, (count) => count >= 1 && count <= 3);
    // One evidence object for all of them here: the library then remembers, and only the clock minds.
    const told = all.map((_, d) => best.infer(network, { [`d${d}`]: "yes" }, evidence));
    const apart = Math.max(
      largest(told, all),
      largest(posterior(model, { tolerance: 0 }).fault, upToThree),
    );
    if (apart > CLOSE) differs = true;
    return [
      `${causes}/${findings}/${parents}`,
      ...[ours.min, ours.median, ours.p99].map(ms),
      best.name,
      ...[best.min, best.median, best.p99].map(ms),
      best.calls,
      `${(best.median / ours.median).toPrecision(2)}×`,
      apart.toExponential(0),
    ];
  });
  table(
    [
      "causes/findings/parents",
      "ours min",
      "median",
      "p99",
      "theirs, by",
      "min",
      "median",
      "p99",
    ].concat(["calls", "ratio of medians", "difference"]),
    rows,
  );
  return differs;
}

/** Findings that are there; all others are not. */
const SEEN = 3;

function noisyOr(causes, findings, parents) {
  const link = Array.from({ length: causes }, () => new Array(findings).fill(0));
  for (let f = 0; f < findings; f++) {
    for (const d of shuffled([...link.keys()]).slice(0, parents))
      link[d][f] = 0.2 + 0.75 * random();
  }
  const prior = Array.from({ length: causes }, () => 0.005 + 0.1 * random());
  const leak = Array.from({ length: findings }, () => 0.005 + 0.05 * random());
  return { prior, leak, link };
}

function asModel({ prior, leak, link }) {
  const faults = prior.length;
  return {
    cylinders: 1,
    faults,
    odds: Float64Array.from(prior, (p) => p / (1 - p)),
    alone: new Uint8Array(faults),
    component: Uint32Array.from(prior.keys()),
    components: faults,
    atomStart: Uint32Array.from({ length: faults + 1 }, (_, d) => d),
    atomChance: new Float64Array(faults).fill(1),
    atomSet: new Uint32Array(faults),
    links: [],
    observations: leak.map((background, f) => ({
      form: f < SEEN ? "seen" : "not-seen",
      background,
      value: Float64Array.from(link, (row) => row[f]),
      answer: f,
    })),
    misfireObservations: [],
  };
}

function asNetwork({ prior, leak, link }) {
  const states = ["yes", "no"];
  const causes = prior.map((p, d) => [
    `d${d}`,
    { id: `d${d}`, states, parents: [], cpt: { yes: p, no: 1 - p } },
  ]);
  const findings = leak.map((background, f) => {
    const own = [...prior.keys()].filter((d) => link[d][f] > 0);
    const cpt = Array.from({ length: 2 ** own.length }, (_, bits) => {
      const isThere = (k) => ((bits >> k) & 1) === 1;
      const no = own.reduce((p, d, k) => p * (isThere(k) ? 1 - link[d][f] : 1), 1 - background);
      const when = Object.fromEntries(own.map((d, k) => [`d${d}`, isThere(k) ? "yes" : "no"]));
      // biome-ignore lint/suspicious/noThenProperty: the library's own name for a row
      return { when, then: { yes: 1 - no, no } };
    });
    return [`f${f}`, { id: `f${f}`, states, parents: own.map((d) => `d${d}`), cpt }];
  });
  return Object.fromEntries([...causes, ...findings]);
}

/** Posteriors by the definition, over all subsets of causes whose number is admitted. */
function enumerate({ prior, leak, link }, admits) {
  const sums = prior.map(() => 0);
  let total = 0;
  for (let bits = 0; bits < 2 ** prior.length; bits++) {
    const there = [...prior.keys()].filter((d) => (bits >> d) & 1);
    if (!admits(there.length)) continue;
    let weight = prior.reduce((w, p, d) => w * ((bits >> d) & 1 ? p : 1 - p), 1);
    leak.forEach((background, f) => {
      const no = there.reduce((p, d) => p * (1 - link[d][f]), 1 - background);
      weight *= f < SEEN ? 1 - no : no;
    });
    total += weight;
    for (const d of there) sums[d] += weight;
  }
  return sums.map((sum) => sum / total);
}

function largest(a, b) {
  return b.reduce((most, x, i) => Math.max(most, Math.abs(x - a[i])), 0);
}

// ---- random answers --------------------------------------------------------------------------------

/** Answers to so many different questions of the catalogue, each about one cylinder where it asks for one. */
function findingsFor({ names, profile, groups }, count) {
  const asked = FINDINGS.filter((row) => suitsEngine(profile, row)).flatMap((row) => {
    if (row.scope === "engine") return [{ row }];
    const at = row.scope === "coil" ? groups.map(([first]) => names[first]) : names;
    return at.map((cylinder) => ({ row, cylinder }));
  });
  return shuffled(asked)
    .slice(0, count)
    .map(({ row, cylinder }) => ({
      finding: row.id,
      answer: answerTo(row, names),
      ...(cylinder === undefined ? {} : { cylinder }),
    }));
}

function answerTo(row, names) {
  const options = Object.keys(row.options);
  if (row.kind === "choice") return pick(options);
  if (row.kind === "presence") return pick(["yes", "no"]);
  if (row.kind === "several") return shuffled(options).slice(0, Math.floor(3 * random()));
  if (row.kind === "counts") {
    return Object.fromEntries(names.map((name) => [name, Math.floor(300 * random() ** 6)]));
  }
  const numbered = names.filter((name) => name <= 12).map((name) => `P0${300 + name}`);
  return shuffled([...numbered, "P0300", "P0171", "P0420"]).slice(0, Math.floor(3 * random()));
}

function pick(list) {
  return list[Math.floor(list.length * random())];
}

function shuffled(list) {
  const rest = [...list];
  for (let i = rest.length - 1; i > 0; i--) {
    const j = Math.floor((i + 1) * random());
    [rest[i], rest[j]] = [rest[j], rest[i]];
  }
  return rest;
}

/** Numbers in 0..1 from a seed (Marsaglia's xorshift, 32 bits). */
function randomFrom(seed) {
  let x = seed;
  return () => {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    return (x >>> 0) / 2 ** 32;
  };
}

// ---- clock and tables ------------------------------------------------------------------------------

/**
 * A sixth of the budget to warm up, then calls until the budget is used up. A first call that takes
 * all of it is the only one, and counts.
 */
function measure(call, budget = BUDGET_MS / 2) {
  const start = performance.now();
  const spent = () => performance.now() - start;
  let warm = 0;
  do call(warm++);
  while (spent() < budget / 6);
  const times = warm === 1 && spent() > budget ? [spent()] : [];
  while (times.length === 0 || spent() < budget) {
    const before = performance.now();
    call(warm + times.length);
    times.push(performance.now() - before);
  }
  times.sort((a, b) => a - b);
  const at = (part) => times[Math.min(times.length - 1, Math.floor(part * times.length))];
  return { min: times[0], median: at(0.5), p99: at(0.99), calls: times.length };
}

function ms(value) {
  return value >= 100 ? value.toFixed(0) : value.toPrecision(2);
}

function heading(...lines) {
  console.log(`\n${lines.join("\n")}\n`);
}

function table(head, rows) {
  const cells = [head, ...rows].map((row) => row.map(String));
  const widths = head.map((_, column) => Math.max(...cells.map((row) => row[column].length)));
  for (const row of cells) {
    console.log(row.map((cell, column) => cell.padStart(widths[column])).join("  "));
  }
}

// ---- all of it ----------------------------------------------------------------------------------

catalogueTable();
cylinderTable();
answerTable();
const differs = peerTable();
plannerTables({ random, heading, table, ms });
await benchNext();
await benchPage();
console.log(`\nTook ${((performance.now() - began) / 1000).toFixed(0)} s.`);
if (differs) {
  console.error("The programs do not agree: see the table above.");
  process.exitCode = 1;
}
