// Misfire codes and cylinders; codes as people type them.
import { type Engine, MISFIRE_CODES } from "@half-order/core";

const DIGITS = MISFIRE_CODES.from.length - 1;
const LETTER = MISFIRE_CODES.from.slice(0, 1);

/** The misfire code of a cylinder by its place in the counting; `undefined` beyond the last code. */
export function codeOf(cylinder: number): string | undefined {
  const number = String(cylinder + 1 + MISFIRE_CODES.minus).padStart(DIGITS, "0");
  const code = `${LETTER}${number}`;
  return code >= MISFIRE_CODES.from && code <= MISFIRE_CODES.to ? code : undefined;
}

/** The cylinder index that a misfire code names on this engine. */
export function cylinderOf(code: string, engine: Engine): number | undefined {
  const index = engine.names.findIndex((_, c) => codeOf(c) === code);
  return index < 0 ? undefined : index;
}

export interface TypedCodes {
  readonly codes: readonly string[];
  readonly wrong: readonly string[];
}

/** Takes typed words apart: codes in capitals, and words that are no code. */
export function readTyped(text: string): TypedCodes {
  const words = text
    .toUpperCase()
    .split(/[\s,;]+/)
    .filter(Boolean);
  const isCode = (word: string): boolean => /^[PCBU][0-3][0-9A-F]{3}$/.test(word);
  return { codes: words.filter(isCode), wrong: words.filter((word) => !isCode(word)) };
}
