// Hazards, said where the hand is about to go. They defer to the vehicle maker's service manual,
// local rules and licensed technicians.
import type { AtHand } from "./answer.ts";
import type { CautionRow } from "./schema.ts";

export const CAUTIONS = [
  {
    id: "blinking-lamp",
    say: "A blinking lamp means that the catalyst is being ruined and may start a fire. While it blinks: ease off, stop where it is safe, and do not drive on.",
    unless: { finding: "lamp", is: ["off"] },
  },
  {
    id: "stray-voltage",
    say: "Ignition voltage is escaping into the wiring. Stop: driving on can destroy the electronics.",
  },
  {
    id: "high-voltage",
    say: "Ignition voltage can kill. Engine off and key out before touching coils, cables or boots. With a pacemaker or other implant keep away from a running engine.",
  },
  {
    id: "open-spark",
    say: "Never let a coil fire into the open, and never near petrol vapour: ground every plug and cut the fuel first.",
  },
  {
    id: "moving-parts",
    say: "Belts and fans catch hair, sleeves and fingers; a fan can start by itself.",
  },
  {
    id: "hot-parts",
    say: "Exhaust, plugs and coolant burn. Let the engine cool, half an hour or more; never open a hot radiator.",
  },
  {
    id: "fuel",
    say: "Petrol and its vapour catch fire. No flame, no smoking, extinguisher ready.",
  },
  {
    id: "fuel-pressure",
    say: "Fuel lines are under pressure. Release it as the manual says; wear glasses.",
  },
  {
    id: "exhaust-gas",
    say: "Exhaust gas kills indoors. Run the engine only in the open; a misfire makes it worse.",
  },
  {
    id: "short-run",
    say: "The engine should not run now, for the sake of the catalyst. Start it for this check alone, in the open, not over dry grass, for a minute at most. Not at all when it smells of petrol, smokes or knocks.",
  },
  {
    id: "traffic",
    say: "Away from traffic first: hazard lamps, triangle, behind the barrier.",
    where: ["roadside"],
    everyStep: true,
  },
  {
    id: "battery",
    say: "No short circuits at the battery; disconnect its negative pole before wiring work.",
  },
  {
    id: "rolling",
    say: "Handbrake on, level ground, wheels blocked.",
  },
  {
    id: "lifting",
    say: "Never under a car that stands on a jack: use stands on firm ground.",
  },
  {
    id: "glowing-exhaust",
    say: "A glowing catalyst starts fires. Stop away from dry grass, engine off, keep clear.",
  },
  {
    id: "no-cranking",
    say: "Do not crank while fuel or coolant may stand in a cylinder: it can break the engine.",
  },
] as const satisfies readonly CautionRow[];

/** Those of the cautions that are about this place; all of them while it is not known. */
export function cautionsHere(
  ids: readonly string[],
  where: AtHand["where"] | undefined,
): readonly string[] {
  const elsewhere = (row: CautionRow): boolean =>
    where !== undefined && row.where !== undefined && !row.where.includes(where);
  return ids.filter((id) => !CAUTIONS.some((row) => row.id === id && elsewhere(row)));
}
