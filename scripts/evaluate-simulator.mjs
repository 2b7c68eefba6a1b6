// How often the ranking finds what the simulator broke.
//   npm run build && node scripts/evaluate-simulator.mjs [--cases 2000] [--seed 20269]
import { parseArgs } from "node:util";
import { evaluateSimulator } from "./evaluate/simulator.mjs";

const { values } = parseArgs({
  options: {
    cases: { type: "string", default: "2000" },
    seed: { type: "string", default: "20269" },
  },
});
await evaluateSimulator({ cases: Number(values.cases), seed: Number(values.seed) });
