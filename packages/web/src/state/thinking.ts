// What the page knows of the open case's ranking at this moment, and whether it is still being weighed.
import type { Answer, CylinderName, FaultAt, Ledger, Problem, Ranking } from "@half-order/core";
import { batch, effect, signal } from "@preact/signals";
import { findings, profile, repairs } from "./case.ts";
import { facts } from "./facts.ts";
import { FINE, FULL, type Look, rankingKey, SOON } from "./look.ts";
import { type Facts, type Question, Thinker, type Thought } from "./thinker.ts";

/** The last ranking; it stays while the next one is worked out. */
export const ranking = signal<Ranking | undefined>(undefined);
export const problems = signal<readonly Problem[]>([]);
export const isWeighing = signal(false);
/** What broke, in its own words. */
export const breakdown = signal<string | undefined>(undefined);

/** The fault whose ledger is wanted, and the ledger when it has come. */
export const wanted = signal<FaultAt | undefined>(undefined);
export const ledger = signal<Ledger | undefined>(undefined);

/** The script that answers in a thread, once there is one; for who starts a thread of its own. */
export const thread = signal<string | undefined>(undefined);

const CHEAP_MS = 250;
/** Who answers faster than this does not wait for a second look. */
const REST_MS = 1200;

/** Weighs the open case from now on, whenever it changes; `script` is the address of this page's script. */
export function startThinking(script: string): void {
  thread.value = script;
  /** By `rankingKey`: what the thread has thought of the answers to the question that is being read. */
  const ahead = new Map<string, Thought>();
  const ranker = new Thinker(script, (thought) => ahead.set(thought.ahead ?? "", thought));
  const clerk = new Thinker(script);
  whatIf = new Thinker(script);
  // Runs the thread in: the tables come, and the first weighing, which is the slowest, is over.
  if (!profile.peek()) ranker.ask(ANY).then(({ facts: told }) => learn(told), report);
  let later: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    const known = profile.value;
    const given = { findings: findings.value, repairs: repairs.value };
    clearTimeout(later);
    if (!known) {
      ranking.value = undefined;
      return;
    }
    const show = (thought: Thought): void => {
      learn(thought.facts);
      // The case may have been closed meanwhile.
      if (profile.peek() !== known) return;
      batch(() => {
        ranking.value = thought.ranking;
        problems.value = thought.problems ?? [];
        isWeighing.value = false;
      });
    };
    const look = (how: Look): Promise<void> =>
      ranker.ask({ profile: known, ...given, ...how }).then(show);
    const lookAgain = (how: Look): void => {
      later = setTimeout(() => look(how).catch(report), REST_MS);
    };
    const soon = { profile: known, ...given, ...SOON };
    const thought = ahead.get(rankingKey(soon));
    ahead.clear();
    if (thought) {
      show(thought);
      ranker.tell({ ...soon, isKnown: true });
      lookAgain(FINE);
      return;
    }
    isWeighing.value = true;
    const began = performance.now();
    look(SOON)
      .then(() => lookAgain(performance.now() - began < CHEAP_MS ? FINE : FULL))
      .catch(report);
  });
  effect(() => {
    const known = profile.value;
    const of = wanted.value;
    const given = { findings: findings.value, repairs: repairs.value };
    ledger.value = undefined;
    if (!known || !of || !ranking.peek() || isWeighing.value) return;
    clerk
      .ask({ profile: known, ...given, of })
      .then((thought) => {
        ledger.value = thought.ledger;
      })
      .catch(report);
  });
}

/** Any engine, to run a thread in on. */
const ANY: Question = {
  profile: { cylinders: 4, ignition: "rail", firingOrder: [1, 3, 4, 2] },
  findings: [],
  repairs: [],
  ...SOON,
};

function learn(told: Facts | undefined): void {
  if (told) facts.value = told;
}

let whatIf: Thinker | undefined;

/** The ranking if this were answered too; `undefined` when it cannot be had. */
export async function rankingIf(
  finding: string,
  answer: Answer,
  cylinder?: CylinderName,
): Promise<Ranking | undefined> {
  const known = profile.value;
  if (!known || !whatIf) return undefined;
  const also = { finding, answer, ...(cylinder === undefined ? {} : { cylinder }) };
  const thought = await whatIf.ask({
    profile: known,
    findings: [...findings.value, also],
    repairs: repairs.value,
    ...SOON,
  });
  return thought.ranking;
}

function report(error: unknown): void {
  isWeighing.value = false;
  breakdown.value = error instanceof Error ? error.message : String(error);
}
