// The words of what is said of driving once a repair seems to have cured.

export const REPAIRED = {
  unproven: "It runs right since the repair. Drive only to prove it.",
  toProof: "What must be seen first",
  proven: (drives: number): string =>
    drives === 1
      ? "A clean drive has proven the repair."
      : `${drives} clean drives have proven the repair.`,
  provenMore: "That is as sure as drives can make it. Look again when anything comes back.",
  seeProof: "To the proof, and to close the case",
};
