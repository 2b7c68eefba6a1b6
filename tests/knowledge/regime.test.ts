// How hard does a fault show at each moment? And do findings derive from that what they can?
import { KNOWLEDGE } from "../../packages/core/src/index.ts";
import { holds, offRange } from "../helper/rule.ts";

const REGIMES = ["coldStart", "coldIdle", "hotIdle", "cruise", "pull", "wet", "bumps"] as const;

holds({
  name: "every fault states all regimes in 0..1, and shows at least a little in one",
  why: "Answers to `when` follow from these numbers.",
  *check() {
    for (const { id, regimes } of [...KNOWLEDGE.faults, KNOWLEDGE.somethingElse]) {
      for (const regime of REGIMES) {
        yield { at: `${id}/regimes/${regime}`, breach: offRange(regimes[regime]) };
      }
      const most = Math.max(...Object.values(regimes));
      yield { at: `${id}/regimes`, breach: most > 0.1 ? undefined : "never shows" };
    }
  },
  exceptions: {},
});

holds({
  name: "what follows from regimes, or from how often a fault shows, covers every option",
  why: "An option without a rule would get no chance from any fault.",
  *check() {
    for (const { id, options, byRegime, byShows } of KNOWLEDGE.findings.values()) {
      for (const rule of [byRegime, byShows]) {
        if (!rule) continue;
        const open = Object.keys(options).filter((option) => !(option in rule));
        const stray = Object.keys(rule).filter((option) => !(option in options));
        const off = [...open, ...stray].join(", ");
        yield { at: id, breach: off ? `does not fit: ${off}` : undefined };
      }
    }
  },
  exceptions: {},
});

holds({
  name: "byShows adds up to 1 for a fault that never shows and for one that always does",
  why: "Between the two it is linear, so it then adds up everywhere.",
  *check() {
    for (const { id, byShows } of KNOWLEDGE.findings.values()) {
      if (!byShows) continue;
      for (const end of [0, 1] as const) {
        const sum = Object.values(byShows).reduce((total, row) => total + row[end], 0);
        const breach = Math.abs(sum - 1) < 1e-9 ? undefined : `adds up to ${sum}`;
        yield { at: `${id}/byShows/${end}`, breach };
      }
    }
  },
  exceptions: {},
});
