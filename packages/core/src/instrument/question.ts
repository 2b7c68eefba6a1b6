// All answers that a question can have on an engine, each with what it says: the tables that a sampler
// draws answers from. An answer may be made up of parts that are independent given what is wrong (each
// smell by itself, each family of codes); each part is a list of outcomes of which one happens.
import { type Answered, answeredOf } from "../compile/answered.ts";
import { normalCode } from "../compile/code.ts";
import { type Observed, observe, subjectsOf } from "../compile/likelihood.ts";
import type { Instance } from "../compile/prior.ts";
import type { Engine } from "../engine/engine.ts";
import type { CylinderName } from "../engine/profile.ts";
import type { Finding } from "../knowledge/answer.ts";
import { CODE_FAMILIES, type CodeFamily, MISFIRE_CODES } from "../knowledge/code.ts";
import type { Knowledge } from "../knowledge/knowledge.ts";
import type { FindingRow } from "../knowledge/schema.ts";
import { findingFor } from "../knowledge/suits.ts";
import type { Observation } from "../model/diagnosis-model.ts";

/** A question that is asked in every case drawn. */
export interface Question {
  readonly finding: string;
  /** Where the finding asks for one. */
  readonly cylinder?: CylinderName;
}

/** Something that can be answered, and what it says. */
export interface Outcome extends Observed {
  /** Words that it puts into the answer. */
  readonly words: readonly string[];
}

export interface Asked {
  readonly question: Question;
  readonly row: FindingRow;
  /** One outcome of each part happens; empty for counts, which are drawn from an urn. */
  readonly parts: readonly (readonly Outcome[])[];
}

/** Everything that a question can be answered with, once these findings are given. */
export function askedOf(
  engine: Engine,
  instances: readonly Instance[],
  question: Question,
  knowledge: Knowledge,
  given: readonly Finding[] = [],
): Asked {
  const known = knowledge.findings.get(question.finding);
  if (!known) throw new Error(`askedOf: there is no finding ${question.finding}`);
  const row = findingFor(engine.profile, known);
  const subjects = subjectsOf(engine, instances);
  const before = answeredOf(engine, given, knowledge);
  const said = (answer: Finding["answer"]): Observed => {
    const [answered] = answeredOf(engine, [{ ...question, answer }], knowledge);
    return observe(subjects, answered as Answered, before);
  };
  return { question, row, parts: partsOf(engine, row, said) };
}

/** The finding that the words of the parts make together. */
export function findingOf({ question, row }: Asked, words: readonly string[]): Finding {
  const isOne = row.kind === "choice";
  const isPresence = row.kind === "presence";
  const answer = isOne ? (words[0] as string) : isPresence ? (words.length ? "yes" : "no") : words;
  return { ...question, answer };
}

type Said = (answer: Finding["answer"]) => Observed;

function partsOf(engine: Engine, row: FindingRow, said: Said): Asked["parts"] {
  const options = Object.keys(row.options);
  switch (row.kind) {
    case "choice":
      return [options.map((option) => ({ words: [option], ...said(option) }))];
    case "presence":
      return signs(options, said("no"), said("yes"));
    case "several":
      return signs(options, said([]), said(options));
    case "codes":
      return [...families(engine, options, said), misfireCodes(engine, said)];
    case "counts":
      return [];
  }
}

/** Option by option: not there, or there. */
function signs(options: readonly string[], none: Observed, all: Observed): Asked["parts"] {
  return options.map((option, k) => [outcome([], none, k), outcome([option], all, k)]);
}

/** Family by family: no code, or one code (of each cylinder, where its codes name cylinders). */
function families(engine: Engine, options: readonly string[], said: Said): Asked["parts"] {
  const none = said([]);
  return options.map((option, k) => {
    const family = CODE_FAMILIES.find((candidate) => candidate.option === option);
    if (!family) throw new Error(`question: no codes belong to ${option}`);
    const stored = codesOf(engine, family).map((code) => outcome([code], said([code]), k));
    return [outcome([], none, k), ...stored];
  });
}

function outcome(words: readonly string[], { observations }: Observed, k: number): Outcome {
  return { words, observations: [observations[k] as Observation], misfireObservations: [] };
}

function codesOf(engine: Engine, family: CodeFamily): readonly string[] {
  const first = (range: string): string => range.split("-")[0] as string;
  const rule = family.cylinder?.[0];
  if (!rule) return [first(family.codes[0] as string)];
  return engine.names.map((name) => codeOf(rule.minus + rule.step * (Number(name) - 1)));
}

/** Every set of cylinders named, with and without the code for several. */
function misfireCodes(engine: Engine, said: Said): readonly Outcome[] {
  const sets = Array.from({ length: 2 ** engine.names.length }, (_, set) =>
    engine.names.filter((_name, c) => Math.floor(set / 2 ** c) % 2 === 1),
  );
  return sets.flatMap((named) => {
    const codes = named.map((name) => codeOf(MISFIRE_CODES.minus + Number(name)));
    return [codes, [MISFIRE_CODES.several, ...codes]].map((words) => ({
      words,
      observations: [],
      misfireObservations: said(words).misfireObservations,
    }));
  });
}

function codeOf(number: number): string {
  const code = normalCode(`P0${number}`);
  if (code === undefined)
    throw new Error(`question: codes count cylinders by number, not ${number}`);
  return code;
}
