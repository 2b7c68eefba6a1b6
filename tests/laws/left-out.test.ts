// What may be left out is bounded: `unsearched` says how far any probability can be off.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { posterior } from "../../packages/core/src/inference/posterior.ts";
import type { DiagnosisModel } from "../../packages/core/src/model/diagnosis-model.ts";
import { smallModel } from "../helper/arbitrary-model.ts";

const RUNS = { numRuns: 600, seed: 20262 };
const TOLERANCE = 0.2;
/** Rounding of the sums. */
const HAIR = 1e-12;

function mostOff(model: DiagnosisModel): { readonly off: number; readonly unsearched: number } {
  const all = posterior(model, { tolerance: 0 });
  const some = posterior(model, { tolerance: TOLERANCE });
  const off = Math.max(
    ...(["fault", "component", "set"] as const).flatMap((key) =>
      Array.from(all[key], (probability, i) => Math.abs(probability - (some[key][i] as number))),
    ),
  );
  return { off, unsearched: some.unsearched };
}

describe("what is left out", () => {
  it("moves no probability further than the bound that is told", () => {
    let cut = 0;
    fc.assert(
      fc.property(smallModel, (model) => {
        const { off, unsearched } = mostOff(model);
        expect(off).toBeLessThanOrEqual(unsearched + HAIR);
        expect(unsearched).toBeLessThanOrEqual(TOLERANCE);
        if (unsearched > 0) cut++;
      }),
      RUNS,
    );
    // The law says nothing about models from which nothing was cut.
    expect(cut).toBeGreaterThan(100);
  });

  it("would be refuted by a bound a hundred times smaller", () => {
    const [worst = 0] = fc
      .sample(smallModel, { numRuns: 200, seed: RUNS.seed })
      .map(mostOff)
      .map(({ off, unsearched }) => (unsearched > 0 ? off / unsearched : 0))
      .sort((a, b) => b - a);
    expect(worst).toBeGreaterThan(0.01);
  });
});
