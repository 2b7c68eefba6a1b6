// `half-order sensitivity`: which single numbers would bring another part to the first place, and how often it holds when
// all numbers are a little off.
import { parseArgs } from "node:util";
import {
  type NamedFlip,
  type RankedComponent,
  type RankedFault,
  rank,
  type Stability,
  sensitivity,
} from "@half-order/core";
import { readCaseAndNumbers } from "./case-input.ts";
import { countOf, type Input, refuseExtra } from "./input.ts";
import { sayFinding } from "./ledger-text.ts";
import { json, percent, rounded, table, wrapped } from "./text.ts";

const OPTIONS = {
  json: { type: "boolean", default: false },
  seed: { type: "string" },
  shakes: { type: "string" },
  knowledge: { type: "string" },
} as const;

/** A number that must move further than a factor of a thousand is no worry. */
const WORTH_SAYING_DB = 30;

export async function sensitivityCommand(args: readonly string[], stdin: Input): Promise<string> {
  const words = parseArgs({ args: [...args], options: OPTIONS, allowPositionals: true });
  refuseExtra(words.positionals, 1);
  const [file] = words.positionals;
  const seed = countOf("seed", words.values.seed) ?? 1;
  const shakes = countOf("shakes", words.values.shakes) ?? 100;
  const { known, numbers } = await readCaseAndNumbers(file, words.values.knowledge, stdin);
  const { knowledge } = numbers;
  const { title, engine, findings, repairs = [] } = known;
  const options = { knowledge, repairs };
  const told = sensitivity(engine, findings, { ...options, seed, shakes });
  if (words.values.json) return json({ engine: { id: engine.id, name: engine.name }, ...told });
  const { ranking, components } = rank(engine, findings, options);
  const nameOf = (key: string): string =>
    ranking.find(({ fault, place }) => `${fault}@${place}` === key)?.name ?? key;
  const answerOf = ({ finding, cylinder }: NamedFlip): string => {
    // Of two answers to one question the later holds.
    const own = findings.findLast((f) => f.finding === finding && f.cylinder === cylinder);
    return own ? sayFinding(own, engine, knowledge) : "";
  };
  const near = told.flips.filter(({ moveDb }) => Math.abs(moveDb) <= WORTH_SAYING_DB);
  return [
    wrapped([title, engine.name ?? engine.id ?? "The engine"].filter(Boolean).join(": ")),
    `\nFirst and second\n${table(
      told.leading.map((key) => ["", ...sayLeading(key, ranking, components)]),
      "",
    )}`,
    "\nSingle numbers that would bring another part to the first place, nearest first\n",
    ...near.map((flip) => sayFlip(flip, nameOf, answerOf(flip))),
    near.length === 0 ? "  None, even if it were off by a factor of a thousand.\n" : "",
    "\nHow often it holds when all numbers are off by chance\n",
    table(told.stability.map(sayStability)),
    "\n",
    wrapped(
      "3 dB are twice the odds, 10 dB ten times. Most numbers here are estimates and may well be off " +
        "by a factor of two: a first place that hangs on less is one to check, not one to buy for.",
    ),
  ].join("");
}

/** A part by its likeliest fault, with the chance of that and of the part in whatever way. */
function sayLeading(
  key: string,
  ranking: readonly RankedFault[],
  components: readonly RankedComponent[],
): readonly string[] {
  const row = ranking.find(({ fault, place }) => `${fault}@${place}` === key);
  const part = components.find(({ component }) => component === row?.component);
  if (!row || !part) return [key];
  return [
    percent(row.probability).padStart(7),
    row.name,
    `its part in whatever way ${percent(part.probability)}`,
  ];
}

function sayFlip(
  { of, fault, from, to, moveDb, first }: NamedFlip,
  nameOf: (key: string) => string,
  answer: string,
): string {
  const figure = `${moveDb < 0 ? "" : "+"}${rounded(moveDb).toFixed(1)} dB`.padStart(9);
  const itself = first === fault ? "it" : `"${nameOf(fault)}"`;
  const times = sayTimes(10 ** (Math.abs(moveDb) / 10));
  const what =
    of === "prior"
      ? `if ${itself} were ${times} as ${moveDb < 0 ? "rare" : "common"}`
      : `if ${itself} brought the answer "${answer}" in ${percent(to)} of cases, not in ${percent(from)}`;
  const text = wrapped(`"${nameOf(first)}" would be first ${what}.`, " ".repeat(11));
  return `${figure}  ${text.trimStart()}`;
}

function sayTimes(times: number): string {
  return `${times < 10 ? times.toFixed(1) : String(Math.round(times))} times`;
}

function sayStability({
  sigma,
  shakes,
  first,
  firstFault,
  firstThree,
}: Stability): readonly string[] {
  return [
    `by a factor of about ${Math.exp(sigma).toFixed(1)} (sigma ${sigma})`,
    `first part ${percent(first)}`,
    `likeliest fault ${percent(firstFault)}`,
    `first three ${percent(firstThree)}`,
    `of ${shakes} tries`,
  ];
}
