// An engine as it is typed, and the profile that it makes.
import type { CylinderName, EngineProfile, IgnitionKind, Layout } from "@half-order/core";

export interface Sketch {
  readonly name: string;
  readonly cylinders: string;
  readonly layout: Layout | "";
  readonly ignition: IgnitionKind;
  readonly order: string;
  readonly intervals: string;
  readonly banks: string;
}

export const emptySketch: Sketch = {
  name: "",
  cylinders: "6",
  layout: "",
  ignition: "rail",
  order: "",
  intervals: "",
  banks: "",
};

/** What was typed, as a profile; whether it makes sense is for `checkProfile` to say. */
export function profileOf(sketch: Sketch): EngineProfile {
  const order = words(sketch.order).map(cylinder);
  const intervals = words(sketch.intervals).map(Number);
  const banks = sketch.banks.split("/").map((bank) => words(bank).map(cylinder));
  return {
    ...(sketch.name.trim() ? { name: sketch.name.trim() } : {}),
    cylinders: sketch.cylinders.trim() === "" ? Number.NaN : Number(sketch.cylinders),
    ...(sketch.layout ? { layout: sketch.layout } : {}),
    ...(sketch.banks.trim() ? { banks } : {}),
    ...(order.length > 0 ? { firingOrder: order } : {}),
    ...(intervals.length > 0 ? { firingIntervals: intervals } : {}),
    ignition: sketch.ignition,
  };
}

function words(text: string): readonly string[] {
  return text.split(/[\s,;–-]+/).filter(Boolean);
}

function cylinder(word: string): CylinderName {
  return /^\d+$/.test(word) ? Number(word) : word.toUpperCase();
}
