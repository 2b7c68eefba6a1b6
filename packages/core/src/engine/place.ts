// Every place on an engine where a fault can sit.
import type { Engine } from "./engine.ts";
import type { CylinderName } from "./profile.ts";

/**
 * - `engine`: the whole engine, once
 * - `set`: a set of like parts that age together (all plugs, all leads), once
 * - `bank`, `coil` (one firing group), `connector`, `cylinder`
 * - `leg`: the path from one coil tower to one plug; `lead`: only legs that have a cable
 * - `neighbours`: two cylinders side by side
 */
export const PLACE_KINDS = [
  "engine",
  "set",
  "bank",
  "coil",
  "connector",
  "leg",
  "lead",
  "cylinder",
  "neighbours",
] as const;

export type PlaceKind = (typeof PLACE_KINDS)[number];

export interface Place {
  readonly kind: PlaceKind;
  /** Cylinder indices that the place belongs to. */
  readonly cylinders: readonly number[];
  /** Reads aloud and is stable for one engine: `coil 2+5`, `leg 3`, `engine`. */
  readonly id: string;
}

/** All places of one kind; the cylinders of a place ascend. */
export function places(engine: Engine, kind: PlaceKind): readonly Place[] {
  return cylinderSets(engine, kind).map((set) => {
    const cylinders = [...set].sort((a, b) => a - b);
    return { kind, cylinders, id: placeId(engine.names, kind, cylinders) };
  });
}

function cylinderSets(engine: Engine, kind: PlaceKind): readonly (readonly number[])[] {
  const all = engine.names.map((_, c) => c);
  switch (kind) {
    case "engine":
    case "set":
      return [all];
    case "bank":
      return engine.banks;
    case "coil":
      return engine.groups;
    case "connector":
      return engine.connectors.map((connector) => connector.cylinders);
    case "leg":
    case "cylinder":
      return all.map((c) => [c]);
    case "lead":
      return all.filter((c) => engine.hasLead[c]).map((c) => [c]);
    case "neighbours":
      return engine.neighbours;
  }
}

function placeId(
  names: readonly CylinderName[],
  kind: PlaceKind,
  cylinders: readonly number[],
): string {
  if (kind === "engine" || kind === "set") return kind;
  return `${kind} ${cylinders.map((c) => names[c]).join("+")}`;
}
