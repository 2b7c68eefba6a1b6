// Which cylinders is an answer about that names one of them?
import type { Engine } from "./engine.ts";
import { groupSize } from "./firing-group.ts";
import type { CylinderName, EngineProfile } from "./profile.ts";

/**
 * Cylinders, by index, that share the coil or the connector of the one named; itself alone where it is about a
 * cylinder, none where it is about the engine. Who names none means the first: see `needsNoCylinder`.
 */
export function servedBy(
  { names, groups, connectors }: Engine,
  scope: "engine" | "cylinder" | "coil" | "connector",
  cylinder: CylinderName | undefined,
): readonly number[] {
  if (scope === "engine") return [];
  const c =
    cylinder === undefined ? 0 : names.findIndex((name) => String(name) === String(cylinder));
  const fed = connectors.map(({ cylinders }) => cylinders);
  const sets = scope === "coil" ? groups : scope === "connector" ? fed : [];
  return sets.find((set) => set.includes(c)) ?? [c];
}

/** True of an answer about something that all cylinders share, such as a rail's one connector: none need be named. */
export function servesAll(
  engine: Engine,
  scope: Parameters<typeof servedBy>[1],
  cylinder: CylinderName | undefined,
): boolean {
  return servedBy(engine, scope, cylinder).length === engine.names.length;
}

/** True where one coil or one connector serves every cylinder of such an engine: an answer need name none. */
export function needsNoCylinder(
  { ignition, cylinders, connectors }: EngineProfile,
  scope: Parameters<typeof servedBy>[1],
): boolean {
  if (scope === "coil") return groupSize(ignition, cylinders) === cylinders;
  if (scope !== "connector") return scope === "engine";
  return connectors ? connectors.length === 1 : !hasConnectorEach(ignition);
}

/** True for the kinds whose coils have a connector each, unless the profile says otherwise. */
export function hasConnectorEach(ignition: EngineProfile["ignition"]): boolean {
  return ignition === "hybrid" || ignition === "coil-per-plug";
}
