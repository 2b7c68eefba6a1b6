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
    grounds: GUESS,
  },
  {
    id: "access.pack",
    say: "coil pack unbolted, cables marked",
    minutes: 10,
    at: "engine",
    suits: ["pack"],
    grounds: GUESS,
  },
  {
    id: "access.coil",
    say: "coil off its plug",
    minutes: 3,
    at: "coil",
    suits: ["hybrid", "coil-per-plug"],
    grounds: GUESS,
  },
  {
    id: "access.cable",
    say: "cable and boot off the plug",
    minutes: 1,
    at: "cylinder",
    suits: ["distributor", "pack", "hybrid"],
    grounds: GUESS,
  },
  { id: "access.plug", say: "plug out", minutes: 4, at: "cylinder", grounds: GUESS },
  {
    id: "access.cap",
    say: "distributor cap off",
    minutes: 4,
    at: "engine",
    suits: ["distributor"],
    grounds: GUESS,
  },
  { id: "access.air-duct", say: "air duct off", minutes: 5, at: "engine", grounds: GUESS },
  { id: "access.fuel-rail", say: "fuel rail off", minutes: 45, at: "bank", grounds: GUESS },
  { id: "access.intake", say: "intake manifold off", minutes: 90, at: "bank", grounds: GUESS },
  { id: "access.valve-cover", say: "valve cover off", minutes: 40, at: "bank", grounds: GUESS },
  { id: "access.head", say: "cylinder head off", minutes: 240, at: "bank", grounds: GUESS },
  { id: "access.timing-cover", say: "timing cover off", minutes: 90, at: "engine", grounds: GUESS },
  { id: "access.tank", say: "fuel pump reached", minutes: 40, at: "engine", grounds: GUESS },
  { id: "access.gearbox", say: "gearbox off", minutes: 300, at: "engine", grounds: GUESS },
  {
    id: "access.control-unit",
    say: "battery off, control unit reached",
    minutes: 15,
    at: "engine",
    grounds: GUESS,
  },
] as const satisfies readonly AccessRow[];

export type AccessId = (typeof ACCESS)[number]["id"];

export const ACCESS_ROWS: readonly AccessRow[] = ACCESS;
