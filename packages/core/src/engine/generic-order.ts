// The firing orders that engines are built with, and how their banks are numbered. Companions are
// never written here: they follow from the order.
import type { CylinderName, EngineProfile, Layout } from "./profile.ts";

/** A firing order in use. */
export interface GenericOrder {
  readonly layout: Layout;
  readonly order: readonly CylinderName[];
  /** Crank degrees from each firing to the next; even when left out. */
  readonly intervals?: readonly number[];
  /** Cylinders of each bank, front to back. Numbered ones are from memory. */
  readonly banks: readonly (readonly CylinderName[])[];
  readonly basis: "published" | "memory";
  /** Where the order was read, or what backs the memory; empty when nothing does. */
  readonly source: string;
  /** Share among engines of this cylinder count, 0 to 1, roughly. All are estimates from memory. */
  readonly commonness: number;
}

/**
 * A row as typed: dashes within an order or a bank, a space between banks, and of the intervals
 * only the part that repeats.
 */
type Row = Omit<GenericOrder, "order" | "banks"> & {
  readonly order: string;
  readonly banks: string;
};

const BY_NUMBER = 'Encyclopedia article "Firing order" as it stood in 2010, list by number';
const BY_BANK = "Engineering Choice, article on firing orders, list by bank";
const ARMY_SIX = "US Army Ordnance Corps, course OD1001, lesson on the crankshaft";
const OPPOSED = "Text on firing orders of opposed aircraft engines, after the FAA handbook";
const EIGHTS = "Enthusiasts' page that compares the firing orders of V8 engines";
const ODD_SIX =
  "W. Holoman, An Introduction to Odd-Fire V6 Engines, 2007, for the kind; intervals from memory";
const UNEVEN = "Trade article on evenly and unevenly firing engines, 2025";

const published = (source: string) => ({ basis: "published", source }) as const;
const memory = (source = "") => ({ basis: "memory", source }) as const;
const inline = (order: string) =>
  ({ layout: "inline", order, banks: order.split("-").sort().join("-") }) as const;
const v = (order: string, banks: string) => ({ layout: "v", order, banks }) as const;
const flat = (order: string, banks: string) => ({ layout: "flat", order, banks }) as const;

const ROWS: readonly Row[] = [
  { ...inline("1-2"), ...memory(), commonness: 0.3 },
  { ...inline("1-2"), intervals: [180, 540], ...memory(), commonness: 0.25 },
  { ...flat("1-2", "1 2"), ...memory(), commonness: 0.2 },
  { ...v("1-2", "1 2"), intervals: [315, 405], ...memory(), commonness: 0.25 },

  { ...inline("1-2-3"), ...published(BY_NUMBER), commonness: 0.45 },
  { ...inline("1-3-2"), ...published(BY_NUMBER), commonness: 0.55 },

  { ...inline("1-3-4-2"), ...published(BY_NUMBER), commonness: 0.89 },
  { ...inline("1-2-4-3"), ...published(BY_NUMBER), commonness: 0.03 },
  { ...inline("1-3-2-4"), intervals: [270, 180, 90, 180], ...published(UNEVEN), commonness: 0.005 },
  { ...flat("1-3-2-4", "1-3 2-4"), ...published(OPPOSED), commonness: 0.04 },
  { ...flat("1-4-2-3", "1-3 2-4"), ...published(OPPOSED), commonness: 0.005 },
  { ...flat("1-4-3-2", "1-2 3-4"), ...memory(), commonness: 0.02 },
  { ...flat("R1-R2-L1-L2", "R1-R2 L1-L2"), ...published(BY_BANK), commonness: 0.01 },

  { ...inline("1-2-4-5-3"), ...published(BY_NUMBER), commonness: 1 },

  { ...inline("1-5-3-6-2-4"), ...published(ARMY_SIX), commonness: 0.33 },
  { ...inline("1-4-2-6-3-5"), ...published(BY_NUMBER), commonness: 0.01 },
  { ...v("1-2-3-4-5-6", "1-3-5 2-4-6"), ...published(BY_NUMBER), commonness: 0.28 },
  { ...v("1-6-5-4-3-2", "1-3-5 2-4-6"), ...published(BY_NUMBER), commonness: 0.1 },
  { ...v("1-4-2-5-3-6", "1-2-3 4-5-6"), ...published(BY_NUMBER), commonness: 0.1 },
  { ...v("1-4-3-6-2-5", "1-2-3 4-5-6"), ...published(BY_NUMBER), commonness: 0.09 },
  { ...v("R1-L1-R2-L2-R3-L3", "R1-R2-R3 L1-L2-L3"), ...published(BY_BANK), commonness: 0.01 },
  { ...v("R1-L2-R2-L3-L1-R3", "R1-R2-R3 L1-L2-L3"), ...published(BY_BANK), commonness: 0.01 },
  {
    ...v("1-6-5-4-3-2", "1-3-5 2-4-6"),
    intervals: [90, 150],
    ...memory(ODD_SIX),
    commonness: 0.01,
  },
  {
    ...v("1-6-5-4-3-2", "1-3-5 2-4-6"),
    intervals: [132, 108],
    ...memory(ODD_SIX),
    commonness: 0.005,
  },
  { ...flat("1-4-5-2-3-6", "1-3-5 2-4-6"), ...published(OPPOSED), commonness: 0.005 },
  { ...flat("1-6-3-2-5-4", "1-3-5 2-4-6"), ...published(OPPOSED), commonness: 0.02 },
  { ...flat("1-6-2-4-3-5", "1-2-3 4-5-6"), ...memory(), commonness: 0.03 },

  { ...v("1-8-4-3-6-5-7-2", "1-3-5-7 2-4-6-8"), ...published(EIGHTS), commonness: 0.45 },
  { ...v("1-8-7-2-6-5-4-3", "1-3-5-7 2-4-6-8"), ...memory(), commonness: 0.15 },
  { ...v("1-3-7-2-6-5-4-8", "1-2-3-4 5-6-7-8"), ...published(EIGHTS), commonness: 0.2 },
  { ...v("1-5-4-2-6-3-7-8", "1-2-3-4 5-6-7-8"), ...published(EIGHTS), commonness: 0.2 },

  {
    ...v("1-10-9-4-3-6-5-8-7-2", "1-3-5-7-9 2-4-6-8-10"),
    ...published(BY_NUMBER),
    commonness: 0.6,
  },
  {
    ...v("1-10-9-4-3-6-5-8-7-2", "1-3-5-7-9 2-4-6-8-10"),
    intervals: [90, 54],
    ...memory(),
    commonness: 0.4,
  },

  {
    ...v("1-7-5-11-3-9-6-12-2-8-4-10", "1-2-3-4-5-6 7-8-9-10-11-12"),
    ...published(BY_NUMBER),
    commonness: 1,
  },
];

/** Every generic firing order, smallest engine first. */
export const GENERIC_ORDERS: readonly GenericOrder[] = ROWS.map((row) => ({
  ...row,
  order: cylinderList(row.order),
  ...(row.intervals ? { intervals: repeated(row.intervals, row.order) } : {}),
  banks: row.banks.split(" ").map(cylinderList),
}));

/**
 * The banks that engines with the profile's firing order have, in the profile's layout when it
 * names one; `undefined` when no such order is known or two layouts share it.
 */
export function genericBanks(profile: EngineProfile): GenericOrder["banks"] | undefined {
  const matching = GENERIC_ORDERS.filter(
    ({ layout, order }) =>
      (profile.layout === undefined || profile.layout === layout) &&
      isSameCycle(profile.firingOrder ?? [], order),
  );
  const [first] = matching;
  return matching.every(({ layout }) => layout === first?.layout) ? first?.banks : undefined;
}

/** True when two firing orders are one, begun at another cylinder. */
function isSameCycle(a: readonly CylinderName[], b: readonly CylinderName[]): boolean {
  const start = a.indexOf(b[0] ?? "");
  return a.length === b.length && b.every((name, i) => name === a[(start + i) % a.length]);
}

function repeated(period: readonly number[], order: string): readonly number[] {
  return cylinderList(order).map((_, i) => period[i % period.length] ?? 0);
}

function cylinderList(text: string): readonly CylinderName[] {
  return text.split("-").map((name) => (/^\d+$/.test(name) ? Number(name) : name));
}
