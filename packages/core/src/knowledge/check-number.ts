// Is a number that somebody brings in its range, and do its grounds hold together?
import type { Problem } from "../units/problem.ts";
import type { Grounds } from "./schema.ts";

export function problem(code: string, path: string, message: string, hint: string): Problem {
  return { code, path, message, hint };
}

/** A problem unless `least` ≤ value ≤ `most`; a number that is none (NaN) is out of every range. */
export function range(
  value: number,
  least: number,
  most: number,
  path: string,
): readonly Problem[] {
  if (value >= least && value <= most) return [];
  const message = `${value} is not in ${least} to ${most}.`;
  return [problem("out-of-range", path, message, `Write a number from ${least} to ${most}.`)];
}

/** Published means that somebody can look it up. */
export function checkGrounds(grounds: Grounds | undefined, path: string): readonly Problem[] {
  if (!grounds) return [];
  const { basis, source } = grounds;
  if (basis === "published" && !source) {
    const message = "Published, but nothing says where.";
    const hint = 'Write the "source", or another basis: "common practice" or "memory".';
    return [problem("source-missing", `${path}/source`, message, hint)];
  }
  if (basis !== "published" && source !== undefined) {
    const message = `A source is given, but the basis is ${JSON.stringify(basis)}.`;
    const hint = 'Leave the source out, or write "published".';
    return [problem("source-unwanted", `${path}/source`, message, hint)];
  }
  return [];
}
