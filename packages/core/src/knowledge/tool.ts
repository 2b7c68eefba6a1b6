// What does a hand need beside itself, and what did earlier cases call it?

/** Things that nobody owns together each have a word of their own; roughly from least to most equipment. */
export const TOOLS = [
  "none",
  "light",
  "hand tools",
  "spark tester",
  "test lamp",
  "meter",
  "code reader",
  "feeler gauge",
  "torque wrench",
  "timing light",
  "compression gauge",
  "vacuum gauge",
  "borescope",
  "fuel pressure gauge",
  "cooling system pump",
  "exhaust gas tester",
  "leak-down tester",
  "dial gauge",
  "smoke machine",
  "scope",
  "spare coils",
] as const;

export type Tool = (typeof TOOLS)[number];

/** Words that stood for several tools in earlier cases, which still open: by word, all that it stood for. */
export const FORMER_TOOLS = {
  gauge: [
    "feeler gauge",
    "timing light",
    "compression gauge",
    "vacuum gauge",
    "borescope",
    "fuel pressure gauge",
    "cooling system pump",
    "exhaust gas tester",
    "leak-down tester",
    "dial gauge",
  ],
} as const satisfies Readonly<Record<string, readonly Tool[]>>;

export type FormerTool = keyof typeof FORMER_TOOLS;
