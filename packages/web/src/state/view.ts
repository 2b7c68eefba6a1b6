// What is shown of a ranking: which fault is looked at, what is pointed at, which firing order is drawn.
// None of it belongs to the case.
import type { CylinderName, Engine, RankedFault, Ranking } from "@half-order/core";
import { computed, effect, signal } from "@preact/signals";
import { BARE, type Look, placeId } from "../diagram/mark.tsx";
import { engines, findings, isClosed, repairs } from "./case.ts";
import { facts } from "./facts.ts";
import { nextFrame } from "./frame.ts";
import { type PartGroup, partGroups } from "./group.ts";
import { seemsMended } from "./mended.ts";
import { isOrderOf } from "./order.ts";
import { ranking } from "./thinking.ts";

/** Wide enough for picture, ranking and question side by side. */
const DESK = "(min-width: 56.25em)";
export const isDesk = signal(false);

/** Probabilities as numbers instead of words; set by tapping one. */
export const hasNumbers = signal(false);

/** `fault@place` that is looked at; the leader while nothing else is chosen. */
const chosen = signal<string | undefined>(undefined);
/** Place that the hand points at. */
export const pointed = signal<string | undefined>(undefined);
/** Which of the engines that it may be is to be drawn; `undefined` while nobody has said. */
export const drawnIndex = signal<number | undefined>(undefined);

export function keyOf({ fault, place }: { fault: string; place: string }): string {
  return `${fault}@${place}`;
}

/** The ranking part by part. */
export const groups = computed<readonly PartGroup[]>(() =>
  ranking.value ? partGroups(ranking.value) : [],
);

/** The likeliest fault of the likeliest part. */
export const leader = computed<RankedFault | undefined>(() => groups.value[0]?.faults[0]);

/** The likeliest part, once the answers single it out; of an engine that is mended nothing is likely. */
export const soFar = computed<PartGroup | undefined>(() => {
  const [first] = groups.value;
  const isTelling = first?.places.length === 1 && first.probability >= WORTH_NAMING;
  const isOver = isClosed.value || seemsMended(repairs.value);
  return findings.value.length > 0 && !isOver && isTelling ? first : undefined;
});
/** Below this the first of many is not likely, only first. */
const WORTH_NAMING = 0.1;

export const picked = computed<RankedFault | undefined>(
  () => ranking.value?.ranking.find((ranked) => keyOf(ranked) === chosen.value) ?? leader.value,
);

/** True once the user has picked a fault, as opposed to the leader standing in. */
export const isChosen = computed(() => picked.value !== undefined && chosen.value !== undefined);

export function pick(key: string | undefined): void {
  chosen.value = key;
}

/** Forgets everything that was pointed at; for another case. */
export function clearView(): void {
  chosen.value = undefined;
  pointed.value = undefined;
  drawnIndex.value = undefined;
}

/** The engine that is drawn: while nobody has said, the one with the order that the answers make likeliest. */
export const drawn = computed<Engine | undefined>(() => {
  const all = engines.value;
  const [first] = ranking.value?.orders ?? [];
  const likeliest = first && all.find((engine) => isOrderOf(engine, first));
  return all[drawnIndex.value ?? -1] ?? likeliest ?? all[0];
});

/**
 * Where a ranked fault shows on a drawing: first where its part is drawn, then its own place if that
 * is another. What fails inside a coil is drawn on the coil, whichever end it is, and what fails inside a
 * distributor on its hub; any other part that serves the whole engine is drawn where the fault sits.
 */
export function placesOf(
  { fault, place, cylinders }: RankedFault,
  engine: Engine,
): readonly string[] {
  const [shared] = engine.connectors;
  if (shared && engine.ignition === "distributor" && facts.value.ofHub.includes(fault)) {
    return [placeId(engine, "connector", shared.cylinders), place];
  }
  if (!facts.value.ofCoil.includes(fault)) return [place];
  const first = engine.names.indexOf(cylinders[0] ?? "");
  const group = engine.groups[engine.groupOf[first] ?? -1];
  const coil = group ? placeId(engine, "coil", group) : place;
  return coil === place ? [place] : [coil, place];
}

/** Cylinders that rather miss than not, likeliest first. */
export const missing = computed<readonly CylinderName[]>(() =>
  (ranking.value?.cylinders ?? [])
    .filter(({ misses }) => misses > 0.5)
    .sort((a, b) => b.misses - a.misses)
    .map(({ cylinder }) => cylinder),
);

/** The ranking of the drawings: it follows once the list is seen, for which somebody waits. */
export const drawnRanking = signal<Ranking | undefined>(undefined);
effect(() => {
  const now = ranking.value;
  const follow = (): void => {
    if (ranking.peek() === now) drawnRanking.value = now;
  };
  if (now) void nextFrame().then(follow);
  else follow();
});

/** What the drawings show now. */
export const look = computed<Look>(() => {
  const now = drawnRanking.value;
  const engine = drawn.value;
  if (!now || !engine) return BARE;
  return { places: chances(now, engine), misses: misses(now, engine), active: active.value };
});

/** By place: the chances of the faults drawn there, added up; nearly all of them exclude one another. */
function chances(now: Ranking, engine: Engine): ReadonlyMap<string, number> {
  const places = new Map<string, number>();
  for (const ranked of now.ranking) {
    const [place = ranked.place] = placesOf(ranked, engine);
    places.set(place, Math.min(1, (places.get(place) ?? 0) + ranked.probability));
  }
  return places;
}

function misses(now: Ranking, engine: Engine): readonly number[] {
  const byName = new Map(now.cylinders.map(({ cylinder, misses }) => [cylinder, misses]));
  return engine.names.map((name) => byName.get(name) ?? 0);
}

const active = computed<ReadonlySet<string>>(() => {
  if (pointed.value !== undefined) return new Set([pointed.value]);
  const [fault, engine] = [picked.value, drawn.value];
  return new Set(fault && engine && isChosen.value ? placesOf(fault, engine) : []);
});

/** Follows the width of the window from now on. */
export function followWidth(): void {
  const query = matchMedia(DESK);
  isDesk.value = query.matches;
  query.addEventListener("change", () => {
    // Asked once it has settled: who measures or prints the page makes it another size for a moment.
    void nextFrame().then(() => {
      isDesk.value = query.matches;
    });
  });
}
