// Which fault is hidden, what was done to find it, and what came of it? All of it stands in the address and
// belongs to no case.
import { allProfiles, type EngineProfile, profileById, type RepairDone } from "@half-order/core";
import type { Comparison, Practice, PracticeAct } from "@half-order/core/instrument";
import { computed, signal } from "@preact/signals";
import { arrivals, noteAddress } from "../state/route.ts";
import { Thinker } from "../state/thinker.ts";
import { readAddress, writeSteps } from "./address.ts";
import type { PracticeAnswer, PracticeQuestion } from "./thread-work.ts";

const shelf = allProfiles();

export const engineId = signal(shelf[0]?.id ?? "");
const seed = signal(0);
const acts = signal<readonly PracticeAct[]>([]);
/** The repair that ended the search. */
export const wanted = signal<RepairDone | undefined>(undefined);

/** The last answer; it stays until the next one has come, but not for another fault. */
export const practice = signal<Practice | undefined>(undefined);
export const comparison = signal<Comparison | undefined>(undefined);
export const isWorking = signal(false);
/** What is wrong with the address, or what broke, in its own words. */
export const trouble = signal<readonly string[]>([]);
/** What of the address was not understood, until another fault is hidden. */
export const misread = signal<readonly string[]>([]);
/** True once somebody has done something here: what comes of it then takes the focus. */
export const hasActed = signal(false);

export const engineProfile = computed<EngineProfile | undefined>(() => profileById(engineId.value));

/**
 * Starts from the address, e.g. `practice/demo.tern/7/check.counts/repair.rail`; without a seed from a new one. Each
 * step has an address of its own, so the device's own back button takes the last one back.
 */
export function beginPractice([, ...parts]: readonly string[]): void {
  const opened = readAddress(parts, (id) => profileById(id) !== undefined);
  if (opened.engine !== undefined) engineId.value = opened.engine;
  // Who comes back to an earlier step begins at the heading, as on any other screen.
  if (hasActed.peek()) arrivals.value += 1;
  hasActed.value = false;
  start(opened.seed ?? newSeed(), opened.steps.acts, opened.steps.wanted);
  work(false);
  misread.value = opened.misread;
}

/** Another fault; on the same engine unless another is picked, and who picks goes on picking. */
export function hideAnother(picked?: string): void {
  if (picked !== undefined) engineId.value = picked;
  hasActed.value = picked === undefined;
  start(newSeed(), [], undefined);
  work(true);
}

function start(of: number, done: readonly PracticeAct[], mended: RepairDone | undefined): void {
  seed.value = of;
  acts.value = done;
  wanted.value = mended;
  practice.value = undefined;
  comparison.value = undefined;
  misread.value = [];
}

/** One more step; while the last one is worked out nothing is taken. */
export function act(next: PracticeAct): void {
  if (isWorking.peek()) return;
  hasActed.value = true;
  acts.value = [...acts.peek(), next];
  work(true);
}

/** Ends the search. */
export function mend(repair: RepairDone): void {
  if (isWorking.peek()) return;
  hasActed.value = true;
  wanted.value = repair;
  work(true);
}

const SEEDS = 1e6;

function newSeed(): number {
  return Math.floor(Math.random() * SEEDS);
}

let thinker: Thinker<PracticeQuestion, PracticeAnswer> | undefined;

/** `isStep`: something was done, which can be gone back on. */
function work(isStep: boolean): void {
  const profile = engineProfile.peek();
  if (!profile) return;
  const [done, mended] = [acts.peek(), wanted.peek()];
  const steps = { acts: done, ...(mended ? { wanted: mended } : {}) };
  const parts = [engineId.peek(), String(seed.peek()), ...writeSteps(steps)];
  noteAddress(["practice", ...parts], isStep);
  isWorking.value = true;
  trouble.value = [];
  ask({ profile, seed: seed.peek(), ...steps }).then(take, (error: unknown) => {
    isWorking.value = false;
    trouble.value = [error instanceof Error ? error.message : String(error)];
  });
}

function take(answer: PracticeAnswer): void {
  isWorking.value = false;
  practice.value = answer.practice;
  comparison.value = answer.comparison;
  trouble.value = (answer.problems ?? []).map(({ message }) => message);
}

async function ask(question: PracticeQuestion): Promise<PracticeAnswer> {
  const { PRACTICE_SCRIPT } = await import("../thread-practice.ts");
  thinker ??= new Thinker(PRACTICE_SCRIPT);
  return await thinker.ask(question);
}
