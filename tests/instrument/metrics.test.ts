// The measures on a small example worked out by hand: five cases, three causes.
import { describe, expect, it } from "vitest";
import {
  brier,
  evenEdges,
  expectedCalibrationError,
  type Forecast,
  leading,
  logLoss,
  meanProbabilityOfTruth,
  meanReciprocalRank,
  murphy,
  reliabilityBins,
  topK,
} from "../../packages/core/src/instrument/index.ts";

const FIVE: readonly Forecast[] = [
  { probabilities: [0.7, 0.2, 0.1], truth: 0 },
  { probabilities: [0.5, 0.3, 0.2], truth: 1 },
  { probabilities: [0.1, 0.8, 0.1], truth: 1 },
  { probabilities: [0.25, 0.25, 0.5], truth: 2 },
  { probabilities: [0.6, 0.3, 0.1], truth: 2 },
];

describe("five forecasts of three causes", () => {
  it("have the scores worked out by hand", () => {
    expect(brier(FIVE)).toBeCloseTo(0.523, 12);
    expect(logLoss(FIVE).nats).toBeCloseTo(0.9559047, 7);
    expect(logLoss(FIVE).bits).toBeCloseTo(1.379079, 7);
    expect(topK(FIVE, 1)).toBeCloseTo(0.6, 12);
    expect(topK(FIVE, 2)).toBeCloseTo(0.8, 12);
    expect(topK(FIVE, 3)).toBe(1);
    expect(meanProbabilityOfTruth(FIVE)).toBeCloseTo(0.48, 12);
    expect(meanReciprocalRank(FIVE)).toBeCloseTo(0.7666667, 7);
  });

  it("have a calibration error of .22 in ten bins by the first place", () => {
    const bins = reliabilityBins(leading(FIVE), evenEdges(10));
    expect(bins.map(({ count }) => count)).toEqual([0, 0, 0, 0, 2, 1, 1, 1, 0, 0]);
    expect(expectedCalibrationError(bins)).toBeCloseTo(0.22, 12);
  });
});

describe("the split of the Brier score of statements", () => {
  it("adds up: .005 − .040 + .240 = .205", () => {
    const statements = [
      ...[true, true, true, true, false].map((isTrue) => ({ probability: 0.8, isTrue })),
      ...[true, true, false, false, false].map((isTrue) => ({ probability: 0.3, isTrue })),
    ];
    const split = murphy(statements);
    expect(split.brier).toBeCloseTo(0.205, 12);
    expect(split.reliability).toBeCloseTo(0.005, 12);
    expect(split.resolution).toBeCloseTo(0.04, 12);
    expect(split.uncertainty).toBeCloseTo(0.24, 12);
  });
});

describe("ties", () => {
  it("count as they would on average in random order", () => {
    const tied: readonly Forecast[] = [{ probabilities: [0.4, 0.4, 0.2], truth: 1 }];
    expect(topK(tied, 1)).toBe(0.5);
    expect(topK(tied, 2)).toBe(1);
    expect(meanReciprocalRank(tied)).toBe(0.75);
  });
});

describe("no forecasts", () => {
  it("have no scores to speak of, and none that is not a number", () => {
    expect([brier([]), topK([], 1), meanReciprocalRank([]), logLoss([]).nats]).toEqual([
      0, 0, 0, 0,
    ]);
    expect(expectedCalibrationError(reliabilityBins([], evenEdges(10)))).toBe(0);
  });
});
