// Profiles refused for their cylinders, order, banks, neighbours or figures.

import type { EngineProfile } from "../../../packages/core/src/engine/profile.ts";
import { four, labelled, orderless, type Refusal, six } from "./sample-profile.ts";

export const CYLINDER_REFUSALS: readonly Refusal[] = [
  {
    why: "no cylinder",
    profile: { ...four, cylinders: 0 },
    problems: ["cylinders-count /cylinders"],
    says: "1 to 16",
  },
  {
    why: "half a cylinder",
    profile: { ...four, cylinders: 4.5 },
    problems: ["cylinders-count /cylinders"],
    says: "4.5",
  },
  {
    why: "17 cylinders",
    profile: { ...four, cylinders: 17 },
    problems: ["cylinders-count /cylinders"],
    says: "17",
  },
  {
    why: "an unknown ignition",
    profile: { ...four, ignition: "magic" as EngineProfile["ignition"] },
    problems: ["ignition-unknown /ignition"],
    says: "coil-per-plug",
  },
  {
    why: "an order too short",
    profile: { ...four, firingOrder: [1, 3, 4] },
    problems: ["order-length /firingOrder"],
    says: "not in it: 2",
  },
  {
    why: "an order too long",
    profile: { ...four, firingOrder: [1, 3, 4, 2, 1] },
    problems: ["order-length /firingOrder", "order-repeats /firingOrder/4"],
    says: "each cylinder once",
  },
  {
    why: "a cylinder twice in the order",
    profile: { ...four, firingOrder: [1, 3, 4, 3] },
    problems: ["order-repeats /firingOrder/3"],
    says: "still missing: 2",
  },
  {
    why: "a cylinder that the engine does not have",
    profile: { ...four, firingOrder: [1, 3, 5, 2] },
    problems: ["cylinder-unknown /firingOrder/2"],
    says: "1, 2, 3 and 4",
  },
  {
    why: "a number in quotes",
    profile: { ...four, firingOrder: [1, 3, "4", 2] },
    problems: ["cylinder-unknown /firingOrder/2"],
    says: "Write 4 without quotes",
  },
  {
    why: "a label that no bank has",
    profile: { ...labelled, firingOrder: ["R1", "R2", "L1", "L3"] },
    problems: ["cylinder-unknown /firingOrder/3"],
    says: "R1, R2, L1 and L2",
  },
  {
    why: "a number among labels",
    profile: { ...labelled, firingOrder: ["R1", "R2", "L1", 2] },
    problems: ["cylinder-unknown /firingOrder/3"],
    says: "R1, R2, L1 and L2",
  },
  {
    why: "too few labels in the order",
    profile: { cylinders: 4, ignition: "distributor", firingOrder: ["R1", "R2", "L1"] },
    problems: ["order-length /firingOrder"],
    says: "number of cylinders",
  },
  {
    why: "too few intervals",
    profile: { ...four, ignition: "distributor", firingIntervals: [240, 240, 240] },
    problems: ["intervals-count /firingIntervals"],
    says: "3 intervals",
  },
  {
    why: "an interval of nothing",
    profile: { ...four, firingIntervals: [180, 0, 360, 180] },
    problems: ["interval-not-positive /firingIntervals/1"],
    says: "0°",
  },
  {
    why: "intervals that do not close the cycle",
    profile: { ...four, firingIntervals: [180, 180, 180, 90] },
    problems: ["intervals-sum /firingIntervals"],
    says: "630°",
  },
  {
    why: "an interval that is no number",
    profile: { ...four, firingIntervals: [180, 180, 180, Number.NaN] },
    problems: ["interval-not-positive /firingIntervals/3", "intervals-sum /firingIntervals"],
    says: "NaN",
  },
  {
    why: "intervals without an order",
    profile: { ...orderless, firingIntervals: [180, 180, 180, 180] },
    problems: ["intervals-without-order /firingIntervals"],
    says: "firingOrder",
  },
  {
    why: "banks that forget a cylinder",
    profile: { ...four, banks: [[1, 2, 4]] },
    problems: ["bank-forgets /banks"],
    says: "3",
  },
  {
    why: "banks that repeat a cylinder",
    profile: {
      ...six,
      banks: [
        [1, 3, 5],
        [2, 4, 6, 5],
      ],
    },
    problems: ["bank-repeats /banks/1/3"],
    says: "second mention",
  },
  {
    why: "banks that name an unknown cylinder",
    profile: { ...four, banks: [[1, 2, 3, 4, 5]] },
    problems: ["cylinder-unknown /banks/0/4"],
    says: "5",
  },
  {
    why: "labelled banks with a cylinder too few",
    profile: { ...labelled, banks: [["R1", "R2"], ["L1"]] },
    problems: ["cylinder-unknown /firingOrder/3", "bank-forgets /banks"],
    says: "L2",
  },
  {
    why: "labelled banks with a cylinder too many",
    profile: {
      ...labelled,
      banks: [
        ["R1", "R2"],
        ["L1", "L2", "L3"],
      ],
    },
    problems: ["bank-too-many /banks"],
    says: "5 cylinders",
  },
  {
    why: "an empty bank",
    profile: { cylinders: 4, ignition: "rail", banks: [[1, 2, 3, 4], []] },
    problems: ["bank-empty /banks/1"],
    says: "no cylinder",
  },
  {
    why: "an inline engine with two banks",
    profile: {
      ...four,
      banks: [
        [1, 2],
        [3, 4],
      ],
    },
    problems: ["bank-count /banks"],
    says: "one bank",
  },
  {
    why: "a V engine with one bank",
    profile: { ...six, banks: [[1, 2, 3, 4, 5, 6]] },
    problems: ["bank-count /banks"],
    says: "a side",
  },
  {
    why: "a V engine with one cylinder",
    profile: { cylinders: 1, layout: "v", ignition: "coil-per-plug" },
    problems: ["layout-needs-two /layout"],
    says: "inline",
  },
  {
    why: "a neighbour that does not exist",
    profile: { ...four, neighbours: [[1, 7]] },
    problems: ["cylinder-unknown /neighbours/0/1"],
    says: "7",
  },
  {
    why: "a cylinder as its own neighbour",
    profile: { ...four, neighbours: [[2, 2]] },
    problems: ["neighbours-same /neighbours/0"],
    says: "different",
  },
  {
    why: "neighbours given twice",
    profile: {
      ...four,
      neighbours: [
        [1, 2],
        [2, 1],
      ],
    },
    problems: ["neighbours-repeat /neighbours/1"],
    says: "already",
  },
  {
    why: "limits the wrong way round",
    profile: { ...four, figures: { plugGapMm: [1.1, 1] } },
    problems: ["figure-range-reversed /figures/plugGapMm"],
    says: "[1, 1.1]",
  },
  {
    why: "a limit of nothing",
    profile: { ...four, figures: { idleRpm: [0, 700] } },
    problems: ["figure-not-positive /figures/idleRpm/0"],
    says: "service manual",
  },
  {
    why: "a single limit",
    profile: { ...four, figures: { idleRpm: [700] as unknown as [number, number] } },
    problems: ["figure-range-length /figures/idleRpm"],
    says: "twice the same",
  },
  {
    why: "a negative service distance",
    profile: { ...four, figures: { serviceKm: -5, plugElectrode: "nickel" } },
    problems: ["figure-not-positive /figures/serviceKm"],
    says: "-5",
  },
];
