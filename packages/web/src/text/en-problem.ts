// The words around a list of what is wrong with an input.

export const PROBLEM = {
  found: "What is wrong with this one:",
  at: (path: string): string => `at ${path}`,
  /** Above what is wrong with a case that was weighed. */
  cannotRank: "This case cannot be ranked",
};
