// Two plugs on one double coil: who sparks, and who gets which share of the voltage?
//
//        ┌──── winding ────┐        one current, so the needs add up:
//      leg A             leg B      gap A + gap B + any break in a leg
//      plug A ── head ── plug B     must stay below what the coil can give
//
// Circuit and outcomes as in trade training texts on waste spark (three plug makers' bulletins agree on
// the series loop and on its polarity). Left out: a live side that fires to ground through the coil's
// own capacitance when the other leg is open.

/** From one end of the winding to ground through its plug. */
export interface Leg {
  /** What its plug needs, V. */
  readonly plugV: number;
  /**
   * - `sound`: the spark must jump the plug
   * - `shorted`: soot, a crack or a leak carries the current past the gap
   * - `open`: cable off, contact burnt, spring lost
   */
  readonly state: "sound" | "shorted" | "open";
  /** Open only: what it takes to arc over the break, V; left out when nothing jumps it. */
  readonly breakV?: number;
}

/** What becomes of a pair of plugs. */
export interface PairSpark {
  /** By leg: true when the plug sparks. */
  readonly sparks: readonly [boolean, boolean];
  /** By leg: part of the voltage that falls on its gap and its break; zeros when no current flows. */
  readonly share: readonly [number, number];
  /** What both legs take together, V; `undefined` when no voltage closes the loop. */
  readonly neededV: number | undefined;
}

/** The sparks of two legs on a coil that can give so many volts. */
export function seriesPair(legs: readonly [Leg, Leg], availableV: number): PairSpark {
  const [a, b] = [legNeed(legs[0]), legNeed(legs[1])];
  if (a === undefined || b === undefined) {
    return { sparks: [false, false], share: [0, 0], neededV: undefined };
  }
  const neededV = a + b;
  const isLit = neededV <= availableV;
  return {
    sparks: [isLit && legs[0].state !== "shorted", isLit && legs[1].state !== "shorted"],
    share: neededV > 0 ? [a / neededV, b / neededV] : [0, 0],
    neededV,
  };
}

function legNeed({ plugV, state, breakV }: Leg): number | undefined {
  switch (state) {
    case "sound":
      return plugV;
    case "shorted":
      return 0;
    case "open":
      return breakV === undefined ? undefined : plugV + breakV;
  }
}
