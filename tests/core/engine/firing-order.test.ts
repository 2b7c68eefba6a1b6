// Companions and mismatches against published orders, and the laws that any pairing obeys.
import fc from "fast-check";
import { afterAll, describe, expect, it } from "vitest";
import {
  companionsOf,
  firingAngles,
  mismatchDeg,
  pairingMismatchDeg,
  pairingObstacle,
  shortestPeriod,
} from "../../../packages/core/src/engine/firing-order.ts";
import type { CylinderName } from "../../../packages/core/src/engine/profile.ts";
import { publishedOrders, sortedPairs } from "./published-orders.ts";

const { pairable, notPairable } = publishedOrders;

/** Pairs by name, worked out from the order. */
function pairs(
  order: readonly CylinderName[],
  intervals?: readonly number[],
  toleranceDeg?: number,
): readonly string[] {
  const angles = firingAngles([...order.keys()], intervals);
  const companions = companionsOf(angles, toleranceDeg);
  const found = order.flatMap((name, i) => {
    const companion = companions[i];
    return companion === undefined || companion < i ? [] : [[name, order[companion] ?? "?"]];
  });
  return sortedPairs(found);
}

describe("published firing orders", () => {
  let compared = 0;
  let expectedPairs = 0;

  it.each(pairable)("pairs $engine $order as published", ({ order, companions, source }) => {
    expect(source).not.toBe("");
    expect(companions).toHaveLength(order.length / 2);
    expect(pairs(order)).toEqual(sortedPairs(companions));
    expect(pairingMismatchDeg(firingAngles([...order.keys()]))).toBe(0);
    expect(pairingObstacle(firingAngles([...order.keys()]))).toBeUndefined();
    compared += 1;
    expectedPairs += companions.length;
  });

  it.each(notPairable)("finds how far $engine misses", ({ order, intervals, ...published }) => {
    const angles = firingAngles([...order.keys()], intervals);
    expect(published.source).not.toBe("");
    expect(pairingMismatchDeg(angles)).toBeCloseTo(published.mismatchDeg, 9);
    expect(companionsOf(angles).every((c) => c === undefined)).toBe(true);
    expect(pairingObstacle(angles)).toContain(`${published.mismatchDeg}°`);
    compared += 1;
  });

  // 23 orders with 2 to 6 pairs each, and 8 engines that cannot be paired.
  afterAll(() => {
    expect({ compared, expectedPairs }).toEqual({ compared: 31, expectedPairs: 72 });
  });
});

describe("firing angles", () => {
  it("start at 0 and follow the intervals", () => {
    expect(firingAngles([0, 2, 1, 3], [270, 180, 90, 180])).toEqual([0, 450, 270, 540]);
    expect(firingAngles([0, 2, 3, 1])).toEqual([0, 540, 180, 360]);
  });

  it("forgive intervals rounded by a maker", () => {
    const rounded = new Array(14).fill(51.4286);
    expect(pairingMismatchDeg(firingAngles([...rounded.keys()], rounded))).toBe(0);
  });
});

describe("the tolerance", () => {
  const oddFire = firingAngles([0, 1, 2, 3, 4, 5], [90, 150, 90, 150, 90, 150]);

  it("pairs an uneven engine from its mismatch on", () => {
    expect(companionsOf(oddFire, 29.9)).toEqual(new Array(6).fill(undefined));
    expect(companionsOf(oddFire, 30)).toEqual([3, 4, 5, 0, 1, 2]);
  });

  it("pairs the cross-plane inline four completely, though every firing has two near ones", () => {
    expect(pairs([1, 3, 2, 4], [270, 180, 90, 180], 90)).toEqual(["1/2", "3/4"]);
  });

  it("never picks one of two equally near partners when one must stay over", () => {
    expect(companionsOf(firingAngles([0, 1, 2]), 120)).toEqual(new Array(3).fill(undefined));
  });

  it("finds the exact pair of an engine that has only one", () => {
    expect(companionsOf([0, 180, 360])).toEqual([2, undefined, 0]);
    expect(companionsOf([0, 100, 200, 360])).toEqual([3, undefined, undefined, 0]);
  });
});

describe("why an engine cannot be paired", () => {
  it("names the odd count", () => {
    expect(pairingObstacle(firingAngles([0, 1, 2]))).toMatch(
      /count is odd.*120°.*coil of its own/s,
    );
  });

  it("names the uneven intervals and what they mean for a shared coil", () => {
    const angles = firingAngles([0, 1, 2, 3, 4, 5], [90, 150, 90, 150, 90, 150]);
    expect(pairingObstacle(angles)).toMatch(/90°, 150°.*30°.*exhaust.*distributor/s);
  });

  it("names the single cylinder", () => {
    expect(pairingObstacle([0])).toContain("no other");
    expect(pairingMismatchDeg([0])).toBe(360);
  });
});

describe("the shortest period", () => {
  it("is the part that repeats", () => {
    expect(shortestPeriod([90, 150, 90, 150])).toEqual([90, 150]);
    expect(shortestPeriod([120, 120, 120])).toEqual([120]);
    expect(shortestPeriod([270, 180, 90, 180])).toEqual([270, 180, 90, 180]);
    expect(shortestPeriod([])).toEqual([]);
  });
});

/** Random orders of 2 to 16 cylinders, always an even count. */
const evenOrder = fc
  .integer({ min: 1, max: 8 })
  .chain((half) => fc.shuffledSubarray([...Array(half * 2).keys()], { minLength: half * 2 }));

/** Whole degrees between up to 8 firings, adding up to 720. */
const intervals = fc
  .integer({ min: 1, max: 4 })
  .chain((half) =>
    fc.uniqueArray(fc.integer({ min: 1, max: 719 }), {
      minLength: half * 2 - 1,
      maxLength: half * 2 - 1,
    }),
  )
  .map((cuts) => [0, ...cuts, 720].sort((a, b) => a - b))
  .map((edges) => edges.slice(1).map((edge, i) => edge - (edges[i] ?? 0)));

describe("the laws of pairing", () => {
  it("is an involution without fixed point that pairs all cylinders", () => {
    fc.assert(
      fc.property(evenOrder, (order) => {
        const companions = companionsOf(firingAngles(order));
        companions.forEach((companion, c) => {
          expect(companion).not.toBe(c);
          expect(companions[companion ?? -1]).toBe(c);
        });
        const set = new Set(companions.map((b, a) => [a, b].sort().join()));
        expect(set.size).toBe(order.length / 2);
      }),
    );
  });

  it("joins cylinders half the order apart", () => {
    fc.assert(
      fc.property(evenOrder, (order) => {
        const companions = companionsOf(firingAngles(order));
        order.forEach((c, i) => {
          const apart = Math.abs(order.indexOf(companions[c] ?? -1) - i);
          expect(apart).toBe(order.length / 2);
        });
      }),
    );
  });

  it("does not change when the order is rotated or reversed", () => {
    fc.assert(
      fc.property(evenOrder, fc.nat(15), (order, turn) => {
        const k = turn % order.length;
        const rotated = [...order.slice(k), ...order.slice(0, k)];
        const companions = companionsOf(firingAngles(order));
        expect(companionsOf(firingAngles(rotated))).toEqual(companions);
        expect(companionsOf(firingAngles([...order].reverse()))).toEqual(companions);
      }),
    );
  });

  it("follows the cylinders when uneven orders are begun elsewhere", () => {
    fc.assert(
      fc.property(
        intervals,
        fc.nat(7),
        fc.integer({ min: 0, max: 180 }),
        (gaps, turn, tolerance) => {
          const order = [...gaps.keys()];
          const k = turn % order.length;
          const rotate = <T>(list: readonly T[]): readonly T[] => [
            ...list.slice(k),
            ...list.slice(0, k),
          ];
          const turned = firingAngles(rotate(order), rotate(gaps));
          expect(companionsOf(turned, tolerance)).toEqual(
            companionsOf(firingAngles(order, gaps), tolerance),
          );
        },
      ),
    );
  });

  it("leaves no smaller mismatch to any other way of pairing", () => {
    fc.assert(
      fc.property(intervals, (gaps) => {
        const angles = firingAngles([...gaps.keys()], gaps);
        expect(pairingMismatchDeg(angles)).toBeCloseTo(bestOfAll(angles), 6);
      }),
    );
  });
});

/** The smallest largest mismatch over every way to pair, found by trying all. */
function bestOfAll(angles: readonly number[]): number {
  const [first, ...rest] = angles;
  if (first === undefined) return 0;
  const tries = rest.map((partner, i) =>
    Math.max(mismatchDeg(first, partner), bestOfAll(rest.filter((_, j) => j !== i))),
  );
  return Math.min(...tries);
}
