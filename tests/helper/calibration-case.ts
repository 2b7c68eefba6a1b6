// What calibration is measured on: five kinds of ignition, and questions of every kind of answer.
import type { Engine } from "../../packages/core/src/engine/engine.ts";
import { engineById } from "../../packages/core/src/engine/profile-library.ts";
import type { Question } from "../../packages/core/src/instrument/index.ts";

export interface Kind {
  readonly name: string;
  readonly engine: Engine;
  readonly questions: readonly Question[];
}

const IDS = {
  "inline four, rail": "generic.i4.1342.rail",
  "V6, packs": "generic.v6.123456.pack",
  "inline four, distributor": "generic.i4.1342.distributor",
  "inline four, coil per plug": "generic.i4.1342.coil-per-plug",
  "inline four, hybrid": "generic.i4.1342.hybrid",
} as const;

/**
 * Not among the questions: `plug.look` and `injector.cut`. Both follow from the misfiring set and from
 * signs of faults at once. Their product is scaled for each fault over all sets that it reaches; a
 * sampler, which draws the set first, has to scale it set by set.
 */
export const QUESTIONS: readonly Question[] = [
  { finding: "complaint.main" },
  { finding: "lamp" },
  { finding: "codes" },
  { finding: "work" },
  { finding: "plug.age" },
  { finding: "regime.worst" },
  { finding: "regime.bumps" },
  { finding: "complaint.now" },
  { finding: "smell" },
  { finding: "swap.plug", cylinder: 2 },
  { finding: "well.look", cylinder: 3 },
  { finding: "cancel", cylinder: 2 },
  { finding: "counts" },
];

export const KINDS: readonly Kind[] = Object.entries(IDS).map(([name, id]) => ({
  name,
  engine: engineById(id) as Engine,
  questions: QUESTIONS,
}));
