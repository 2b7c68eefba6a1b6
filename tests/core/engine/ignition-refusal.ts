// Profiles refused for their ignition, groups, coils or connectors.
import { four, oddFire, orderless, type Refusal, six } from "./sample-profile.ts";

export const IGNITION_REFUSALS: readonly Refusal[] = [
  {
    why: "groups that forget cylinders",
    profile: { ...four, firingGroups: [[1, 4]] },
    problems: ["group-forgets /firingGroups"],
    says: "2 and 3",
  },
  {
    why: "groups that repeat a cylinder",
    profile: {
      ...four,
      ignition: "rail",
      firingGroups: [
        [1, 4],
        [2, 3],
        [4, 1],
      ],
    },
    problems: ["group-repeats /firingGroups/2/0", "group-repeats /firingGroups/2/1"],
    says: "second",
  },
  {
    why: "groups with an unknown cylinder",
    profile: {
      ...four,
      firingGroups: [
        [1, 4],
        [2, 3],
        [5, 6],
      ],
    },
    problems: ["cylinder-unknown /firingGroups/2/0", "cylinder-unknown /firingGroups/2/1"],
    says: "5",
  },
  {
    why: "a double coil that fires one",
    profile: { ...four, firingGroups: [[1, 4], [2], [3]] },
    problems: ["group-size /firingGroups/1", "group-size /firingGroups/2"],
    says: "fires 2",
  },
  {
    why: "a distributor with pairs",
    profile: {
      ...four,
      ignition: "distributor",
      firingGroups: [
        [1, 4],
        [2, 3],
      ],
    },
    problems: ["group-size /firingGroups/0", "group-size /firingGroups/1"],
    says: "one group of all 4",
  },
  {
    why: "a coil per plug with pairs",
    profile: {
      ...four,
      ignition: "coil-per-plug",
      firingGroups: [
        [1, 4],
        [2, 3],
      ],
    },
    problems: ["group-size /firingGroups/0", "group-size /firingGroups/1"],
    says: "a group of one",
  },
  {
    why: "a pair that are not companions",
    profile: {
      ...six,
      firingGroups: [
        [1, 4],
        [2, 6],
        [3, 5],
      ],
    },
    problems: ["group-not-companions /firingGroups/1", "group-not-companions /firingGroups/2"],
    says: "120° off 360° apart: one coil cannot fire both. By the firing order the companion of 2 is 5 and the companion of 6 is 3",
  },
  {
    why: "a rail on three cylinders",
    profile: { cylinders: 3, layout: "inline", firingOrder: [1, 3, 2], ignition: "rail" },
    problems: ["not-pairable /ignition"],
    says: "odd",
  },
  {
    why: "a rail on five cylinders in unknown order",
    profile: { cylinders: 5, ignition: "rail" },
    problems: ["not-pairable /ignition"],
    says: "odd",
  },
  {
    why: "a pack on an unevenly firing engine",
    profile: oddFire,
    problems: ["not-pairable /ignition"],
    says: "set pairingToleranceDeg to 30 or more",
  },
  {
    why: "a tolerance below the mismatch, and groups beside it",
    profile: {
      ...oddFire,
      pairingToleranceDeg: 20,
      firingGroups: [
        [1, 4],
        [6, 3],
        [5, 2],
      ],
    },
    problems: [
      "not-pairable /ignition",
      "group-not-companions /firingGroups/0",
      "group-not-companions /firingGroups/1",
      "group-not-companions /firingGroups/2",
    ],
    says: "it is 20",
  },
  {
    why: "a negative tolerance",
    profile: { ...four, ignition: "distributor", pairingToleranceDeg: -1 },
    problems: ["tolerance-range /pairingToleranceDeg"],
    says: "0 to 180",
  },
  {
    why: "coils on plugs of a rail",
    profile: { ...four, coilOn: [1, 3] },
    problems: ["coil-on-not-hybrid /coilOn"],
    says: "hybrid",
  },
  {
    why: "a hybrid with both coils on one pair",
    profile: { ...four, ignition: "hybrid", coilOn: [1, 4] },
    problems: ["coil-on-pair /coilOn", "coil-on-pair /coilOn"],
    says: "exactly one",
  },
  {
    why: "a coil named twice",
    profile: { ...four, ignition: "hybrid", coilOn: [1, 3, 1] },
    problems: ["coil-on-repeats /coilOn/2"],
    says: "second time",
  },
  {
    why: "a coil on an unknown plug",
    profile: { ...four, ignition: "hybrid", coilOn: [1, 3, 9] },
    problems: ["cylinder-unknown /coilOn/2"],
    says: "9",
  },
  {
    why: "a hybrid of unknown order with too many coils",
    profile: { ...orderless, ignition: "hybrid", coilOn: [1, 2, 3] },
    problems: ["coil-on-count /coilOn"],
    says: "there are 2",
  },
  {
    why: "a connector that forgets a coil",
    profile: { ...four, connectors: [{ name: "plug", feeds: [1, 4] }] },
    problems: ["connector-forgets /connectors"],
    says: "2 and 3",
  },
  {
    why: "a coil fed twice",
    profile: {
      ...four,
      connectors: [
        { name: "a", feeds: [1, 2, 3, 4] },
        { name: "b", feeds: [4] },
      ],
    },
    problems: ["connector-repeats /connectors/1/feeds/0", "connector-splits /connectors/1/feeds"],
    says: "second",
  },
  {
    why: "a connector for an unknown cylinder",
    profile: { ...four, connectors: [{ name: "plug", feeds: [1, 2, 3, 4, 8] }] },
    problems: ["cylinder-unknown /connectors/0/feeds/4"],
    says: "8",
  },
  {
    why: "a coil fed by two connectors",
    profile: {
      ...four,
      connectors: [
        { name: "a", feeds: [1, 2, 3] },
        { name: "b", feeds: [4] },
      ],
    },
    problems: ["connector-splits /connectors/0/feeds"],
    says: "Put 1 and 4 on one connector",
  },
  {
    why: "a connector that feeds nothing",
    profile: {
      ...four,
      connectors: [
        { name: "a", feeds: [1, 2, 3, 4] },
        { name: "b", feeds: [] },
      ],
    },
    problems: ["connector-empty /connectors/1/feeds"],
    says: "no cylinder",
  },
];
