// What a changed or new fault says about findings: do these exist, and do its chances leave room?
import { nearest } from "../units/nearest.ts";
import { type Problem, pointer } from "../units/problem.ts";
import { PROBABILITY_FLOOR } from "../units/weight.ts";
import { checkGrounds, problem, range } from "./check-number.ts";
import type { FaultChange, FaultRow, FindingRow, RiskRow, SignRow } from "./schema.ts";

type Findings = ReadonlyMap<string, FindingRow>;
type About = Pick<RiskRow, "finding" | "grounds">;
type Options = Readonly<Partial<Record<string, number>>>;

/** What a choice row may add up to when it leaves options open: the rest is for slips of the eye. */
const MOST_OPEN = 0.98;
const MOST_TIMES = 30;
/** Rounding of sums of decimals. */
const SLACK = 1e-6;

/** Problems of the risks and signs that are given; `row` is the fault as they leave it. */
export function checkSpeech(
  findings: Findings,
  given: FaultChange,
  row: FaultRow,
  path: string,
): readonly Problem[] {
  const { risks = [], signs = [] } = given;
  return [
    ...risks.flatMap((risk, i) => checkRisk(findings, risk, row, `${path}/risks/${i}`)),
    ...signs.flatMap((sign, i) => checkSign(findings, sign, row, `${path}/signs/${i}`)),
    ...twice(risks, `${path}/risks`),
    ...twice(signs, `${path}/signs`),
  ];
}

function checkRisk(
  findings: Findings,
  risk: RiskRow,
  row: FaultRow,
  path: string,
): readonly Problem[] {
  const unknown = checkNamed(findings, risk, risk.times, { path, field: "times" });
  if (unknown.length > 0) return unknown;
  return [
    ...checkOnce(risk, row.signs, path),
    ...numbers(risk.times, PROBABILITY_FLOOR, MOST_TIMES, `${path}/times`),
  ];
}

function checkSign(
  findings: Findings,
  sign: SignRow,
  row: FaultRow,
  path: string,
): readonly Problem[] {
  const unknown = checkNamed(findings, sign, sign.gives, { path, field: "gives" });
  if (unknown.length > 0) return unknown;
  const off = [...checkOnce(sign, row.risks, path), ...numbers(sign.gives, 0, 1, `${path}/gives`)];
  if (off.length > 0) return off;
  const gives = row.signs.find(({ finding }) => finding === sign.finding)?.gives ?? sign.gives;
  return checkSum(findings.get(sign.finding) as FindingRow, gives, `${path}/gives`);
}

/** A finding is known beforehand or caused by the fault; as both it would count twice. */
function checkOnce({ finding }: About, others: readonly About[], path: string): readonly Problem[] {
  if (!others.some((other) => other.finding === finding)) return [];
  const message = `"${finding}" would be a risk and a sign of this fault, and count twice.`;
  const hint = "A risk is known beforehand, a sign is caused by the fault: keep one of them.";
  return [problem("finding-twice", `${path}/finding`, message, hint)];
}

/** The finding and the options that a row speaks of. */
function checkNamed(
  findings: Findings,
  row: About,
  options: Options,
  at: { readonly path: string; readonly field: string },
): readonly Problem[] {
  const finding = findings.get(row.finding);
  if (!finding) {
    const message = `There is no finding ${JSON.stringify(row.finding)}.`;
    const hint = didYouMean(row.finding, [...findings.keys()]);
    return [problem("finding-unknown", `${at.path}/finding`, message, hint)];
  }
  const unknown = Object.keys(options).filter((option) => !Object.hasOwn(finding.options, option));
  return [
    ...checkGrounds(row.grounds, `${at.path}/grounds`),
    ...unknown.map((option) => {
      const message = `${JSON.stringify(option)} is no answer to "${finding.id}".`;
      const hint = didYouMean(option, Object.keys(finding.options));
      return problem("option-unknown", at.path + pointer(at.field, option), message, hint);
    }),
  ];
}

/** A choice has one answer: its chances add up to 1, or leave room for the answers not named. */
function checkSum(finding: FindingRow, gives: Options, path: string): readonly Problem[] {
  if (finding.kind !== "choice") return [];
  const sum = Object.values(gives).reduce<number>((total, chance = 0) => total + chance, 0);
  const isFull = Object.keys(finding.options).every((option) => gives[option] !== undefined);
  if (isFull ? Math.abs(sum - 1) < SLACK : sum <= MOST_OPEN + SLACK) return [];
  const said = Object.entries(gives).map(([option, chance]) => `${option} ${chance}`);
  return [
    problem(
      "sum-wrong",
      path,
      `All that this fault then says of "${finding.id}" adds up to ${Number(sum.toFixed(4))}: ${said.join(", ")}.`,
      isFull
        ? "It names every answer, so they must add up to 1: state the others here too."
        : `Answers that it does not name need room: at most ${MOST_OPEN}. State the others here too.`,
    ),
  ];
}

function numbers(options: Options, least: number, most: number, path: string): readonly Problem[] {
  return Object.entries(options).flatMap(([option, value = Number.NaN]) =>
    range(value, least, most, path + pointer(option)),
  );
}

function twice(rows: readonly About[], path: string): readonly Problem[] {
  return rows.flatMap(({ finding }, i) =>
    rows.findIndex((row) => row.finding === finding) === i
      ? []
      : [
          problem(
            "finding-twice",
            `${path}/${i}/finding`,
            `"${finding}" is there twice.`,
            "Put its options into one row.",
          ),
        ],
  );
}

function didYouMean(word: string, known: readonly string[]): string {
  const near = nearest(word, known, Number.POSITIVE_INFINITY).slice(0, 2);
  if (near.length === 0) return "This finding takes no options.";
  return `Did you mean ${near.map((name) => JSON.stringify(name)).join(" or ")}?`;
}
