// The works that numbers and methods rest on. Rows cite them by id in their grounds; the rest of the
// code, and docs/how-it-reasons.md, write them as `cite` does.

export interface CitedWork {
  readonly id: string;
  /** How a text names it. */
  readonly cite: string;
  /** Author and title. */
  readonly what: string;
  /** Where it can be looked up. */
  readonly where: string;
  /** What it is used for here. */
  readonly use: string;
}

export const CITED_WORKS: readonly CitedWork[] = [
  {
    id: "good-1985",
    cite: "I. J. Good",
    what: "I. J. Good, Weight of evidence: a brief survey",
    where: "Bayesian Statistics 2, eds. J. M. Bernardo et al., North-Holland 1985",
    use: "Decibans: what a finding adds to the odds of a fault.",
  },
  {
    id: "pearl-1988",
    cite: "Pearl",
    what: "J. Pearl, Probabilistic Reasoning in Intelligent Systems",
    where: "Morgan Kaufmann 1988, the part on noisy-OR",
    use: "Noisy-OR: several causes of one sign, each on its own.",
  },
  {
    id: "jensen-1991",
    cite: "Jensen",
    what: "F. V. Jensen, B. Chamberlain, T. Nordahl, F. Jensen, Analysis in HUGIN of data conflict",
    where: "Uncertainty in Artificial Intelligence 6, Elsevier 1991",
    use: "The conflict measure behind `fit`.",
  },
  {
    id: "damerau-1964",
    cite: "Damerau",
    what: "F. J. Damerau, A technique for computer detection and correction of spelling errors",
    where: "Communications of the ACM 7 (1964), pp. 171–176",
    use: "Which id did somebody mean who wrote an unknown one?",
  },
  {
    id: "iglewicz-1993",
    cite: "B. Iglewicz and D. C. Hoaglin",
    what: "B. Iglewicz, D. C. Hoaglin, How to Detect and Handle Outliers",
    where: "ASQC Quality Press, Milwaukee 1993",
    use: "Modified z-scores: which plug of a set stands apart.",
  },
  {
    id: "de-kleer-2009",
    cite: "J. de Kleer",
    what: "J. de Kleer, Diagnosing multiple persistent and intermittent faults",
    where: "International Joint Conference on Artificial Intelligence 2009",
    use: "How many clean trials until a fault that comes and goes may be called cured.",
  },
];
