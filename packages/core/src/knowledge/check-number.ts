// Is a number that somebody brings in its range, and do its grounds hold together?
import { nearest } from "../units/nearest.ts";
import type { Problem } from "../units/problem.ts";
import type { Grounds } from "./schema.ts";

/** The longest that a step may take, minutes. */
export const MOST_MINUTES = 1440;
/** Two words or more joined by dots, as the tables write them. */
export const DOTTED = /^[a-z0-9]+(?:-[a-z0-9]+)*(?:\.[a-z0-9]+(?:-[a-z0-9]+)*)+$/;

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

/** What is named does not exist; the last word of `what` names the problem. */
export function unknown(what: string, id: string, path: string, known: readonly string[]): Problem {
  const near = nearest(id, known, Number.POSITIVE_INFINITY).slice(0, 2);
  const hint = `Did you mean ${near.map((name) => JSON.stringify(name)).join(" or ")}?`;
  const code = `${what.split(" ").at(-1)}-unknown`;
  return problem(code, path, `There is no ${what} ${JSON.stringify(id)}.`, hint);
}

export function groundless(what: string, path: string): Problem {
  const hint = 'Write {"basis": "common practice", "confidence": "low"}, or what it rests on.';
  return problem("grounds-missing", path, `A new ${what} needs grounds for its numbers.`, hint);
}
