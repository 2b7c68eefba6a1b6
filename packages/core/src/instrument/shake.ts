// The knowledge with all its weights a little off: how much of the ranking rests on exact numbers?
// Noise in log-odds as in M. Henrion et al., "Why is diagnosis using belief networks insensitive to
// imprecision in probabilities?", UAI 1996 (arXiv 1302.3582); here in natural log-odds.
import { type Shake, shakenMultiplier, shakenProbability } from "../inference/shake.ts";
import type { Knowledge } from "../knowledge/knowledge.ts";
import type { FaultRow, FindingRow, SignRow } from "../knowledge/schema.ts";
import { randomOf } from "../units/random.ts";

/** Any row of numbers by name. */
type Row = object;

/**
 * All shares, multipliers and probabilities moved by normal noise of standard deviation `sigma` in
 * natural log-odds (multipliers: in their logarithm), by seed. Rows that add up to 1 do so again; 0
 * stays 0; no probability comes nearer to 0 or 1 than the floor. Powers (`sharpness` of a choice) and
 * steps of readings are no weights and stay, and so do the tables of codes and counts, which are no
 * part of a knowledge: shake those with `shakenSets` on the compiled model.
 */
export function shakenKnowledge(knowledge: Knowledge, sigma: number, seed: number): Knowledge {
  const shake: Shake = { sigma, random: randomOf(seed) };
  const findings = new Map(
    [...knowledge.findings].map(([id, row]) => [id, shakenFinding(row, shake)]),
  );
  return {
    ...knowledge,
    findings,
    faults: knowledge.faults.map((row) => shakenFault(row, knowledge, shake)),
    somethingElse: shakenFault(knowledge.somethingElse, knowledge, shake),
    twoFaultsShare: shakenProbability(knowledge.twoFaultsShare, shake),
  };
}

function shakenFault(row: FaultRow, { findings }: Knowledge, shake: Shake): FaultRow {
  return {
    ...row,
    shares: each(row.shares, (share) => 1000 * shakenProbability(share / 1000, shake)),
    reach: scaled(row.reach, shake),
    shows: shakenProbability(row.shows, shake),
    regimes: each(row.regimes, (value) =>
      shakenProbability(value, shake),
    ) as unknown as FaultRow["regimes"],
    risks: row.risks.map((risk) => ({
      ...risk,
      times: each(risk.times, (times) => shakenMultiplier(times, shake)),
    })),
    signs: row.signs.map((sign) => shakenSign(sign, findings.get(sign.finding), shake)),
    ...(row.wears
      ? { wears: row.wears.map((w) => ({ ...w, times: shakenMultiplier(w.times, shake) })) }
      : {}),
  };
}

/** In a row about a choice what is left open is a weight like the others. */
function shakenSign(sign: SignRow, finding: FindingRow | undefined, shake: Shake): SignRow {
  if (finding?.kind !== "choice") {
    return { ...sign, gives: each(sign.gives, (chance) => shakenProbability(chance, shake)) };
  }
  const stated = Object.values(sign.gives).reduce<number>((sum, chance) => sum + (chance ?? 0), 0);
  const { open: _, ...gives } = scaled({ ...sign.gives, open: Math.max(0, 1 - stated) }, shake);
  return { ...sign, gives };
}

function shakenFinding(row: FindingRow, shake: Shake): FindingRow {
  const isChoice = row.kind === "choice";
  const chances = Object.fromEntries(
    Object.entries(row.options).map(([option, { chance }]) => [option, chance]),
  );
  const moved = isChoice
    ? scaled(chances, shake)
    : each(chances, (c) => shakenProbability(c, shake));
  const options = Object.fromEntries(
    Object.entries(row.options).map(([option, words]) => [
      option,
      { ...words, chance: moved[option] as number },
    ]),
  );
  return {
    ...row,
    options,
    ...(row.byMisfire ? { byMisfire: shakenClasses(row.byMisfire, shake) } : {}),
    ...(row.byRegime ? { byRegime: shakenRegimes(row.byRegime, shake) } : {}),
    ...(row.byShows ? { byShows: shakenShows(row.byShows, shake) } : {}),
    ...(!isChoice && row.sharpness !== undefined
      ? { sharpness: shakenProbability(row.sharpness, shake) }
      : {}),
  };
}

type ByMisfire = NonNullable<FindingRow["byMisfire"]>;

function shakenClasses(classes: ByMisfire, shake: Shake): ByMisfire {
  return Object.fromEntries(
    Object.entries(classes).map(([name, row]) => [name, scaled(row, shake)]),
  ) as unknown as ByMisfire;
}

type ByRegime = NonNullable<FindingRow["byRegime"]>;

function shakenRegimes(rules: ByRegime, shake: Shake): ByRegime {
  return Object.fromEntries(
    Object.entries(rules).map(([option, rule]) => [
      option,
      { ...rule, times: shakenMultiplier(rule.times ?? 1, shake) },
    ]),
  );
}

type ByShows = NonNullable<FindingRow["byShows"]>;

function shakenShows(rows: ByShows, shake: Shake): ByShows {
  const column = (end: 0 | 1): Record<string, number> =>
    scaled(Object.fromEntries(Object.entries(rows).map(([o, ends]) => [o, ends[end]])), shake);
  const [never, always] = [column(0), column(1)];
  return Object.fromEntries(
    Object.keys(rows).map((o) => [o, [never[o] as number, always[o] as number] as const]),
  );
}

/** Moved one by one, 0 left alone. */
function each(row: Row, move: (value: number) => number): Record<string, number> {
  const entries: [string, number][] = Object.entries(row);
  return Object.fromEntries(entries.map(([key, value]) => [key, value === 0 ? 0 : move(value)]));
}

/** Moved and scaled to add up to what the row added up to. */
function scaled(row: Row, shake: Shake): Record<string, number> {
  const values: number[] = Object.values(row);
  const sum = values.reduce((total, value) => total + value, 0);
  const held = values.filter((value) => value > 0).length;
  const moved = each(row, (value) => (held === 1 ? value : shakenProbability(value, shake)));
  const after = Object.values(moved).reduce((total, value) => total + value, 0);
  return each(moved, (value) => (value * sum) / after);
}
