// A row as a change leaves it. What the change does not name stays, with its grounds; what it names
// brings its own, number by number.
import type {
  CheckChange,
  CheckRow,
  FaultChange,
  FaultRow,
  Grounds,
  GroundsOf,
  RepairChange,
  RepairRow,
  RiskRow,
  SignRow,
  WearRow,
} from "./schema.ts";

type Options = Readonly<Partial<Record<string, number>>>;

/** The row with the change in it; `grounds` stand behind numbers for which the change says nothing. */
export function changedFault(row: FaultRow, change: FaultChange, grounds: Grounds): FaultRow {
  const own = change.grounds ?? grounds;
  const wears = mergedWears(row.wears ?? [], change.wears ?? [], own);
  return {
    ...row,
    name: change.name ?? row.name,
    about: change.about ?? row.about,
    mend: change.mend ?? row.mend,
    firstCheck: change.firstCheck ?? row.firstCheck,
    reach: change.reach ?? row.reach,
    shows: change.shows ?? row.shows,
    risks: mergedRisks(row.risks, change.risks ?? [], own),
    signs: mergedSigns(row.signs, change.signs ?? [], own),
    shares: { ...row.shares, ...change.shares },
    regimes: { ...row.regimes, ...change.regimes },
    ...(wears.length > 0 ? { wears } : {}),
    groundsOf: { ...row.groundsOf, ...groundsOfChange(change, own) },
  };
}

export function changedCheck(row: CheckRow, change: CheckChange, grounds: Grounds): CheckRow {
  if (change.minutes === undefined) return row;
  const groundsOf = { ...row.groundsOf, minutes: change.grounds ?? grounds };
  return { ...row, minutes: change.minutes, groundsOf };
}

export function changedRepair(row: RepairRow, change: RepairChange, grounds: Grounds): RepairRow {
  const own = change.grounds ?? grounds;
  const { minutes = row.minutes, parts = row.parts, works = {} } = change;
  const paths = [
    ...(change.minutes === undefined ? [] : ["minutes"]),
    ...Object.keys(works).map((fault) => `mends.${fault}.works`),
  ];
  return {
    ...row,
    minutes,
    parts,
    mends: row.mends.map((mend) => ({ ...mend, works: works[mend.fault] ?? mend.works })),
    groundsOf: { ...row.groundsOf, ...Object.fromEntries(paths.map((path) => [path, own])) },
  };
}

/** Paths as `provenance` walks them. */
function groundsOfChange(change: FaultChange, own: Grounds): GroundsOf {
  const { shares = {}, reach = {}, regimes = {}, shows } = change;
  const paths = [
    ...Object.keys(shares).map((kind) => `shares.${kind}`),
    ...Object.keys(reach).map((to) => `reach.${to}`),
    ...Object.keys(regimes).map((regime) => `regimes.${regime}`),
    ...(shows === undefined ? [] : ["shows"]),
  ].map((path) => [path, own] as const);
  const risks = (change.risks ?? []).flatMap(({ finding, times, grounds = own }) =>
    Object.keys(times).map((option) => [`risks.${finding}.times.${option}`, grounds] as const),
  );
  const signs = (change.signs ?? []).flatMap(({ finding, gives, grounds = own }) =>
    Object.keys(gives).map((option) => [`signs.${finding}.gives.${option}`, grounds] as const),
  );
  const wears = (change.wears ?? []).map(
    ({ fault, grounds = own }) => [`wears.${fault}.times`, grounds] as const,
  );
  return Object.fromEntries([...paths, ...risks, ...signs, ...wears]);
}

function mergedRisks(
  rows: readonly RiskRow[],
  changes: readonly RiskRow[],
  own: Grounds,
): readonly RiskRow[] {
  return merged(rows, changes, own, "finding", (row, { times }) => ({
    ...row,
    times: joined(row.times, times),
  }));
}

function mergedSigns(
  rows: readonly SignRow[],
  changes: readonly SignRow[],
  own: Grounds,
): readonly SignRow[] {
  return merged(rows, changes, own, "finding", (row, { gives }) => ({
    ...row,
    gives: joined(row.gives, gives),
  }));
}

function mergedWears(
  rows: readonly WearRow[],
  changes: readonly WearRow[],
  own: Grounds,
): readonly WearRow[] {
  return merged(rows, changes, own, "fault", (row, { times }) => ({ ...row, times }));
}

function joined(known: Options, changed: Options): Options {
  return { ...known, ...changed };
}

/** Rows with their changes, then the changes that are about something new. */
function merged<Row extends { readonly grounds?: Grounds }>(
  rows: readonly Row[],
  changes: readonly Row[],
  own: Grounds,
  subject: keyof Row,
  join: (row: Row, change: Row) => Row,
): readonly Row[] {
  const changeOf = new Map(changes.map((change) => [change[subject], change]));
  const known = new Set(rows.map((row) => row[subject]));
  const changed = rows.map((row) => {
    const change = changeOf.get(row[subject]);
    return change ? join(row, change) : row;
  });
  const added = [...changeOf.values()].filter((change) => !known.has(change[subject]));
  return [...changed, ...added.map((change) => ({ ...change, grounds: change.grounds ?? own }))];
}
