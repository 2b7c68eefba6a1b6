// Every refusal of a profile: its code, the path of the field, and a hint that helps.
import { afterAll, describe, expect, it } from "vitest";
import { checkProfile } from "../../../packages/core/src/engine/check-profile.ts";
import type { EngineProfile } from "../../../packages/core/src/engine/profile.ts";
import { CYLINDER_REFUSALS } from "./cylinder-refusal.ts";
import { IGNITION_REFUSALS } from "./ignition-refusal.ts";
import { four, labelled, oddFire, orderless } from "./sample-profile.ts";

const CODES = [
  "bank-count",
  "bank-empty",
  "bank-forgets",
  "bank-repeats",
  "bank-too-many",
  "coil-on-count",
  "coil-on-not-hybrid",
  "coil-on-pair",
  "coil-on-repeats",
  "connector-empty",
  "connector-forgets",
  "connector-repeats",
  "connector-splits",
  "cylinder-unknown",
  "cylinders-count",
  "figure-not-positive",
  "figure-range-length",
  "figure-range-reversed",
  "group-forgets",
  "group-not-companions",
  "group-repeats",
  "group-size",
  "ignition-unknown",
  "interval-not-positive",
  "intervals-count",
  "intervals-sum",
  "intervals-without-order",
  "layout-needs-two",
  "neighbours-repeat",
  "neighbours-same",
  "not-pairable",
  "order-length",
  "order-repeats",
  "tolerance-range",
];

describe("a profile is refused for", () => {
  const met = new Set<string>();

  it.each([...CYLINDER_REFUSALS, ...IGNITION_REFUSALS])("$why", ({ profile, problems, says }) => {
    const found = checkProfile(profile);
    expect(found.map(({ code, path }) => `${code} ${path}`).sort()).toEqual([...problems].sort());
    expect(found[0] && `${found[0].message} ${found[0].hint}`).toContain(says);
    for (const problem of found) {
      expect(problem.message).toMatch(/^[A-Z0-9].*[.]$/);
      expect(problem.hint).toMatch(/^[A-Z].*[.]$/);
      expect(`${problem.message} ${problem.hint}`).not.toMatch(/undefined|\[object/);
      met.add(problem.code);
    }
  });

  it("everything that can be wrong, at once", () => {
    const found = checkProfile({
      cylinders: 3,
      layout: "inline",
      firingOrder: [1, 3, 3],
      firingIntervals: [240, 240, 250],
      banks: [[1, 2], [3]],
      neighbours: [[1, 1]],
      ignition: "rail",
      coilOn: [1],
      connectors: [{ name: "plug", feeds: [1, 2] }],
      pairingToleranceDeg: 400,
      figures: { plugTorqueNm: [30, 20] },
    });
    expect(found.map(({ code }) => code)).toEqual([
      "order-repeats",
      "intervals-sum",
      "bank-count",
      "neighbours-same",
      "not-pairable",
      "coil-on-not-hybrid",
      "connector-forgets",
      "tolerance-range",
      "figure-range-reversed",
    ]);
  });

  // Every code that the checks can give: a comparison that is dropped leaves one out.
  afterAll(() => expect([...met].sort()).toEqual(CODES));
});

describe("a profile is accepted", () => {
  const sound: readonly (readonly [string, EngineProfile])[] = [
    ["with all cylinders in order", four],
    ["with labels", labelled],
    ["with only a count and an ignition", { cylinders: 6, ignition: "rail" }],
    ["with one cylinder", { cylinders: 1, ignition: "coil-per-plug" }],
    ["with a tolerance that lets uneven companions pair", { ...oddFire, pairingToleranceDeg: 30 }],
    [
      "with groups but no order",
      {
        ...orderless,
        firingGroups: [
          [1, 4],
          [2, 3],
        ],
      },
    ],
    ["with a range of one value", { ...four, figures: { plugGapMm: [1.1, 1.1] } }],
    [
      "with a connector for each pair",
      {
        ...four,
        connectors: [
          { name: "front", feeds: [1, 4] },
          { name: "rear", feeds: [3, 2] },
        ],
      },
    ],
  ];

  it.each(sound)("%s", (_, profile) => {
    expect(checkProfile(profile)).toEqual([]);
  });
});
