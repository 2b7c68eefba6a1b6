// One model in which every kind of number matters to the answer: two cylinders, three faults, two of them
// linked, a sign seen, one not seen, a choice, and one look at the misfiring cylinders.
import type { DiagnosisModel } from "../../packages/core/src/model/diagnosis-model.ts";

export const sampleModel: DiagnosisModel = {
  cylinders: 2,
  faults: 3,
  odds: Float64Array.of(0.3, 0.2, 0.1),
  alone: new Uint8Array(3),
  component: Uint32Array.of(0, 1, 2),
  components: 3,
  atomStart: Uint32Array.of(0, 2, 4, 5),
  atomChance: Float64Array.of(0.6, 0.4, 0.7, 0.3, 1),
  atomSet: Uint32Array.of(1, 3, 2, 4, 3),
  links: [{ a: 0, b: 1, times: 3 }],
  observations: [
    { form: "seen", background: 0.1, value: Float64Array.of(0.7, 0.2, 0), answer: 0 },
    { form: "not-seen", background: 0.2, value: Float64Array.of(0.1, 0.5, 0.3), answer: 1 },
    { form: "choice", background: 0.3, value: Float64Array.of(0.6, -1, 0.2), answer: 2 },
  ],
  misfireObservations: [
    { likelihood: (set) => [0.05, 0.6, 0.2, 0.4, 0.1][set] as number, answer: 3 },
  ],
};
