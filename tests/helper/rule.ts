// One rule about the knowledge: what must hold, why, and where it need not. An exception that is not
// needed fails, so that none outlives its reason.
import { describe, expect, it } from "vitest";

/** One thing looked at; `breach` says what is wrong with it, if anything is. */
export interface Looked {
  /** Address of what was looked at, e.g. `plug.gap-worn/signs/plug.gap`. */
  readonly at: string;
  readonly breach?: string | undefined;
}

export interface Rule {
  readonly name: string;
  readonly why: string;
  /** Yields everything it looks at, sound or not: a rule that looks at nothing fails. */
  readonly check: () => Iterable<Looked>;
  /** By address: why it may break the rule. */
  readonly exceptions: Readonly<Record<string, string>>;
}

/** Makes a rule a test. */
export function holds(rule: Rule): void {
  describe(rule.name, () => {
    const looked = [...rule.check()];
    const broken = looked.filter(({ breach }) => breach !== undefined);

    it("looks at something", () => {
      expect(looked.length).toBeGreaterThan(0);
    });

    it("holds", () => {
      const breaches = broken
        .filter(({ at }) => !(at in rule.exceptions))
        .map(({ at, breach }) => `${at}: ${breach}`);
      expect(breaches, rule.why).toEqual([]);
    });

    it("needs its exceptions", () => {
      const needed = new Set(broken.map(({ at }) => at));
      const idle = Object.keys(rule.exceptions).filter((at) => !needed.has(at));
      expect(idle, "Take these exceptions out: nothing breaks the rule there.").toEqual([]);
    });
  });
}

/** A sum that should be 1, or what it is instead. */
export function offOne(chances: Iterable<number>): string | undefined {
  let sum = 0;
  for (const chance of chances) sum += chance;
  return Math.abs(sum - 1) < 1e-9 ? undefined : `adds up to ${Number(sum.toFixed(6))}, not to 1`;
}

/** A number that should be a probability, or what it is instead. */
export function offRange(value = Number.NaN): string | undefined {
  return value >= 0 && value <= 1 ? undefined : `${value} is not in 0..1`;
}
