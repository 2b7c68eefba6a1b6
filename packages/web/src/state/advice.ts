// What pays next on the open case, and how is it mended? The thread says it; nothing is asked before somebody
// looks.
import type { Next } from "@half-order/core";
import { computed, effect, signal } from "@preact/signals";
import type { Advice, AdviceQuestion, Wanted } from "./advising.ts";
import { atHand, caseId, findings, openCase, profile, repairs } from "./case.ts";
import { Thinker } from "./thinker.ts";
import { isWeighing, thread } from "./thinking.ts";
import { units } from "./unit.ts";
import { offNow, work } from "./work.ts";

/** The last plan; it stays while the next one is worked out, but not for another case. */
export const plan = signal<Next | undefined>(undefined);
export const isPlanning = signal(false);
/** What broke, in its own words. */
export const adviceTrouble = signal<string | undefined>(undefined);

/** Steps put off, see `putOffKey`; only until the page is closed or another case is opened. */
export const putOff = signal<ReadonlySet<string>>(new Set());

/** First plan, so that something soon stands there; then a second one, where that was cheap. */
const SOON_MS = 60;
const LONGER_MS = 400;
const CHEAP_MS = 500;

let adviser: Thinker | undefined;
/** One question after the other: each is short, and a thread that is ended must fetch its tables again. */
let lane: Promise<unknown> = Promise.resolve();
/** By who asks, what was asked last: a part of a screen waits for no answer but the one to that. */
const asked = new WeakMap<object, MoreQuestion>();
const planner = {};
type MoreQuestion = Exclude<AdviceQuestion, { readonly kind: "drive" }>;

/** Asks of the open case; `undefined` when the same asker asked anew meanwhile, or there is no thread. */
function ask(
  asker: object,
  question: MoreQuestion,
  done = repairs.peek(),
): Promise<Advice | undefined> {
  asked.set(asker, question);
  const isLast = (): boolean => asked.get(asker) === question;
  const answer = lane.then(async () => {
    const [known, script] = [profile.peek(), thread.peek()];
    if (!known || script === undefined || !isLast()) return undefined;
    adviser ??= new Thinker(script);
    const about = { profile: known, findings: findings.peek(), repairs: done };
    const { advice } = await adviser.ask({ ...about, advice: question });
    return isLast() ? advice : undefined;
  });
  // Who asked hears of what broke; the next question is asked all the same.
  lane = answer.then(
    () => undefined,
    () => undefined,
  );
  return answer;
}

/** Another case: nothing of the one before holds. */
function forgetOther(id: string | undefined): void {
  if (id === plannedCase) return;
  plannedCase = id;
  plan.value = undefined;
  planned = [];
  putOff.value = new Set();
  adviceTrouble.value = undefined;
}

let plannedCase: string | undefined;
const isClosed = computed(() => openCase.value?.doc.closed !== undefined);
/** What `plan` was made of, once it is as good as it gets. */
let planned: readonly unknown[] = [];

/** Keeps `plan` true to the open case until the function that comes back is called. */
export function followPlan(): () => void {
  return effect(() => {
    const id = caseId.value;
    forgetOther(id);
    const [hand, { open }] = [atHand.value, work.value];
    const off = putOff.value;
    const of = [id, profile.value, findings.value, repairs.value, hand, open, off];
    if (!profile.value || isClosed.value || thread.value === undefined) return;
    if (of.every((part, i) => part === planned[i])) return;
    isPlanning.value = true;
    const look = async (patienceMs: number): Promise<number> => {
      await weighed();
      const began = performance.now();
      const advice = await ask(planner, {
        kind: "next",
        atHand: hand ?? {},
        open,
        putOff: [...off],
        patienceMs,
      });
      if (!advice || caseId.peek() !== id) return Number.NaN;
      plan.value = advice.next;
      adviceTrouble.value = undefined;
      isPlanning.value = false;
      return performance.now() - began;
    };
    look(SOON_MS)
      .then(async (firstMs) => {
        const lastMs = firstMs < CHEAP_MS ? await look(LONGER_MS) : firstMs;
        if (Number.isFinite(lastMs)) planned = of;
      })
      .catch(report);
  });
}

/** Settles once the ranking has come: a phone has few cores, and its owner waits for that first. */
async function weighed(): Promise<void> {
  // By then everything that the same change calls for has begun.
  await Promise.resolve();
  let stop = (): void => undefined;
  await new Promise<void>((settle) => {
    stop = isWeighing.subscribe((is) => {
      if (!is) settle();
    });
  });
  stop();
}

/** `key`: see `putOffKey`. */
export function putOffStep(key: string): void {
  putOff.value = new Set([...putOff.value, key]);
}

/**
 * Tells all about a repair, now and whenever answers or units change, until the function that comes back is
 * called. `before`: so many of the repairs that were made count; all unless given.
 */
export function followMending(
  wanted: Wanted,
  before: number | undefined,
  onAdvice: (advice: Advice) => void,
): () => void {
  const asker = {};
  return effect(() => {
    const done = repairs.peek().slice(0, before);
    const { gap, torque } = units.value;
    const open = offNow.value;
    if (!profile.value || !findings.value || thread.value === undefined) return;
    const question = { wanted, atHand: atHand.value ?? {}, open, units: { gap, torque } };
    ask(asker, { kind: "mend", ...question }, done)
      .then((advice) => advice && onAdvice(advice))
      .catch(report);
  });
}

/** Tells the names of the repairs that were made, as `followMending` does. */
export function followNames(onNames: (names: readonly string[]) => void): () => void {
  const asker = {};
  return effect(() => {
    if (!profile.value || repairs.value.length === 0 || thread.value === undefined) return;
    ask(asker, { kind: "names" })
      .then((advice) => advice?.names && onNames(advice.names))
      .catch(report);
  });
}

/** Says on the page what broke. */
export function report(error: unknown): void {
  isPlanning.value = false;
  adviceTrouble.value = error instanceof Error ? error.message : String(error);
}
