// The words around a list of what is wrong with an input.

export const PROBLEM = {
  found: "What is wrong with this one:",
  at: (path: string): string => `at ${path}`,
  /** Above what is wrong with a case that was weighed. */
  cannotRank: "This case cannot be ranked",
  wrongAnswers: (n: number): string =>
    n === 1
      ? "One answer cannot be true of this engine. Change it, or take it back; all others are kept."
      : `${n} answers cannot be true of this engine. Change them, or take them back; all others are kept.`,
};
