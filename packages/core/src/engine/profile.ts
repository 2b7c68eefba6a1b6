// What a user knows of an engine. Cylinders are named as the maker names them; angles, companions and
// firing groups are worked out from the order and are never written down.

/** A cylinder as its maker calls it: a number, or a bank and a number such as "R1". */
export type CylinderName = number | string;

/**
 * How the plugs get their spark.
 * - `distributor`: one coil, a distributor and a cable to each plug
 * - `pack`: double coils in a block, two cables each; both companions fire at once
 * - `rail`: double coils moulded into one rail or cassette that sits on the plugs, one connector
 * - `hybrid`: each double coil sits on one plug and feeds the companion through a cable
 * - `coil-per-plug`: a coil on or near each plug
 */
export type IgnitionKind = "distributor" | "pack" | "rail" | "hybrid" | "coil-per-plug";

export const IGNITION_KINDS = ["distributor", "pack", "rail", "hybrid", "coil-per-plug"] as const;

/** What cuts the current of the coil: electronics, or the contact breaker in the distributor with its condenser. */
export const SWITCHINGS = ["electronic", "contact-breaker"] as const;

export type Switching = (typeof SWITCHINGS)[number];

/** How petrol gets into the air. */
export const FUELLINGS = ["injection", "carburettor"] as const;

export type Fuelling = (typeof FUELLINGS)[number];

/** How an engine is built beside its ignition kind; what is left out is as on most engines. */
export interface Build {
  /** Electronic unless given; a contact breaker sits in a distributor. */
  readonly switching?: Switching;
  /** Injection unless given; a carburettor is known here with a distributor only. */
  readonly fuelling?: Fuelling;
}

export type Layout = "inline" | "v" | "flat";

/** Lowest and highest value that the service manual allows. */
export type Range = readonly [number, number];

/** Figures of the vehicle maker's service manual, SI or the unit in the name; all may be left out. */
export interface Figures {
  readonly plugElectrode?: "nickel" | "platinum" | "double-platinum" | "iridium" | "other";
  readonly plugGapMm?: Range;
  readonly plugThread?: "M8" | "M10" | "M12" | "M14" | "M18";
  readonly plugSeat?: "gasket" | "taper";
  readonly headMetal?: "aluminium" | "iron";
  readonly plugTorqueNm?: Range;
  readonly coilPrimaryOhm?: Range;
  readonly coilSecondaryOhm?: Range;
  readonly injectorOhm?: Range;
  readonly idleRpm?: Range;
  readonly compressionKPa?: Range;
  readonly fuelPressureKPa?: Range;
  readonly serviceKm?: number;
  readonly serviceMonths?: number;
}

/** A plug-in connector of the ignition, and the cylinders whose coils it feeds. */
export interface ConnectorProfile {
  readonly name: string;
  readonly feeds: readonly CylinderName[];
}

/** Something bolted over cylinders that must come off before a hand gets at their plugs. */
export interface CoverProfile {
  /** What to call it, e.g. "inlet manifold". */
  readonly name: string;
  readonly cylinders: readonly CylinderName[];
  /** Minutes to take it off and put it back. */
  readonly minutes: number;
}

/** An engine as its user knows it. Only the cylinder count and the ignition kind must be known. */
export interface EngineProfile extends Build {
  readonly id?: string;
  readonly name?: string;
  /** True for demo engines: nothing about them is real. */
  readonly invented?: boolean;
  readonly cylinders: number;
  readonly layout?: Layout;
  /** Cylinders of each bank in a row from front to back; one bank unless given or implied. */
  readonly banks?: readonly (readonly CylinderName[])[];
  /** Cylinders side by side in the block; worked out from the banks unless given. */
  readonly neighbours?: readonly (readonly [CylinderName, CylinderName])[];
  /** Left out when it is not known: the ranking then weighs all orders that fit. */
  readonly firingOrder?: readonly CylinderName[];
  /** Crank degrees from each firing in the order to the next; adds up to 720. Even unless given. */
  readonly firingIntervals?: readonly number[];
  readonly ignition: IgnitionKind;
  /** Cylinders that each coil fires; worked out from the order unless given. */
  readonly firingGroups?: readonly (readonly CylinderName[])[];
  /** How far from 360° two cylinders on one coil may lie, for makers that pair them anyway. */
  readonly pairingToleranceDeg?: number;
  /** Hybrid only: the cylinders whose plug carries the coil; the first of each pair unless given. */
  readonly coilOn?: readonly CylinderName[];
  readonly connectors?: readonly ConnectorProfile[];
  readonly covers?: readonly CoverProfile[];
  readonly fuel?: "petrol" | "petrol-and-gas" | "alcohol-blend";
  /**
   * False for an engine without on-board diagnosis: no codes, counts or live data can be read. With a contact
   * breaker or a carburettor there is none.
   */
  readonly diagnosticPort?: boolean;
  readonly figures?: Figures;
}
