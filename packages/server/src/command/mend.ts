// `half-order mend`: a repair from the first screw to the last proof; as JSON or as text.
import { parseArgs } from "node:util";
import { type Mending, mend, sayProbability } from "@half-order/core";
import { readCaseAndNumbers } from "./case-input.ts";
import { type Input, refuseExtra, UsageError } from "./input.ts";
import { sayCautions, sayMinutes, sayOpens } from "./next-text.ts";
import { json, percent, table, wrapped } from "./text.ts";

const OPTIONS = {
  json: { type: "boolean", default: false },
  at: { type: "string" },
  knowledge: { type: "string" },
} as const;

export async function mendCommand(args: readonly string[], stdin: Input): Promise<string> {
  const words = parseArgs({ args: [...args], options: OPTIONS, allowPositionals: true });
  refuseExtra(words.positionals, 2);
  const [repair, file] = words.positionals;
  if (repair === undefined) throw new UsageError("Name a repair, as half-order next tells it.");
  const { at, knowledge: own } = words.values;
  const { known, numbers } = await readCaseAndNumbers(file, own, stdin);
  const { knowledge } = numbers;
  const { engine, findings, repairs = [], atHand = {} } = known;
  const wanted = { repair, ...(at === undefined ? {} : { cylinder: at }) };
  const mending = mend(engine, findings, wanted, { repairs, atHand, knowledge });
  if (words.values.json) return json(mending);
  return sayMending(mending, sayCautions(mending.cautions, knowledge));
}

function sayMending(mending: Mending, cautions: string): string {
  const { name, minutes, cures, opens, faults, alsoPutRight, notYet, putBack, proof } = mending;
  const parts = [
    wrapped(
      `${name} (${sayMinutes(minutes)}); it cures this with a chance of ${sayProbability(cures)}.`,
    ),
    cautions,
    sayOpens(opens),
    faults.length > 0
      ? `What it would cure:\n${table(faults.map((f) => [percent(f.probability).padStart(7), f.name]))}`
      : "",
    alsoPutRight.length > 0
      ? `So that the new part lives:\n${alsoPutRight.map(({ say }) => wrapped(`- ${say}`, "  ")).join("")}`
      : "",
    notYet.length > 0
      ? `Not to be bought yet:\n${table(notYet.map((n) => [percent(n.cures).padStart(7), n.name]))}`
      : "",
    `Putting it back:\n${putBack.map(({ say }, i) => wrapped(`${i + 1}. ${say}`, "  ")).join("")}`,
    proof ? sayProof(proof) : "",
    wrapped("Minutes and chances are estimates. The vehicle maker's service manual comes first."),
  ];
  return parts.filter(Boolean).join("\n");
}

function sayProof({ trials, believed, trial, clear }: NonNullable<Mending["proof"]>): string {
  return [
    wrapped(
      `Proof: ${trials} clean ${trials === 1 ? "drive" : "drives"}; then it is mended with a chance of ` +
        `${sayProbability(believed)}.`,
    ),
    "Each drive:\n",
    ...trial.map(({ say }, i) => wrapped(`${i + 1}. ${say}`, "  ")),
    "Afterwards:\n",
    ...clear.map(({ say }) => wrapped(`- ${say}`, "  ")),
  ].join("");
}
