// What ends a shake or a count that is no misfire.
import type { RepairRow } from "../schema.ts";

export const NOT_MISFIRE_REPAIR = [
  {
    id: "repair.driveline",
    name: "Cure pulley, joints, wheels or tyres",
    at: "engine",
    mends: [{ fault: "not-misfire.false-count", works: 0.85 }],
    minutes: 90,
    skill: 3,
    tool: "hand tools",
    parts: "medium",
    cautions: ["rolling", "lifting", "moving-parts"],
    putBack: ["wheel.bolt", "codes.clear"],
    grounds: { basis: "memory", confidence: "low" },
  },
  {
    id: "repair.crank-learning",
    name: "Have the crank variation learned again",
    at: "engine",
    mends: [{ fault: "not-misfire.not-learned", works: 0.95 }],
    minutes: 20,
    skill: 2,
    tool: "code reader",
    parts: "none",
    cautions: ["moving-parts"],
    putBack: ["codes.clear"],
    grounds: { basis: "memory", confidence: "low" },
  },
  {
    id: "repair.mounts",
    name: "Renew the broken mount, or cure idle, accessory or converter",
    at: "engine",
    mends: [{ fault: "not-misfire.other-shake", works: 0.85 }],
    minutes: 75,
    skill: 2,
    tool: "hand tools",
    parts: "medium",
    cautions: ["rolling", "lifting", "moving-parts"],
    putBack: ["connector.click", "tools.counted", "first-start"],
    grounds: { basis: "memory", confidence: "low" },
  },
] as const satisfies readonly RepairRow[];
