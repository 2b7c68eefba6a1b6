// The words of the column of weights.

export const COLUMN = {
  title: (name: string): string => `Why: ${name}`,
  ofPart: (own: string, whole: string): string =>
    `That it failed in this way: ${own}. That the part failed in whatever way: ${whole}.`,
  before: "Before any finding",
  now: "Odds now",
  unit: "dB",
  unitLong: "decibans",
  adding: "Adding up the column …",
  what: "What is a deciban?",
  explain:
    "The column is kept in decibans (dB), steps of belief that simply add up. 10 dB make the odds ten times higher, 3 dB double them, 0 changes nothing, and minus takes away. At 0 dB the odds are even: 5 in 10.",
  finding: "Finding",
  weight: "Weight, dB",
  empty: "No finding speaks yet. This is how often such engines come in with this fault.",
};
