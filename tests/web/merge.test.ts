// Is nothing lost when two tabs change one case?
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mergeDocs } from "../../packages/web/src/state/merge.ts";
import type { CaseDoc } from "../../packages/web/src/state/store.ts";

const base: CaseDoc = {
  halfOrderCase: 1,
  engine: "demo.tern",
  title: "Saloon",
  findings: [
    { finding: "lamp", answer: "off" },
    { finding: "spark", cylinder: 2, answer: "none" },
  ],
};

describe("two changes of one case", () => {
  it("are both kept where they touch different things", () => {
    const ours = { ...base, findings: [...base.findings, { finding: "onset", answer: "driving" }] };
    const theirs = { ...base, title: "Estate", findings: base.findings.slice(0, 1) };
    expect(mergeDocs(base, ours, theirs)).toEqual({
      doc: {
        ...base,
        title: "Estate",
        findings: [
          { finding: "lamp", answer: "off" },
          { finding: "onset", answer: "driving" },
        ],
      },
      clashes: [],
    });
  });

  it("name what both changed differently, and ours holds", () => {
    const ours = { ...base, findings: [{ finding: "lamp", answer: "steady" }] };
    const theirs = {
      ...base,
      findings: [
        { finding: "lamp", answer: "blinking" },
        { finding: "spark", cylinder: 2, answer: "weak" },
      ],
    };
    const merged = mergeDocs(base, ours, theirs);
    expect(merged.clashes).toEqual(["lamp", "spark 2"]);
    expect(merged.doc.findings).toEqual([{ finding: "lamp", answer: "steady" }]);
  });

  it("that are the same but for the moment are no clash", () => {
    const at = (when: string): CaseDoc => ({
      ...base,
      findings: [{ finding: "lamp", answer: "steady", when }],
    });
    const merged = mergeDocs(base, at("2026-05-01T09:00:00Z"), at("2026-05-01T09:00:07Z"));
    expect(merged.clashes).toEqual([]);
  });

  it("keep a repair that was done twice, and fields that this page does not know", () => {
    const done = (when: string) => ({ repair: "repair.plug-set", when });
    const ours = { ...base, repairs: [done("2026-05-01")] };
    const theirs = { ...base, repairs: [done("2026-06-01")], later: { new: true } } as CaseDoc;
    const { doc } = mergeDocs(base, ours, theirs);
    expect(doc.repairs).toEqual([done("2026-05-01"), done("2026-06-01")]);
    expect(doc).toHaveProperty("later", { new: true });
  });
});

describe("any two sets of answers", () => {
  const answers = fc.uniqueArray(
    fc.record({
      finding: fc.constantFrom("lamp", "onset", "trend", "codes", "mist"),
      answer: fc.constantFrom("a", "b"),
    }),
    { selector: ({ finding }) => finding },
  );
  const given = (doc: CaseDoc): ReadonlyMap<string, unknown> =>
    new Map(doc.findings.map(({ finding, answer }) => [finding, answer]));

  it("give each answer that only one side changed, and of clashes ours", () => {
    const property = fc.property(answers, answers, answers, (before, mine, other) => {
      const [was, ours, theirs] = [before, mine, other].map((findings) => ({ ...base, findings }));
      if (!was || !ours || !theirs) throw new Error("three documents");
      const merged = given(mergeDocs(was, ours, theirs).doc);
      for (const finding of ["lamp", "onset", "trend", "codes", "mist"]) {
        const isOurs = given(ours).get(finding) !== given(was).get(finding);
        const expected = given(isOurs ? ours : theirs).get(finding);
        expect(merged.get(finding)).toBe(expected);
      }
    });
    fc.assert(property, { seed: 4711, numRuns: 300 });
  });
});
