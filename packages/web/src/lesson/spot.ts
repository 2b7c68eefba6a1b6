// Where can a part be broken, as the hand sees it? The places of the simulator, with a cable counted to the way
// to its plug.
import type { Engine } from "@half-order/core";
import {
  breakablePlaces,
  type Place,
  type PlaceKind,
  type SimulatedFaultId,
} from "@half-order/core/physics";

/** One way to fail, at the place where the simulator breaks it. */
export interface Choice {
  readonly fault: SimulatedFaultId;
  readonly place: Place;
}

/** What is tapped, and what can be broken there. */
export interface Spot {
  readonly id: string;
  readonly kind: PlaceKind;
  readonly cylinders: readonly number[];
  readonly choices: readonly Choice[];
}

/** From the coil outwards to the whole engine. */
const ORDER: readonly PlaceKind[] = [
  "coil",
  "leg",
  "cylinder",
  "neighbours",
  "connector",
  "bank",
  "set",
  "engine",
];

/** All spots of an engine. */
export function spotsOf(engine: Engine): readonly Spot[] {
  const all = breakablePlaces(engine);
  const leads = all.filter(({ place }) => place.kind === "lead");
  return all
    .filter(({ place }) => place.kind !== "lead")
    .map(({ place, faults }): Spot => {
      const lead = place.kind === "leg" && leads.find((each) => isSame(each.place, place));
      const own = faults.map((fault) => ({ fault, place }));
      const ofLead = lead ? lead.faults.map((fault) => ({ fault, place: lead.place })) : [];
      return {
        id: place.id,
        kind: place.kind,
        cylinders: place.cylinders,
        choices: [...own, ...ofLead],
      };
    })
    .sort((a, b) => ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind));
}

/** The spot at which a mark of the drawing lies; a cable lies on the way to its plug. */
export function spotAt(spots: readonly Spot[], mark: string): Spot | undefined {
  return spots.find(
    ({ id, choices }) => id === mark || choices.some(({ place }) => place.id === mark),
  );
}

/** Names of the cylinders of a place. */
export function namesOf(engine: Engine, cylinders: readonly number[]): readonly string[] {
  return cylinders.map((c) => String(engine.names[c] ?? c));
}

/** True where a coil fires two plugs at once. */
export function hasPairs({ ignition, groups }: Engine): boolean {
  return ignition !== "distributor" && groups.some((group) => group.length > 1);
}

function isSame(a: Place, b: Place): boolean {
  return a.cylinders.join() === b.cylinders.join();
}
