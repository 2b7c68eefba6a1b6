// What should a meter read? Copper grows with heat, so a hot coil is compared at 20 °C; ranges for parts
// whose maker's figures are not at hand.

/** How much the resistance of copper grows for each kelvin above 20 °C, as a share of that at 20 °C
 * (J. H. Dellinger, Bulletin of the Bureau of Standards 7, 1911). */
const COPPER_PER_K = 0.00393;
const REFERENCE_K = 293.15;

/** Where a range comes from. */
export type RangeGrounds = "published" | "from memory";

/** Between which values a sound part reads. */
export interface ResistanceRange {
  readonly ohm: readonly [low: number, high: number];
  readonly grounds: RangeGrounds;
  readonly source?: string;
}

/**
 * Handbook ranges; a service manual goes before them. Cables in ohm a metre, all else in ohm. Cables of
 * carbon and plug resistors do not follow copper with heat.
 */
export const RESISTANCE_RANGES = {
  "primary.distributor": {
    ohm: [0.5, 2],
    grounds: "published",
    source: "collected coil test values",
  },
  "primary.own-coil": { ohm: [0.3, 1], grounds: "published", source: "collected coil test values" },
  "secondary.distributor": {
    ohm: [8e3, 19e3],
    grounds: "published",
    source: "collected coil test values",
  },
  /** Double-ended: tower to tower. */
  "secondary.own-coil": {
    ohm: [8e3, 15e3],
    grounds: "published",
    source: "collected coil test values",
  },
  "cable-metre.carbon": {
    ohm: [10e3, 40e3],
    grounds: "published",
    source: "two consumer pages that cite an engineering society's guideline",
  },
  "cable-metre.wound": { ohm: [500, 5e3], grounds: "from memory" },
  "plug.resistor": {
    ohm: [1e3, 10e3],
    grounds: "published",
    source: "plug makers' bulletins; 5 kΩ is the usual aim",
  },
  "injector.port-high": {
    ohm: [11, 16],
    grounds: "published",
    source: "an injector vendor's and a technician's article",
  },
  "injector.port-low": {
    ohm: [2, 5],
    grounds: "published",
    source: "an injector vendor's article",
  },
  "injector.direct": { ohm: [1, 3], grounds: "from memory" },
  /** Centre electrode to shell; above this the coil loses nothing that matters. */
  "plug.insulation": { ohm: [10e6, Number.POSITIVE_INFINITY], grounds: "from memory" },
} as const satisfies Record<string, ResistanceRange>;

export type ResistancePart = keyof typeof RESISTANCE_RANGES;

/** What a copper winding of a known resistance at 20 °C reads at a temperature, ohm. */
export function copperAt(ohmAt20C: number, temperatureK: number): number {
  return ohmAt20C * growth(temperatureK);
}

/** What a copper winding that was measured at a temperature would read at 20 °C, ohm. */
export function copperAt20C(ohm: number, temperatureK: number): number {
  return ohm / growth(temperatureK);
}

function growth(temperatureK: number): number {
  return 1 + COPPER_PER_K * (temperatureK - REFERENCE_K);
}
