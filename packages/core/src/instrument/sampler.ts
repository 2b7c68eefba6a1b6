// Draws cases from the model itself: what is wrong, then what is answered. If the ranking computes what
// it says, it is right about such cases as often as it says.
import { answeredOf } from "../compile/answered.ts";
import { compile } from "../compile/compile.ts";
import { expectedShare } from "../compile/count.ts";
import { type Instance, riskFactor } from "../compile/prior.ts";
import type { Engine } from "../engine/engine.ts";
import type { Finding } from "../knowledge/answer.ts";
import { COUNTS_FROM_MISFIRE } from "../knowledge/code.ts";
import type { Knowledge } from "../knowledge/knowledge.ts";
import type { Observation } from "../model/diagnosis-model.ts";
import type { Random } from "../units/random.ts";
import { drawFaults, drawSet, type Most } from "./draw.ts";
import { type Asked, askedOf, findingOf, type Outcome, type Question } from "./question.ts";

/** What is really wrong in a case. */
export interface Truth {
  /** Numbers of the faults that are present, as `compile` counts them; ascending. */
  readonly faults: readonly number[];
  /** The same as `fault@place`. */
  readonly places: readonly string[];
  /** Which cylinders really miss: bit mask, 2^cylinders for "at random". */
  readonly set: number;
}

export interface DrawnCase {
  readonly truth: Truth;
  readonly findings: readonly Finding[];
}

/** What the chances of all answers to a question add up to; 1 where the model is a distribution. */
export interface AnswerSum {
  readonly question: Question;
  readonly least: number;
  readonly most: number;
}

export interface Sampler {
  readonly draw: (random: Random) => DrawnCase;
  /** For faults and a set, question by question: over the parts of the answer, least and most. */
  readonly answerSums: (faults: readonly number[], set: number) => readonly AnswerSum[];
}

/** Totals of counts that are drawn, where more than a little is counted. */
const COUNTED = [12, 40, 150, 600];

/**
 * A sampler of cases in which these questions are asked, in this order. Answers about what is known
 * beforehand come first in the drawing and from their options' own chances; they shift the odds.
 * Answers are options and never numbers measured, and of each family one code at most is stored.
 */
export function samplerOf(
  engine: Engine,
  knowledge: Knowledge,
  questions: readonly Question[],
  most: Most = 3,
): Sampler {
  const { instances, model } = compile(engine, [], knowledge);
  const asked = questions.map((question) => askedOf(engine, instances, question, knowledge));
  const before = asked.filter((each) => isBeforehand(instances, each));
  const after = asked
    .filter((each) => !before.includes(each))
    .sort((a, b) => turnOf(engine, a) - turnOf(engine, b));
  const draw = (random: Random): DrawnCase => {
    const known = before.map((each) => drawByChance(each, random));
    const answered = answeredOf(engine, known, knowledge);
    const odds = model.odds.map(
      (own, f) => own * riskFactor((instances[f] as Instance).fault, answered),
    );
    const faults = drawFaults({ ...model, odds }, most, random);
    const set = drawSet(model, faults, random);
    const told: Finding[] = [];
    for (const each of after) {
      const { question, row } = each;
      const given = row.made ? askedOf(engine, instances, question, knowledge, told) : each;
      told.push(drawAnswer(engine, given, faults, set, random));
    }
    const findings = asked.map((each) => {
      const place = before.indexOf(each);
      return (place < 0 ? told[after.indexOf(each)] : known[place]) as Finding;
    });
    return { truth: { faults, places: faults.map((f) => nameOf(instances, f)), set }, findings };
  };
  const answerSums = (faults: readonly number[], set: number): readonly AnswerSum[] =>
    after
      .filter(({ parts }) => parts.length > 0)
      .map(({ question, parts }) => {
        const sums = parts.map((part) => sum(part.map((o) => chanceOf(o, faults, set))));
        return { question, least: Math.min(...sums), most: Math.max(...sums) };
      });
  return { draw, answerSums };
}

/** What a look shows hangs on when the trouble is there, and on what it showed at cylinders that fire earlier. */
function turnOf({ order, names }: Engine, { row, question }: Asked): number {
  return row.made ? 1 + order.findIndex((c) => names[c] === question.cylinder) : -1;
}

/** True where the answer shifts the odds, or nothing, and no fault of the engine makes it likelier. */
function isBeforehand(instances: readonly Instance[], { row, parts }: Asked): boolean {
  const speaks = ({ observations, misfireObservations }: Outcome): boolean =>
    misfireObservations.length > 0 ||
    observations.some(({ form, value }) => form === "choice" || value.some((chance) => chance > 0));
  const isSpoken = row.kind === "counts" || parts.some((part) => part.some(speaks));
  const isRisk = instances.some(({ fault }) => fault.risks.some((r) => r.finding === row.id));
  if (isSpoken && isRisk) {
    throw new Error(`sampler: ${row.id} is a risk and a sign; its cases cannot be drawn`);
  }
  return !isSpoken;
}

function drawByChance({ question, row, parts }: Asked, random: Random): Finding {
  const options = Object.entries(row.options);
  if (row.kind === "choice") {
    const chosen = options[random.choice(options.map(([, { chance }]) => chance))];
    return findingOf({ question, row, parts }, [chosen?.[0] as string]);
  }
  const held = options.filter(([, { chance }]) => random.uniform() < chance);
  return findingOf(
    { question, row, parts },
    held.map(([option]) => option),
  );
}

function drawAnswer(
  engine: Engine,
  asked: Asked,
  faults: readonly number[],
  set: number,
  random: Random,
): Finding {
  if (asked.row.kind === "counts") {
    return { ...asked.question, answer: drawCounts(engine, set, random) };
  }
  const words = asked.parts.flatMap((part) => {
    const chances = part.map((outcome) => chanceOf(outcome, faults, set));
    return part[random.choice(chances)]?.words ?? [];
  });
  return findingOf(asked, words);
}

/**
 * The chance of an outcome by the definitions of the model, for faults and the set they make. Where the
 * set has its say the faults add only how much likelier than usual they make it.
 */
function chanceOf(outcome: Outcome, faults: readonly number[], set: number): number {
  const { observations, misfireObservations } = outcome;
  const bySet = misfireObservations.reduce((p, { likelihood }) => p * likelihood(set), 1);
  const isShared = misfireObservations.length > 0;
  return observations.reduce(
    (p, o) => (p * observationChance(o, faults)) / (isShared ? o.background : 1),
    bySet,
  );
}

function observationChance(
  { form, background, value }: Observation,
  faults: readonly number[],
): number {
  const values = faults.map((fault) => value[fault] as number);
  if (form === "choice") {
    const speakers = values.filter((chance) => chance >= 0);
    return speakers.length === 0 ? background : sum(speakers) / speakers.length;
  }
  const none = values.reduce((product, chance) => product * (1 - chance), 1 - background);
  return form === "seen" ? 1 - none : none;
}

/**
 * Dirichlet-multinomial counts from Pólya's urn: each count falls on a cylinder in proportion to its
 * weight and the counts it has already.
 */
function drawCounts(engine: Engine, set: number, random: Random): Record<string, number> {
  const { firmness, littleCounted } = COUNTS_FROM_MISFIRE;
  const cylinders = engine.names.length;
  const little = set === 0 ? littleCounted.nothing : littleCounted.misfire;
  const total =
    random.uniform() < little ? 0 : (COUNTED[random.choice(COUNTED.map(() => 1))] as number);
  const counts = new Float64Array(cylinders);
  const weights = counts.map((_, c) => firmness * expectedShare(set, c, cylinders));
  for (let drawn = 0; drawn < total; drawn++) {
    const c = random.choice(counts.map((count, i) => count + (weights[i] as number)));
    counts[c] = (counts[c] as number) + 1;
  }
  return Object.fromEntries(engine.names.map((name, c) => [String(name), counts[c] as number]));
}

function nameOf(instances: readonly Instance[], fault: number): string {
  const { fault: row, place } = instances[fault] as Instance;
  return `${row.id}@${place.id}`;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
