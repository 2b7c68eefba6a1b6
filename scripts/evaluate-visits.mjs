// How long until engines that the simulator broke run right again, rule beside rule.
//   npm run build && node scripts/evaluate-visits.mjs [--cases 400] [--seed 20269]
import { parseArgs } from "node:util";
import { evaluateVisits } from "./evaluate/visit.mjs";

const { values } = parseArgs({
  options: {
    cases: { type: "string", default: "400" },
    seed: { type: "string", default: "20269" },
  },
});
await evaluateVisits({ cases: Number(values.cases), seed: Number(values.seed) });
