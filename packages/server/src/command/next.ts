// `half-order next`: what pays most to do now, as JSON or as text.
import { parseArgs } from "node:util";
import { type Next, next } from "@half-order/core";
import { readCaseAndNumbers } from "./case-input.ts";
import { countOf, type Input, refuseExtra } from "./input.ts";
import { sayNext } from "./next-text.ts";
import { json } from "./text.ts";

/** Long enough for a good plan, short enough to wait for. */
const THINK_MS = 400;

const OPTIONS = {
  json: { type: "boolean", default: false },
  think: { type: "string" },
  knowledge: { type: "string" },
} as const;

export async function nextCommand(args: readonly string[], stdin: Input): Promise<string> {
  const words = parseArgs({ args: [...args], options: OPTIONS, allowPositionals: true });
  refuseExtra(words.positionals, 1);
  const think = countOf("think", words.values.think) ?? THINK_MS;
  const [file] = words.positionals;
  const { known, numbers } = await readCaseAndNumbers(file, words.values.knowledge, stdin);
  const { knowledge } = numbers;
  const { engine, findings, repairs = [], atHand = {} } = known;
  const end = performance.now() + think;
  const advice: Next = next(engine, findings, {
    repairs,
    atHand,
    knowledge,
    isEnough: () => performance.now() > end,
  });
  return words.values.json ? json(advice) : sayNext(known, advice, knowledge);
}
