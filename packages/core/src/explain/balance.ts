// How a balance sheet of evidence is kept: odds before, what each item added given those above it, odds
// now (D. J. Spiegelhalter & R. P. Knill-Jones 1984; D. Madigan, K. Mosurski & R. Almond, "Graphical
// explanation in belief networks", 1996).

export interface Balance {
  readonly priorDb: number;
  /** By item, in the order given. */
  readonly lines: readonly {
    /** dB it added, given the items before it. */
    readonly weightDb: number;
    /** dB the odds would lose if only this item were withdrawn. */
    readonly withoutDb: number;
  }[];
  readonly posteriorDb: number;
}

/**
 * The sheet of a list of items. `oddsDb` gives the odds in dB when these items are known, a part of the
 * list in its order. The column adds up, whatever the odds are. What withdrawals would do is told by
 * `withdrawnDb`, which may be a faster, rougher `oddsDb`.
 */
export function balance<Item>(
  items: readonly Item[],
  oddsDb: (known: readonly Item[]) => number,
  withdrawnDb: (known: readonly Item[]) => number = oddsDb,
): Balance {
  const priorDb = oddsDb([]);
  const posteriorDb = items.length === 0 ? priorDb : oddsDb(items);
  const all = withdrawnDb === oddsDb ? posteriorDb : withdrawnDb(items);
  let before = priorDb;
  const lines = items.map((_, i) => {
    const after = i === items.length - 1 ? posteriorDb : oddsDb(items.slice(0, i + 1));
    const without = withdrawnDb(items.filter((_item, other) => other !== i));
    const line = { weightDb: after - before, withoutDb: all - without };
    before = after;
    return line;
  });
  return { priorDb, lines, posteriorDb };
}
