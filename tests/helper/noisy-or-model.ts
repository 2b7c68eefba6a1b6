// A noisy-OR network as a diagnosis model: no cylinders to speak of, only signs seen and not seen.
import type { DiagnosisModel, Observation } from "../../packages/core/src/model/diagnosis-model.ts";
import type { NoisyOr, Seen } from "../reference/plain-noisy-or.ts";

export function noisyOrModel({ prior, leak, link }: NoisyOr, seen: Seen): DiagnosisModel {
  const faults = prior.length;
  const observation = (form: "seen" | "not-seen", finding: number): Observation => ({
    form,
    background: leak[finding] as number,
    value: Float64Array.from(link, (row) => row[finding] as number),
    answer: finding,
  });
  return {
    cylinders: 1,
    faults,
    odds: Float64Array.from(prior, (p) => p / (1 - p)),
    alone: new Uint8Array(faults),
    component: Uint32Array.from(prior.keys()),
    components: faults,
    atomStart: Uint32Array.from({ length: faults + 1 }, (_, f) => f),
    atomChance: new Float64Array(faults).fill(1),
    atomSet: new Uint32Array(faults),
    links: [],
    observations: [
      ...seen.present.map((finding) => observation("seen", finding)),
      ...seen.absent.map((finding) => observation("not-seen", finding)),
    ],
    misfireObservations: [],
  };
}
