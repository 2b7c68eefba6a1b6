// What is broken in the lesson, and what comes of it. The choice stands in the address, so that a teacher can
// hand it on and a reload loses nothing; it belongs to no case.
import { allProfiles, type Engine, profileById, resolveEngine } from "@half-order/core";
import type { SimulatedFaultId, Watched, WatchedRegime } from "@half-order/core/physics";
import { computed, signal } from "@preact/signals";
import { at } from "../state/route.ts";
import { Thinker } from "../state/thinker.ts";
import { drawn } from "../state/view.ts";
import { type Choice, type Spot, spotAt, spotsOf } from "./spot.ts";
import type { LessonAnswer, LessonQuestion } from "./thread-lesson.ts";

/** Stands in the address for the engine of the open case. */
export const OF_CASE = "case";

/** An engine of the shelf, or that of the open case. */
export const engineId = signal("");
const spotId = signal("");
const faultId = signal<SimulatedFaultId | undefined>(undefined);
const seed = signal(1);
/** The way of driving that is looked at; the worst unless chosen. */
export const chosenRegime = signal<string | undefined>(undefined);
/** Crank angle that is looked at, degrees. */
export const angleDeg = signal(0);

export const isWorking = signal(false);
export const broke = signal<string | undefined>(undefined);
/** `undefined` until it has come; `null` when no such break can be watched. */
export const watched = signal<Watched | null | undefined>(undefined);

const shelf = allProfiles();

/** The engine of the lesson. Without a case its place is taken by the first of the shelf. */
export const lessonEngine = computed<Engine | undefined>(() => {
  if (engineId.value === OF_CASE && drawn.value) return drawn.value;
  const profile = profileById(engineId.value) ?? shelf[0];
  return profile && resolveEngine(profile);
});

export const spots = computed<readonly Spot[]>(() =>
  lessonEngine.value ? spotsOf(lessonEngine.value) : [],
);

export const spot = computed<Spot | undefined>(
  () => spotAt(spots.value, spotId.value) ?? spots.value[0],
);

export const choice = computed<Choice | undefined>(() => {
  const { choices = [] } = spot.value ?? {};
  return choices.find(({ fault }) => fault === faultId.value) ?? choices[0];
});

/** The way of driving that dial, shake and circuit show. */
export const regime = computed<WatchedRegime | undefined>(() => {
  const now = watched.value;
  const wanted = chosenRegime.value ?? now?.worst;
  return now?.regimes.find((each) => each.regime === wanted) ?? now?.regimes[0];
});

/** Starts from the address, e.g. `lesson/demo.tern/coil.weak/coil 2+5`; what is left out stays as it was. */
export function beginLesson([, id, fault, place]: readonly string[]): void {
  const known = [id, engineId.peek(), OF_CASE, shelf[0]?.id].find((each) => isThere(each ?? ""));
  engineId.value = known ?? "";
  if (fault !== undefined) faultId.value = fault as SimulatedFaultId;
  if (place !== undefined) spotId.value = place;
  breakIt();
}

function isThere(id: string): boolean {
  return id === OF_CASE ? drawn.peek() !== undefined : profileById(id) !== undefined;
}

/** Another engine; place and fault stay where it has them. */
export function takeEngine(id: string): void {
  engineId.value = id;
  breakIt();
}

/** Another place, by the id of its mark; nothing happens where nothing can be broken. */
export function takeSpot(mark: string): void {
  const found = spotAt(spots.peek(), mark);
  if (!found || found.id === spot.peek()?.id) return;
  spotId.value = found.id;
  breakIt();
}

/** Another way to fail. */
export function takeFault(fault: SimulatedFaultId): void {
  faultId.value = fault;
  breakIt();
}

/** The same break in another size. */
export function breakAgain(): void {
  seed.value += 1;
  breakIt();
}

let thinker: Thinker<LessonQuestion, LessonAnswer> | undefined;

function breakIt(): void {
  const [engine, taken] = [lessonEngine.peek(), choice.peek()];
  if (!engine || !taken) return;
  history.replaceState(null, "", at("lesson", engineId.peek(), taken.fault, taken.place.id));
  chosenRegime.value = undefined;
  angleDeg.value = 0;
  isWorking.value = true;
  broke.value = undefined;
  ask({ profile: engine.profile, fault: taken, seed: seed.peek() }).then(
    ({ watched: seen }) => {
      watched.value = seen ?? null;
      isWorking.value = false;
    },
    (error: unknown) => {
      broke.value = error instanceof Error ? error.message : String(error);
      isWorking.value = false;
    },
  );
}

async function ask(question: LessonQuestion): Promise<LessonAnswer> {
  const { LESSON_SCRIPT } = await import("./thread-lesson.ts");
  thinker ??= new Thinker(LESSON_SCRIPT);
  return await thinker.ask(question);
}
