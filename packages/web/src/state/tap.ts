// A tap on the picture: which faults sit where the finger came down?
import type { Engine, RankedFault } from "@half-order/core";
import { computed, signal } from "@preact/signals";
import { placeId, placeKind } from "../diagram/mark.tsx";
import { ranking } from "./thinking.ts";
import { drawn, keyOf, pick, picked, placesOf } from "./view.ts";

const tapped = signal<readonly string[]>([]);

/** Parts told of one mark, and how unlikely the last of them may be. */
const MOST_TOLD = 5;
const WORTH_TELLING = 0.002;

/** Picks the likeliest fault of what was tapped; `under`: the places under the finger, the topmost first. */
export function tapAt(under: readonly string[]): void {
  const engine = drawn.value;
  if (!engine || under.length === 0) return;
  tapped.value = meantBy(under, engine);
  const [first] = faultsThere.value;
  if (first) pick(keyOf(first));
}

/**
 * The places that a tap means. A disc stands for all that its cylinder has of its own; where several coils cross,
 * any of them may be meant, or the connector that feeds them; else it is the mark on top.
 */
export function meantBy(under: readonly string[], engine: Engine): readonly string[] {
  const top = under[0] ?? "";
  if (placeKind(top) === "cylinder") {
    const c = engine.names.findIndex((_, i) => placeId(engine, "cylinder", [i]) === top);
    return [top, placeId(engine, "leg", [c]), placeId(engine, "lead", [c])];
  }
  const coils = under.filter((place) => placeKind(place) === "coil");
  if (placeKind(top) !== "coil" || coils.length < 2) return [top];
  return [...coils, ...engine.connectors.map((it) => placeId(engine, "connector", it.cylinders))];
}

/** The likeliest fault of each part there, likeliest first; the first of them always. */
const faultsThere = computed<readonly RankedFault[]>(() => {
  const engine = drawn.value;
  if (!engine || tapped.value.length === 0) return [];
  const told = new Set<string>();
  return (ranking.value?.ranking ?? [])
    .filter((ranked) => {
      // Where its part is drawn: what leaks inside a coil belongs to the coil, not to the cylinder it leaks towards.
      const [drawnAt = ranked.place] = placesOf(ranked, engine);
      const isThere = tapped.value.includes(drawnAt);
      const isWorth = told.size === 0 || ranked.probability >= WORTH_TELLING;
      return isThere && isWorth && !told.has(ranked.component) && told.add(ranked.component);
    })
    .slice(0, MOST_TOLD);
});

/** What was tapped, as long as one of it is looked at. */
export const atTapped = computed<readonly RankedFault[]>(() => {
  const now = picked.value;
  const isLookedAt = now && faultsThere.value.some(({ component }) => component === now.component);
  return isLookedAt ? faultsThere.value : [];
});
