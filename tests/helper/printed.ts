// Numbers as a source prints them: text, so that it is known how many digits they have.
import { expect } from "vitest";

/** Rounding of double precision; printed digits are far coarser. */
const SLACK = 1e-13;

/** A printed number and half a unit of its last digit; a fraction or a whole number is exact. */
export function printed(text: string): { readonly value: number; readonly within: number } {
  const [over = "", under] = text.split("/");
  if (under !== undefined) return { value: Number(over) / Number(under), within: SLACK };
  const [digits = "", exponent = "0"] = text.split("e");
  const decimals = (digits.split(".")[1] ?? "").length - Number(exponent);
  return { value: Number(text), within: SLACK + (decimals === 0 ? 0 : 0.5 * 10 ** -decimals) };
}

export function expectPrinted(value: number, text: string): void {
  const expected = printed(text);
  expect(Math.abs(value - expected.value)).toBeLessThanOrEqual(expected.within);
}
