// How far are the planner's plans from the best ones, and how long does it think?
import { nextStep } from "../../packages/core/dist/planning/next-step.js";
import {
  afterOutcome,
  afterRepair,
  outcomeChances,
  startOf,
} from "../../packages/core/dist/planning/state.js";
import { planProblem } from "./plan-problem.mjs";

/** Carried out in every case, by every policy: a minute or two in all. */
const PROBLEMS = 500;
/** Situations that the planner may weigh up for one decision on a small problem. */
const WORK = 1000;
/** Enough to prove nearly every plan for up to 12 causes; problems where it is not are counted. */
const PROOF_WORK = 400_000;
/** What a caller who waits for the page allows. */
const PATIENCE_MS = 30;

/** Prints the tables; `random` gives numbers in 0..1, `table` and `heading` print. */
export function plannerTables({ random, heading, table, ms }) {
  const began = performance.now();
  regretTable({ random, heading, table, ms });
  largeTable({ random, heading, table, ms });
  console.log(`\nThe planner took ${((performance.now() - began) / 1000).toFixed(0)} s.`);
}

function regretTable({ random, heading, table, ms }) {
  const regrets = new Map(POLICIES.map(({ name }) => [name, []]));
  const times = [];
  const overOrder = [];
  let unproven = 0;
  for (let i = 0; i < PROBLEMS; i++) {
    const causes = 4 + Math.floor(9 * random());
    const shape = { causes, tests: 2 + Math.floor(5 * random()), repairs: causes };
    const problem = planProblem(random, { ...shape, canCall: random() < 0.7 });
    const best = nextStep(problem, undefined, { maxWork: PROOF_WORK });
    if (!best.isOptimal) {
      unproven++;
      continue;
    }
    const costs = POLICIES.map(({ policyFor }) =>
      costOf(problem, policyFor(problem, random, times)),
    );
    for (const [k, { name }] of POLICIES.entries()) {
      regrets.get(name).push(costs[k] / best.expectedCost - 1);
    }
    overOrder.push(costs[0] / costs[ORDER] - 1);
  }
  heading(
    `Plans for ${PROBLEMS} random problems of 4 to 12 causes, 2 to 6 tests, carried out in every case`,
    "Cost above the best plan, which is proven by bounds that meet. The last three never test.",
    `The planner may weigh up ${WORK} situations for a decision, and plans anew after each answer.`,
  );
  const percent = (x) => `${(100 * x).toFixed(2)} %`;
  const rows = POLICIES.map(({ name }) => {
    const list = regrets.get(name).sort((a, b) => a - b);
    const mean = list.reduce((sum, x) => sum + x, 0) / list.length;
    const exact = list.filter((x) => x < 1e-9).length / list.length;
    const at = (part) => list[Math.min(list.length - 1, Math.floor(part * list.length))];
    return [name, percent(mean), percent(at(0.95)), percent(at(1)), percent(exact)];
  });
  table(["policy", "mean", "95th percentile", "worst", "exactly best"], rows);
  const worse = overOrder.filter((x) => x > 1e-9).length;
  times.sort((a, b) => a - b);
  const time = (part) => ms(times[Math.floor(part * (times.length - 1))]);
  console.log(
    `\nNot proven, left out: ${unproven}. Planner worse than the repair order: ${worse} times.`,
    `\nOne decision: median ${time(0.5)} ms, 99th percentile ${time(0.99)} ms, ${times.length} decisions.`,
  );
}

function largeTable({ random, heading, table, ms }) {
  heading(
    "One decision among 300 states, 60 tests of up to 6 outcomes, 80 repairs",
    "Expected cost of the plan found, as a share of the repair order's; a good plan comes first.",
    `Looking once at every step, then with ${PATIENCE_MS} ms, and with more.`,
  );
  const problems = Array.from({ length: 6 }, () =>
    planProblem(random, { causes: 300, tests: 60, repairs: 80, outcomes: 6 }),
  );
  const budgets = [0, PATIENCE_MS, 100, 300, 1000];
  for (const problem of problems) thinkFor(problem, 100);
  const rows = budgets.map((budget) => {
    const runs = problems.flatMap((problem) => {
      return Array.from({ length: budget > 100 ? 1 : 5 }, () => thinkFor(problem, budget));
    });
    const middle = (list) => list.sort((a, b) => a - b)[Math.floor(list.length / 2)];
    const share = middle(runs.map(({ plan }) => plan.expectedCost / plan.repairOrderCost));
    const took = runs.map(({ took }) => took);
    const work = middle(runs.map(({ plan }) => plan.work));
    return [`${budget} ms`, ms(middle(took)), ms(Math.max(...took)), work, share.toFixed(3)];
  });
  table(["budget", "took, median", "most", "situations", "of the repair order"], rows);
}

function thinkFor(problem, budget) {
  const start = performance.now();
  const isEnough = () => performance.now() - start > budget;
  const plan = nextStep(problem, undefined, { isEnough });
  return { plan, took: performance.now() - start };
}

// ---- policies ------------------------------------------------------------------------------------

const POLICIES = [
  {
    name: "the planner",
    policyFor: (problem, _, times) => (state) => {
      const start = performance.now();
      const { step } = nextStep(problem, state, { maxWork: WORK });
      times.push(performance.now() - start);
      return step;
    },
  },
  {
    name: "looks one step ahead",
    policyFor: (problem) => (state) => nextStep(problem, state, { maxWork: 0 }).step,
  },
  { name: "information per cost, then repairs", policyFor: informed },
  {
    name: "chance per cost, updated",
    policyFor: (problem) => (state) => orderOf(problem, state)[0],
  },
  { name: "chance per cost, fixed", policyFor: fixedOrder },
  { name: "random order of repairs", policyFor: randomOrder },
];
const ORDER = POLICIES.findIndex(({ name }) => name === "chance per cost, updated");

function orderOf(problem, state) {
  return nextStep(problem, state, { maxWork: 0 }).repairOrder.map(({ step }) => step);
}

/** Tests while a test tells at least a tenth of a bit, the most bits per cost first; then repairs. */
function informed(problem) {
  return (state) => {
    const gains = problem.tests.map((test, t) => {
      return state.tested[t] ? 0 : bitsOf(problem, state, t) / test.cost;
    });
    const best = gains.indexOf(Math.max(...gains));
    const tells = best >= 0 && gains[best] * problem.tests[best].cost >= 0.1;
    return tells ? { kind: "test", test: best } : orderOf(problem, state)[0];
  };
}

function bitsOf(problem, state, test) {
  const chances = outcomeChances(problem, state, test);
  return chances.reduce((bits, chance, o) => {
    if (chance < 1e-12) return bits;
    return bits - chance * entropy(afterOutcome(problem, state, test, o).chance);
  }, entropy(state.chance));
}

function entropy(chance) {
  return chance.reduce((sum, p) => (p > 0 ? sum - p * Math.log2(p) : sum), 0);
}

/** By the chances at the start, never updated; the call when all is done. */
function fixedOrder(problem) {
  const chanceOf = ({ cures }) => cures.reduce((sum, c, s) => sum + c * problem.chance[s], 0);
  const ratio = (repair) => chanceOf(repair) / repair.cost;
  const order = [...problem.repairs.keys()].sort(
    (a, b) => ratio(problem.repairs[b]) - ratio(problem.repairs[a]),
  );
  return inOrder(problem, order);
}

function randomOrder(problem, random) {
  const keys = new Map([...problem.repairs.keys()].map((r) => [r, random()]));
  return inOrder(
    problem,
    [...keys.keys()].sort((a, b) => keys.get(a) - keys.get(b)),
  );
}

function inOrder(problem, order) {
  return (state) => {
    const repair = order.find((r) => {
      return (
        !state.repaired[r] && problem.repairs[r].cures.some((c, s) => c * state.chance[s] > 1e-12)
      );
    });
    if (repair !== undefined) return { kind: "repair", repair, thenTry: true };
    return problem.callCost === undefined ? undefined : { kind: "call" };
  };
}

/** Exact expected cost of a policy: carried out in every case that can come. */
function costOf(problem, policy, state = startOf(problem)) {
  const step = policy(state);
  if (step === undefined) return 0;
  if (step.kind === "call") return problem.callCost;
  if (step.kind === "test") {
    return outcomeChances(problem, state, step.test).reduce((sum, chance, o) => {
      if (chance < 1e-12) return sum;
      return sum + chance * costOf(problem, policy, afterOutcome(problem, state, step.test, o));
    }, problem.tests[step.test].cost);
  }
  const { cost, cures } = problem.repairs[step.repair];
  const left = 1 - cures.reduce((sum, c, s) => sum + c * state.chance[s], 0);
  if (left < 1e-12) return cost;
  return cost + left * costOf(problem, policy, afterRepair(problem, state, step.repair));
}
