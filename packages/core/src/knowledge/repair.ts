// All repairs: what is mended or renewed, what that cures and how surely. None is sure: a new part can
// be bad, or sit badly, or the fault has worn something else by then.
import type { AccessId } from "./access.ts";
import type { CAUTIONS } from "./caution.ts";
import { AIR_REPAIR } from "./repair/air.ts";
import { BOOT_REPAIR } from "./repair/boot.ts";
import { COIL_REPAIR } from "./repair/coil.ts";
import { DISTRIBUTOR_REPAIR } from "./repair/distributor.ts";
import { FUEL_REPAIR } from "./repair/fuel.ts";
import { INJECTOR_REPAIR } from "./repair/injector.ts";
import { LEAD_REPAIR } from "./repair/lead.ts";
import { MECHANICAL_REPAIR } from "./repair/mechanical.ts";
import { NOT_MISFIRE_REPAIR } from "./repair/not-misfire.ts";
import { OLDER_REPAIR } from "./repair/older.ts";
import { PLUG_REPAIR } from "./repair/plug.ts";
import { SENSING_REPAIR } from "./repair/sensing.ts";
import { SUPPLY_REPAIR } from "./repair/supply.ts";
import type { RepairRow } from "./schema.ts";

const ALL = [
  ...PLUG_REPAIR,
  ...BOOT_REPAIR,
  ...LEAD_REPAIR,
  ...COIL_REPAIR,
  ...SUPPLY_REPAIR,
  ...DISTRIBUTOR_REPAIR,
  ...INJECTOR_REPAIR,
  ...FUEL_REPAIR,
  ...AIR_REPAIR,
  ...MECHANICAL_REPAIR,
  ...SENSING_REPAIR,
  ...NOT_MISFIRE_REPAIR,
  ...OLDER_REPAIR,
] as const;

export type RepairId = (typeof ALL)[number]["id"];

/** A repair whose cautions and access exist. */
interface Repair extends RepairRow {
  readonly cautions: readonly (typeof CAUTIONS)[number]["id"][];
  readonly access?: readonly AccessId[];
}

export const REPAIRS: readonly RepairRow[] = ALL satisfies readonly Repair[];
