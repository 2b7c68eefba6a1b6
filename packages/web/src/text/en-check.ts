// The words of a check: what it takes, and what its results would mean.

export const CHECK = {
  notNow: "Not now",
  check: "Check",
  minutes: (n: number): string => (n === 1 ? "1 minute" : `${n} minutes`),
  tools: {
    none: "bare hands",
    light: "a light",
    "hand tools": "hand tools",
    "spark tester": "a spark tester",
    meter: "a meter",
    "code reader": "a code reader",
    gauge: "a gauge",
    scope: "an oscilloscope",
    "test lamp": "a test lamp",
    "smoke machine": "a smoke machine",
  } as Readonly<Record<string, string>>,
  skills: ["anyone", "a handy person", "a practised hand", "a skilled hand", "a professional"],
  looksAt: (name: string): string => `looks at: ${name}`,
  found: "What did you find?",
  mean: "What a result would mean",
  meanAt: (where: string): string => ` at ${where}`,
  thenFirst: (name: string, chance: string): string => `then first: ${name}, ${chance}`,
};
