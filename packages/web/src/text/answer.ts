// Engines, cases, orders and parts in words.
import { type EngineProfile, profileById } from "@half-order/core";
import type { PartGroup } from "../state/group.ts";
import type { CaseDoc } from "../state/store.ts";
import { CASE_NAME, either, list, PICK, RANKING } from "./en.ts";

export function sayOrder(order: readonly (string | number)[]): string {
  return order.join("-");
}

/** Groups of two or more as a phrase: "1 and 4, 2 and 3". */
export function sayGroups(groups: readonly (readonly (string | number)[])[]): string {
  return groups
    .filter((group) => group.length > 1)
    .map(list)
    .join(", ");
}

/** A row of the ranking: its fault, or the part where that may have failed in several ways. */
export function sayGroup(group: PartGroup): string {
  const [first, second] = group.faults;
  return first && !second ? first.name : sayPart(group);
}

/** "Spark plug of 2", "Spark plug of 2 or 5", "Coil of 2 and 5", "Coil of 1+4 or 2+5", "Fuel pump", "Every spark plug alike". */
export function sayPart({ part, places, faults }: PartGroup): string {
  const name = part.charAt(0).toUpperCase() + part.slice(1);
  const [first = []] = places;
  if (faults[0]?.place === SET) return RANKING.allAlike(part);
  // A part that serves the whole engine is named without its cylinders.
  if (faults[0]?.component.endsWith(" engine") || first.length === 0) return name;
  const names = places.map((place) => place.join("+")).sort(inOrder);
  return RANKING.partOf(name, places.length > 1 ? either(names) : list(first));
}

/** Where a fault sits that all parts of a kind have at once. */
const SET = "set";

/** 2 before 10, "L2" before "R1". */
function inOrder(a: string, b: string): number {
  // A comparison by a language would be made ready anew each time, which takes longer than all the rest.
  const key = (name: string): string => name.replace(/\d+/g, (digits) => digits.padStart(3, "0"));
  return key(a) < key(b) ? -1 : 1;
}

/** An engine in a line: "V6, 1-2-3-4-5-6, coil rail". */
export function sayEngine(profile: EngineProfile): string {
  return [
    profile.layout
      ? PICK.layoutNames[profile.layout](profile.cylinders)
      : CASE_NAME.unnamed(profile.cylinders),
    ...(profile.firingOrder ? [sayOrder(profile.firingOrder)] : []),
    PICK.kindNames[profile.ignition],
  ].join(", ");
}

/** A case in a line: its title, else the name of its engine. */
export function sayCase({ title, engine }: CaseDoc): string {
  return title ?? sayProfile(engine);
}

/** The name of the engine of a case, or what is known of it. */
export function sayProfile(engine: string | EngineProfile): string {
  const profile = typeof engine === "string" ? profileById(engine) : engine;
  return profile?.name ?? (profile ? sayEngine(profile) : String(engine));
}
