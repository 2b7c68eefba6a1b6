// Does a case that cannot be ranked lead to the answers that it hangs on, and to nothing else?
import { type Finding, InputError, type Problem, profileById, rank } from "@half-order/core";
import { describe, expect, it } from "vitest";
import { partedProblems } from "../../packages/web/src/state/wrong-answer.ts";

const tern = profileById("demo.tern");
if (!tern) throw new Error("no engine");
const good: Finding = { finding: "lamp", answer: "steady" };
const wide: Finding = { finding: "plug.gap", answer: 110, cylinder: 2 };
const gone: Finding = { finding: "no.such", answer: "yes" };

/** What the thread hears of a case. */
function problemsOf(findings: readonly Finding[], repairs: readonly { repair: string }[] = []) {
  try {
    rank(tern as NonNullable<typeof tern>, findings, { repairs });
  } catch (error) {
    if (error instanceof InputError) return error.problems;
    throw error;
  }
  return [] as readonly Problem[];
}

describe("a case that cannot be ranked", () => {
  it("hangs on each answer that cannot be used", () => {
    const findings = [wide, good, gone];
    const { answers, others } = partedProblems(problemsOf(findings), tern, findings);
    expect(answers).toEqual([wide, gone]);
    expect(others).toEqual([]);
  });

  it("may hang on a repair, which is no answer", () => {
    const problems = problemsOf([good], [{ repair: "no.such" }]);
    expect(problems).not.toEqual([]);
    expect(partedProblems(problems, tern, [good])).toEqual({ answers: [], others: problems });
  });

  it("hangs on none of its answers where all are sound", () => {
    expect(partedProblems(problemsOf([good]), tern, [good])).toEqual({ answers: [], others: [] });
  });
});
