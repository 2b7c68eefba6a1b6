// An engine as it is typed, and the profile that it makes.
import type { CylinderName, EngineProfile, IgnitionKind, Layout } from "@half-order/core";
import { type Older, olderParts, withOlder } from "./older.ts";
import { withPort } from "./port.ts";

export interface Sketch {
  readonly name: string;
  readonly cylinders: string;
  readonly layout: Layout | "";
  readonly ignition: IgnitionKind;
  readonly order: string;
  readonly intervals: string;
  readonly banks: string;
  /** Whether a code reader can be plugged in. */
  readonly hasPort: boolean;
  /** What of an older engine it has, where there is a distributor. */
  readonly older: readonly Older[];
}

export const emptySketch: Sketch = {
  name: "",
  cylinders: "6",
  layout: "",
  ignition: "rail",
  order: "",
  intervals: "",
  banks: "",
  hasPort: true,
  older: [],
};

/** What was typed, as a profile; whether it makes sense is for `checkProfile` to say. */
export function profileOf(sketch: Sketch): EngineProfile {
  const order = words(sketch.order).map(cylinder);
  const intervals = words(sketch.intervals).map(Number);
  const banks = sketch.banks.split("/").map((bank) => words(bank).map(cylinder));
  const profile: EngineProfile = {
    ...(sketch.name.trim() ? { name: sketch.name.trim() } : {}),
    cylinders: sketch.cylinders.trim() === "" ? Number.NaN : Number(sketch.cylinders),
    ...(sketch.layout ? { layout: sketch.layout } : {}),
    ...(sketch.banks.trim() ? { banks } : {}),
    ...(order.length > 0 ? { firingOrder: order } : {}),
    ...(intervals.length > 0 ? { firingIntervals: intervals } : {}),
    ignition: sketch.ignition,
  };
  const older = olderParts(sketch.ignition).filter((part) => sketch.older.includes(part));
  return older.reduce(
    (known, part) => withOlder(known, part, true),
    withPort(profile, sketch.hasPort),
  );
}

function words(text: string): readonly string[] {
  return text.split(/[\s,;–-]+/).filter(Boolean);
}

function cylinder(word: string): CylinderName {
  return /^\d+$/.test(word) ? Number(word) : word.toUpperCase();
}
