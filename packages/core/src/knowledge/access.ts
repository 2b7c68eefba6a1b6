// What must come off before a hand gets at a part. A row that does not suit an ignition kind is not in
// the way there, so a check or repair names everything that may be: rail, coil, cable, then the plug.
import type { AccessRow, Grounds } from "./schema.ts";

const GUESS: Grounds = { basis: "memory", confidence: "low" };

export const ACCESS = [
  {
    id: "access.rail",
    say: "coil rail off the plugs",
    minutes: 8,
    at: "engine",
    suits: ["rail"],
    putBack: ["boot.spring", "boot.home", "coil.bolt", "connector.click"],
    grounds: GUESS,
  },
  {
    id: "access.pack",
    say: "coil pack unbolted, cables marked",
    minutes: 10,
    at: "engine",
    suits: ["pack"],
    putBack: ["coil.bolt", "lead.order", "connector.click"],
    grounds: GUESS,
  },
  {
    id: "access.coil",
    say: "coil off its plug",
    minutes: 3,
    at: "coil",
    suits: ["hybrid", "coil-per-plug"],
    putBack: ["boot.spring", "boot.home", "coil.bolt", "lead.order", "connector.click"],
    grounds: GUESS,
  },
  {
    id: "access.cable",
    say: "cable and boot off the plug",
    minutes: 1,
    at: "cylinder",
    suits: ["distributor", "pack", "hybrid"],
    putBack: ["boot.home", "lead.order"],
    grounds: GUESS,
  },
  {
    id: "access.plug",
    say: "plug out",
    minutes: 4,
    at: "cylinder",
    putBack: ["well.clean", "plug.by-hand", "plug.torque"],
    grounds: GUESS,
  },
  {
    id: "access.cap",
    say: "distributor cap off",
    minutes: 4,
    at: "engine",
    suits: ["distributor"],
    putBack: ["distributor.cap", "lead.order"],
    grounds: GUESS,
  },
  {
    id: "access.air-duct",
    say: "air duct off",
    minutes: 5,
    at: "engine",
    putBack: ["intake.hose", "connector.click"],
    grounds: GUESS,
  },
  {
    id: "access.fuel-rail",
    say: "fuel rail off",
    minutes: 45,
    at: "bank",
    putBack: ["injector.seal", "connector.click", "fuel.back", "fuel.leak-check"],
    grounds: GUESS,
  },
  {
    id: "access.intake",
    say: "intake manifold off",
    minutes: 90,
    at: "bank",
    putBack: ["cover.bolt", "intake.hose", "connector.click", "fuel.back", "fuel.leak-check"],
    grounds: GUESS,
  },
  {
    id: "access.valve-cover",
    say: "valve cover off",
    minutes: 40,
    at: "bank",
    putBack: [
      "cover.bolt",
      "boot.spring",
      "boot.home",
      "coil.bolt",
      "lead.order",
      "connector.click",
    ],
    grounds: GUESS,
  },
  {
    id: "access.head",
    say: "cylinder head off",
    minutes: 240,
    at: "bank",
    putBack: ["head.bolt", "belt.mark", "coolant.level", "oil.level"],
    grounds: GUESS,
  },
  {
    id: "access.timing-cover",
    say: "timing cover off",
    minutes: 90,
    at: "engine",
    putBack: ["cover.bolt", "belt.mark"],
    grounds: GUESS,
  },
  {
    id: "access.tank",
    say: "fuel pump reached",
    minutes: 40,
    at: "engine",
    putBack: ["connector.click", "fuel.back", "fuel.leak-check"],
    grounds: GUESS,
  },
  {
    id: "access.gearbox",
    say: "gearbox off",
    minutes: 300,
    at: "engine",
    putBack: ["cover.bolt", "connector.click"],
    grounds: GUESS,
  },
  {
    id: "access.control-unit",
    say: "battery off, control unit reached",
    minutes: 15,
    at: "engine",
    putBack: ["connector.click", "battery.back"],
    grounds: GUESS,
  },
] as const satisfies readonly AccessRow[];

export type AccessId = (typeof ACCESS)[number]["id"];

export const ACCESS_ROWS: readonly AccessRow[] = ACCESS;
