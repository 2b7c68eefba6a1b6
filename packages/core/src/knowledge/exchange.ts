// Where does an exchange of parts tell anything? Only at a cylinder that misses: elsewhere nothing can move.
import type { CheckRow, FindingRow, Grounds } from "./schema.ts";

export const EXCHANGE: { readonly leastMisses: number; readonly grounds: Grounds } = {
  /** From this belief on that a cylinder misses, its part is worth exchanging: more likely than not. */
  leastMisses: 0.5,
  grounds: { basis: "common practice", confidence: "high" },
};

/** True of an answer to an exchange of like parts. */
export function isExchange({ travels }: Pick<FindingRow, "travels">): boolean {
  return travels !== undefined;
}

/** True of a check that is made to exchange a part, not to look at one and exchange it by the way. */
export function exchangesFirst(
  { yields: [first] }: Pick<CheckRow, "yields">,
  rowOf: (finding: string) => FindingRow | undefined,
): boolean {
  const row = first === undefined ? undefined : rowOf(first);
  return row !== undefined && isExchange(row);
}
