// Trouble codes: reading them, and what they tell of the cylinders that really miss.
import {
  CODE_FAMILIES,
  CODES_FROM_MISFIRE,
  type CodeFamily,
  MISFIRE_CODES,
} from "../knowledge/code.ts";
import { randomSet } from "../model/diagnosis-model.ts";
import { bits } from "./pattern.ts";

/** What a list of codes says, cylinders by number as the codes count them (from 1). */
export interface ReadCodes {
  readonly misfire: readonly number[];
  /** P0300: several cylinders, or at random. */
  readonly several: boolean;
  /** Families present, with the cylinders that their codes name. */
  readonly families: ReadonlyMap<string, readonly number[]>;
}

/** Form of a code: letter, 0 to 3, three hexadecimal digits; blanks and lower case are accepted. */
export function normalCode(text: string): string | undefined {
  const code = text.trim().toUpperCase();
  return /^[PCBU][0-3][0-9A-F]{3}$/.test(code) ? code : undefined;
}

/** Sorts codes into misfiring cylinders and families; codes that belong to none are kept out. */
export function readCodes(codes: readonly string[]): ReadCodes {
  const misfire = new Set<number>();
  const families = new Map<string, number[]>();
  let several = false;
  for (const text of codes) {
    const code = normalCode(text);
    if (code === undefined) continue;
    if (code === MISFIRE_CODES.several) several = true;
    if (within(code, `${MISFIRE_CODES.from}-${MISFIRE_CODES.to}`) && isDecimal(code)) {
      misfire.add(decimal(code) - MISFIRE_CODES.minus);
    }
    const family = CODE_FAMILIES.find((row) => row.codes.some((range) => within(code, range)));
    if (!family) continue;
    const cylinders = families.get(family.option) ?? [];
    const cylinder = cylinderOf(code, family);
    families.set(family.option, cylinder === undefined ? cylinders : [...cylinders, cylinder]);
  }
  return { misfire: [...misfire].sort((a, b) => a - b), several, families };
}

function cylinderOf(code: string, family: CodeFamily): number | undefined {
  const rule = family.cylinder?.find((row) => within(code, row.codes));
  if (!rule || !isDecimal(code)) return undefined;
  return Math.floor((decimal(code) - rule.minus) / rule.step) + 1;
}

function within(code: string, range: string): boolean {
  const [from = range, to = from] = range.split("-");
  return code >= from && code <= to;
}

function isDecimal(code: string): boolean {
  return /^[0-9]{3}$/.test(code.slice(2));
}

function decimal(code: string): number {
  return Number(code.slice(2));
}

/**
 * Chance of exactly these misfire codes given the set that really misses. Sums to 1 over all sets of
 * named cylinders with and without P0300.
 *
 * @param named bit mask of the cylinders whose code is stored
 */
export function codesLikelihood(
  cylinders: number,
  named: number,
  several: boolean,
): (set: number) => number {
  const { noise } = CODES_FROM_MISFIRE;
  const count = bits(named);
  const byNoise =
    0.5 * noise.named ** count * (1 - noise.named) ** (cylinders - count) * noise.share;
  return (set) => byNoise + (1 - noise.share) * byRule(cylinders, named, several, set);
}

function byRule(cylinders: number, named: number, several: boolean, set: number): number {
  const rule = CODES_FROM_MISFIRE;
  const count = bits(named);
  const beside = (chance: number): number => (several ? chance : 1 - chance);
  if (set === randomSet(cylinders)) {
    if (count === 0) return several ? rule.random.onlySeveral : rule.random.none;
    const spread =
      count === 1
        ? rule.random.one / cylinders
        : rule.random.several / (cylinders - 1) / choose(cylinders, count);
    return spread * beside(rule.severalBeside.random);
  }
  const missing = bits(set);
  if (missing === 0) {
    if (count === 0) return several ? rule.nothing.onlySeveral : rule.nothing.none;
    return count === 1 ? (rule.nothing.one / cylinders) * beside(rule.severalBeside.one) : 0;
  }
  if (missing === 1) {
    if (count === 0) return several ? rule.one.onlySeveral : rule.one.none;
    if (count > 1) return 0;
    const chance = named === set ? rule.one.own : rule.one.other / (cylinders - 1);
    return chance * beside(rule.severalBeside.one);
  }
  if (count === 0) return several ? rule.set.onlySeveral : rule.set.none;
  if ((named & set) !== named) return 0;
  const chance = named === set ? rule.set.all : rule.set.some / (2 ** missing - 2);
  return chance * beside(rule.severalBeside.set);
}

function choose(n: number, k: number): number {
  let product = 1;
  for (let i = 1; i <= k; i++) product = (product * (n - k + i)) / i;
  return product;
}
