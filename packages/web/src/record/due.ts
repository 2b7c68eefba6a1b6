// When the next plugs are due, in a line.
import type { NextService } from "@half-order/core";
import { sayAbout } from "../state/unit.ts";
import { NEXT } from "../text/en-record.ts";
import { sayDay } from "./day.ts";

/** The odometer of it; `undefined` where no distance is known. */
export function sayDistance({ atKm }: NextService): string | undefined {
  return atKm === undefined ? undefined : sayAbout(atKm, "distance", 4);
}

/** "At 180,000 km, by 3 May 2030"; empty where neither can be told. */
export function sayDue(next: NextService): string {
  const at = sayDistance(next);
  return [at && NEXT.at(at), next.dueOn && NEXT.on(sayDay(next.dueOn))].filter(Boolean).join(", ");
}
