// Which known words did somebody mean who wrote an unknown one?

/** Known words, the most alike first; those further away than `limit` edits are left out. */
export function nearest(
  word: string,
  known: readonly string[],
  limit: number = Math.max(1, Math.floor(word.length / 3)),
): readonly string[] {
  return known
    .map((candidate) => ({ candidate, edits: edits(fold(word), fold(candidate)) }))
    .filter((entry) => entry.edits <= limit)
    .sort((a, b) => a.edits - b.edits)
    .map((entry) => entry.candidate);
}

/** Capitals, spaces, dots, dashes and underscores are where writers differ most: they count as one. */
function fold(word: string): string {
  return word.toLowerCase().replace(/[\s._-]+/g, "-");
}

/**
 * Letters to insert, drop, change or swap with their neighbour to make `b` of `a` (optimal string
 * alignment; Damerau, Communications of the ACM 7 (1964) 171).
 */
function edits(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = (last[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const drop = (last[j] ?? 0) + 1;
      const insert = (row[j - 1] ?? 0) + 1;
      const isSwap = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const swap = isSwap ? (beforeLast[j - 2] ?? 0) + 1 : Number.POSITIVE_INFINITY;
      row.push(Math.min(change, drop, insert, swap));
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length] ?? 0;
}
