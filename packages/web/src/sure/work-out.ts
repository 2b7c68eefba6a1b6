// How firm is the first place of the open case? Worked out in a thread, part by part, so that something soon
// stands there; given up as soon as the case changes or nobody looks any more.
import type {
  CylinderName,
  Finding,
  Ledger,
  NamedFlip,
  OrderCandidate,
  Problem,
  RankedFault,
  Ranking,
  Sensitivity,
  Stability,
} from "@half-order/core";
import { effect, signal } from "@preact/signals";
import { findings, profile, repairs } from "../state/case.ts";
import { type Question, Thinker, type Thought } from "../state/thinker.ts";
import { thread } from "../state/thinking.ts";
import { keyOf } from "../state/view.ts";

/** What a question and its answer have to do with the first place. */
export interface Carrying {
  readonly finding: string;
  readonly cylinder?: CylinderName;
  /** Decibans that the first fault would lose without it; missing where it says nothing of that. */
  readonly carriesDb?: number;
  /** The least that a number of it must be wrong for another part to come first; none: no value does. */
  readonly flip?: NamedFlip;
  /** `fault@place` that comes first without this answer, where that is of another part. */
  readonly without?: string;
}

/** All that is known so far; the parts come in this order. */
export interface Sureness {
  /** How much of it is worked out, 0..1. */
  readonly done: number;
  /** The ranking that it is about. */
  readonly ranking?: Ranking;
  /** The two parts that lead, each by its likeliest fault, as `fault@place`; of the likeliest engine where it is not wholly known. */
  readonly leading?: readonly string[];
  /** Of an engine that is not wholly known: the firing order that is taken. */
  readonly order?: OrderCandidate;
  /** How common a fault is: where the first place changes hands, the nearest first. */
  readonly priors?: readonly NamedFlip[];
  /** The weakest link first. */
  readonly answers?: readonly Carrying[];
  readonly stability?: readonly Stability[];
  /** What is wrong with the case; then there is nothing else. */
  readonly problems?: readonly Problem[];
  /** What broke, in its own words. */
  readonly broke?: string;
}

export const sureness = signal<Sureness>({ done: 0 });

/** As often as the command shakes them unless told otherwise. */
const SHAKES = 100;
/** Probability that a ranking without one of the answers may leave unsearched. */
const ROUGH = 1e-3;

/** Keeps `sureness` true to the open case until the function that comes back is called. */
export function followSureness(): () => void {
  return effect(() => {
    const [known, script] = [profile.value, thread.value];
    const about = { findings: findings.value, repairs: repairs.value };
    sureness.value = { done: 0 };
    if (!known || script === undefined) return undefined;
    const thinker = new Thinker(script);
    let isWanted = true;
    const ask = (question: Question): Promise<Thought> =>
      isWanted ? thinker.ask(question) : new Promise(() => undefined);
    const tell = (now: Sureness): void => {
      if (isWanted) sureness.value = now;
    };
    workOut({ profile: known, ...about }, ask, tell).catch((error: unknown) =>
      tell({ done: 1, broke: error instanceof Error ? error.message : String(error) }),
    );
    return () => {
      isWanted = false;
      thinker.stop();
    };
  });
}

type About = Pick<Question, "profile" | "findings" | "repairs">;

/** Works all of it out by asking one question after the other; `tell` hears of each part. */
export async function workOut(
  about: About,
  ask: (question: Question) => Promise<Thought>,
  tell: (now: Sureness) => void,
): Promise<void> {
  const asked = questionsOf(about.findings);
  const steps = asked.length + 4;
  let now: Sureness = { done: 0 };
  const add = (part: Partial<Sureness>, step: number): void => {
    now = { ...now, ...part, done: step / steps };
    tell(now);
  };
  const { ranking, problems } = await ask({ ...about, tolerance: ROUGH });
  if (!ranking) return tell({ done: 1, problems: problems ?? [] });
  add({ ranking, ...orderOf(ranking) }, 1);
  const first = await ask({ ...about, advice: { kind: "sensitivity", shakes: 0 } });
  const told = first.advice?.sensitivity;
  if (!told) return tell({ done: 1, problems: first.advice?.problems ?? [] });
  const why = await ask({ ...about, of: faultOf(told.leading[0] ?? "") });
  const answers = asked.map((given) => carryingOf(given, told, why.ledger));
  const priors = told.flips.filter((flip) => flip.of === "prior");
  add({ leading: told.leading, priors, answers: weakestFirst(answers) }, 3);
  for (const [i, answer] of answers.entries()) {
    const left = about.findings.filter((given) => !isSame(given, answer));
    const other = (await ask({ ...about, findings: left, tolerance: ROUGH })).ranking;
    const [before, after] = [firstOf(ranking), other && firstOf(other)];
    if (after && after.component !== before?.component)
      answers[i] = { ...answer, without: keyOf(after) };
    add({ answers: weakestFirst(answers) }, i + 4);
  }
  const shaken = await ask({ ...about, advice: { kind: "sensitivity", shakes: SHAKES } });
  add({ stability: shaken.advice?.sensitivity?.stability ?? [] }, steps);
}

type Asked = Pick<Carrying, "finding" | "cylinder">;

function carryingOf(asked: Asked, { flips }: Sensitivity, ledger: Ledger | undefined): Carrying {
  const line = ledger?.lines.find((each) => isSame(each, asked));
  const flip = flips.find((each) => each.of === "answer" && isSame(each, asked));
  return { ...asked, ...(line ? { carriesDb: line.withoutDb } : {}), ...(flip ? { flip } : {}) };
}

/** What was asked, each question and cylinder once. */
function questionsOf(given: readonly Finding[]): readonly Asked[] {
  return given
    .filter((own, i) => given.findIndex((other) => isSame(own, other)) === i)
    .map(({ finding, cylinder }) => ({ finding, ...(cylinder === undefined ? {} : { cylinder }) }));
}

function isSame(a: Partial<Asked>, b: Asked): boolean {
  return a.finding === b.finding && a.cylinder === b.cylinder;
}

/** The nearest to a change of hands first, then the heaviest. */
function weakestFirst(answers: readonly Carrying[]): readonly Carrying[] {
  const near = ({ flip }: Carrying): number => Math.abs(flip?.moveDb ?? Number.MAX_VALUE);
  const weight = ({ carriesDb = 0 }: Carrying): number => Math.abs(carriesDb);
  return [...answers].sort((a, b) => near(a) - near(b) || weight(b) - weight(a));
}

function orderOf({ orders = [] }: Ranking): Pick<Sureness, "order"> {
  const [order] = [...orders].sort((a, b) => b.probability - a.probability);
  return order ? { order } : {};
}

/** The likeliest fault of the likeliest part. */
export function firstOf({ components: [first], ranking }: Ranking): RankedFault | undefined {
  return ranking.find(({ component }) => component === first?.component);
}

function faultOf(key: string): { readonly fault: string; readonly place: string } {
  const [fault = "", ...place] = key.split("@");
  return { fault, place: place.join("@") };
}
