// What each outcome of a check would mean, and what to write into the case when it comes out so.
import type { CheckOutcome, Finding, Knowledge } from "@half-order/core";
import { sayAnswer } from "./ledger-text.ts";
import { jsonLine, percent, wrapped } from "./text.ts";

/** Outcomes rarer than this are not worth a line. */
const WORTH_SAYING = 0.01;
/** Below the words of a line that begins with a percentage. */
const UNDER = " ".repeat(11);

/** A question of the check, by the letter under which its answers are told. */
interface Asked extends Pick<Finding, "finding" | "cylinder"> {
  readonly letter: string;
}

/** The questions first, each as the case holds it, then the outcomes in the order given. */
export function sayOutcomes(
  outcomes: readonly CheckOutcome[],
  { findings }: Pick<Knowledge, "findings">,
): string {
  const asked = askedIn(outcomes);
  const told = outcomes.filter(({ probability }) => probability >= WORTH_SAYING);
  return [
    'What it would mean. Write what you find into "findings" of the case:\n',
    ...asked.map(({ letter, ...of }) => {
      const written = jsonLine({ ...of, answer: "…" }).replace('"…"', "…");
      const ask = findings.get(of.finding)?.ask ?? of.finding;
      return `  ${letter}  ${written}\n${wrapped(ask, "     ")}`;
    }),
    ...told.map((outcome) => sayOutcome(outcome, asked, findings)),
    wrapped(
      'The chance behind a fault is of that one way to fail; "half-order rank" adds them up by part.',
      "  ",
    ),
  ].join("");
}

function askedIn(outcomes: readonly CheckOutcome[]): readonly Asked[] {
  const all = outcomes.flatMap(({ answers }) => answers);
  return all
    .filter((answer, i) => all.findIndex((other) => isSame(other, answer)) === i)
    .map(({ finding, cylinder }, i) => ({
      finding,
      ...(cylinder === undefined ? {} : { cylinder }),
      letter: String.fromCharCode("a".charCodeAt(0) + i),
    }));
}

function isSame(
  a: Pick<Finding, "finding" | "cylinder">,
  b: Pick<Finding, "finding" | "cylinder">,
): boolean {
  return a.finding === b.finding && a.cylinder === b.cylinder;
}

function sayOutcome(
  { answers, probability, leader }: CheckOutcome,
  asked: readonly Asked[],
  findings: Knowledge["findings"],
): string {
  const given = asked.flatMap((question) => {
    const answer = answers.find((each) => isSame(each, question))?.answer;
    return answer === undefined ? [] : [{ ...question, answer }];
  });
  const written = given.map(({ letter, answer }) => `${letter} ${JSON.stringify(answer)}`);
  const words = given.flatMap(({ finding, answer }) => {
    const row = findings.get(finding);
    return row ? [sayAnswer(answer, row)] : [];
  });
  const then = leader ? ` Likeliest then: ${leader.name}, ${percent(leader.probability)}.` : "";
  const head = `${percent(probability).padStart(9)}  ${written.join(", ") || "anything else"}\n`;
  const body = `${words.join("; ")}${words.length > 0 ? "." : ""}${then}`.trim();
  return `${head}${body ? wrapped(body, UNDER) : ""}`;
}
