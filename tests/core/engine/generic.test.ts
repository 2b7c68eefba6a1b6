// The engines that come with the library are sound, complete and told apart.
import { describe, expect, it } from "vitest";
import { candidateEngines } from "../../../packages/core/src/engine/candidates.ts";
import { checkProfile } from "../../../packages/core/src/engine/check-profile.ts";
import { demoProfiles } from "../../../packages/core/src/engine/demo.ts";
import { firesInPairs } from "../../../packages/core/src/engine/firing-group.ts";
import { genericProfiles, orderMismatchDeg } from "../../../packages/core/src/engine/generic.ts";
import { GENERIC_ORDERS } from "../../../packages/core/src/engine/generic-order.ts";
import {
  allProfiles,
  cylinderCounts,
  engineById,
  profileById,
} from "../../../packages/core/src/engine/profile-library.ts";
import { resolveEngine } from "../../../packages/core/src/engine/resolve-engine.ts";
import { publishedOrders, sortedPairs } from "./published-orders.ts";

describe("the generic orders", () => {
  const { pairable, notPairable } = publishedOrders;
  const key = (order: readonly unknown[], intervals: readonly number[] = []): string =>
    `${order.join("-")} ${intervals.join()}`;
  const known = new Set(GENERIC_ORDERS.map(({ order, intervals }) => key(order, intervals)));

  it("hold every published one", () => {
    const missing = [...pairable, ...notPairable].filter(
      (row) => !known.has(key(row.order, "intervals" in row ? row.intervals : [])),
    );
    expect(missing).toEqual([]);
    expect(pairable.length + notPairable.length).toBe(31);
  });

  it("say where they are from", () => {
    for (const { basis, source, order } of GENERIC_ORDERS) {
      expect(basis === "memory" || source !== "", order.join("-")).toBe(true);
    }
  });

  it("are weighed as shares", () => {
    const counts = new Set(GENERIC_ORDERS.map(({ order }) => order.length));
    expect([...counts]).toEqual([2, 3, 4, 5, 6, 8, 10, 12]);
    for (const count of counts) {
      const sum = GENERIC_ORDERS.filter(({ order }) => order.length === count).reduce(
        (total, { commonness }) => total + commonness,
        0,
      );
      expect(sum, `${count} cylinders`).toBeCloseTo(1, 9);
    }
  });

  it("number the banks so that each cylinder stands in one", () => {
    for (const { order, banks } of GENERIC_ORDERS) {
      expect(banks.flat().map(String).sort()).toEqual(order.map(String).sort());
    }
  });
});

describe("the generic profiles", () => {
  it("of one number of cylinders are those of all that have it", () => {
    const all = genericProfiles();
    for (const count of cylinderCounts()) {
      expect(genericProfiles(count)).toEqual(all.filter(({ cylinders }) => cylinders === count));
    }
    expect(genericProfiles(7)).toEqual([]);
  });

  it("can each be weighed without their order, with or without their layout", () => {
    for (const { cylinders, ignition, layout } of genericProfiles()) {
      const known = { cylinders, ignition };
      expect(candidateEngines(known).length).toBeGreaterThan(0);
      expect(candidateEngines(layout ? { ...known, layout } : known).length).toBeGreaterThan(0);
    }
  });

  const profiles = genericProfiles();

  it("pair as published wherever they pair", () => {
    let compared = 0;
    for (const { order, companions } of publishedOrders.pairable) {
      const matching = profiles.filter(
        (p) =>
          p.firingOrder?.join() === order.join() && !p.firingIntervals && firesInPairs(p.ignition),
      );
      for (const profile of matching) {
        const { groups, names } = resolveEngine(profile);
        const named = groups.map((group) => group.map((c) => names[c] ?? "?"));
        expect(sortedPairs(named), profile.id).toEqual(sortedPairs(companions));
        compared += 1;
      }
    }
    // Pack, rail and hybrid for each of the 23 orders.
    expect(compared).toBe(69);
  });

  it("come under every ignition that suits the order", () => {
    const exact = GENERIC_ORDERS.filter((order) => orderMismatchDeg(order) === 0).length;
    expect(profiles).toHaveLength(exact * 5 + (GENERIC_ORDERS.length - exact) * 2);
  });

  it("have ids and names that read aloud", () => {
    const nameOf = (id: string): string | undefined => profileById(id)?.name;
    expect(nameOf("generic.i4.1342.rail")).toBe("Inline four, 1-3-4-2, coil rail");
    expect(nameOf("generic.v6.123456.pack")).toBe("V6, 1-2-3-4-5-6, coil pack");
    expect(nameOf("generic.v6.R1L1R2L2R3L3.pack")).toBe("V6, R1-L1-R2-L2-R3-L3, coil pack");
    expect(nameOf("generic.v10.1-10-9-4-3-6-5-8-7-2.rail")).toContain("V10");
    expect(nameOf("generic.v6.165432.odd-90-150.distributor")).toContain("uneven 90-150");
    expect(nameOf("generic.f4.1324.coil-per-plug")).toBe("Flat four, 1-3-2-4, coil per plug");
  });
});

describe("the demo vehicles", () => {
  it("say that they are invented and have every figure", () => {
    expect(demoProfiles().length).toBeGreaterThanOrEqual(6);
    for (const { id, invented, figures, firingOrder, fuelling } of demoProfiles()) {
      expect(invented, id).toBe(true);
      expect(firingOrder, id).toBeDefined();
      // A carburettor has no injector to measure.
      expect(Object.keys(figures ?? {}), id).toHaveLength(fuelling === "carburettor" ? 13 : 14);
    }
  });

  it("cover every ignition and layout", () => {
    expect(new Set(demoProfiles().map(({ ignition }) => ignition)).size).toBe(5);
    expect(new Set(demoProfiles().map(({ layout }) => layout)).size).toBe(3);
  });
});

describe("the library", () => {
  it("has a profile for each number of cylinders that it tells, and for no other", () => {
    const counts = allProfiles().map(({ cylinders }) => cylinders);
    expect(cylinderCounts()).toEqual([...new Set(counts)].sort((a, b) => a - b));
  });

  it.each(allProfiles().map((profile) => [profile.id, profile] as const))("%s", (id, profile) => {
    expect(checkProfile(profile)).toEqual([]);
    expect(engineById(id ?? "")).toEqual(resolveEngine(profile));
  });

  it("gives each profile an id of its own", () => {
    const ids = allProfiles().map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.every((id) => /^(demo|generic)\.[\w.-]+$/.test(id ?? ""))).toBe(true);
  });

  it("knows nothing of other ids", () => {
    expect(engineById("demo.dodo")).toBeUndefined();
  });
});
