// The tables put together; no logic. Add a fault to its family and it is in.
import { ACCESS_ROWS } from "./access.ts";
import { CAUTIONS } from "./caution.ts";
import { CHECKS } from "./check.ts";
import { COMPANY } from "./company.ts";
import { AIR } from "./fault/air.ts";
import { AIR_METERING } from "./fault/air-metering.ts";
import { BOOT } from "./fault/boot.ts";
import { BREAKER } from "./fault/breaker.ts";
import { CARBURETTOR } from "./fault/carburettor.ts";
import { COIL } from "./fault/coil.ts";
import { DISTRIBUTOR } from "./fault/distributor.ts";
import { FUEL } from "./fault/fuel.ts";
import { INJECTOR } from "./fault/injector.ts";
import { LEAD } from "./fault/lead.ts";
import { MECHANICAL } from "./fault/mechanical.ts";
import { NOT_MISFIRE } from "./fault/not-misfire.ts";
import { PLUG } from "./fault/plug.ts";
import { PLUG_DEPOSIT } from "./fault/plug-deposit.ts";
import { SENSING } from "./fault/sensing.ts";
import { SUPPLY } from "./fault/supply.ts";
import { VALVE } from "./fault/valve.ts";
import { FINDINGS } from "./finding.ts";
import { REPAIRS } from "./repair.ts";
import type {
  AccessRow,
  CautionRow,
  CheckRow,
  CompanyRow,
  FaultRow,
  FindingRow,
  Grounds,
  RepairRow,
} from "./schema.ts";
import { SOMETHING_ELSE, TWO_FAULTS_SHARE } from "./something-else.ts";

export interface Knowledge {
  readonly faults: readonly FaultRow[];
  readonly somethingElse: FaultRow;
  readonly findings: ReadonlyMap<string, FindingRow>;
  readonly checks: readonly CheckRow[];
  readonly repairs: readonly RepairRow[];
  readonly access: readonly AccessRow[];
  readonly cautions: readonly CautionRow[];
  readonly company: readonly CompanyRow[];
  /** Part of all complaints that has exactly two unrelated faults, before any finding. */
  readonly twoFaultsShare: number;
  readonly twoFaultsGrounds: Grounds;
}

export const FAULTS: readonly FaultRow[] = [
  ...PLUG,
  ...PLUG_DEPOSIT,
  ...BOOT,
  ...LEAD,
  ...COIL,
  ...SUPPLY,
  ...DISTRIBUTOR,
  ...INJECTOR,
  ...FUEL,
  ...AIR,
  ...AIR_METERING,
  ...VALVE,
  ...MECHANICAL,
  ...SENSING,
  ...NOT_MISFIRE,
  // Last: the page fetches them only for an older engine.
  ...BREAKER,
  ...CARBURETTOR,
];

export const KNOWLEDGE: Knowledge = {
  faults: FAULTS,
  somethingElse: SOMETHING_ELSE,
  findings: new Map(FINDINGS.map((row) => [row.id, row])),
  checks: CHECKS,
  repairs: REPAIRS,
  access: ACCESS_ROWS,
  cautions: CAUTIONS,
  company: COMPANY,
  twoFaultsShare: TWO_FAULTS_SHARE.share,
  twoFaultsGrounds: TWO_FAULTS_SHARE.grounds,
};
