// Does every question of two cases count once, as a difference or as alike, whichever case stands first?
import {
  type Answer,
  FINDINGS,
  type Finding,
  type FindingRow,
  profileById,
  resolveEngine,
} from "@half-order/core";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { atWhole, compared } from "../../packages/web/src/state/compare.ts";

const answer: fc.Arbitrary<Answer> = fc.oneof(
  fc.constantFrom("yes", "no"),
  fc.integer({ min: 0, max: 3 }),
  fc.uniqueArray(fc.constantFrom("P0301", "P0302", "P0171")),
  fc.dictionary(fc.constantFrom("1", "2"), fc.integer({ min: 0, max: 2 })),
);

const finding: fc.Arbitrary<Finding> = fc
  .record({
    finding: fc.constantFrom("lamp", "codes", "spark"),
    answer,
    cylinder: fc.option(fc.constantFrom(1, 2, "L1"), { nil: undefined }),
  })
  .map(({ cylinder, ...given }) => (cylinder === undefined ? given : { ...given, cylinder }));

/** As a case holds them: no question is answered twice. */
const findings = fc.uniqueArray(finding, { selector: questionOf, maxLength: 8 });

function questionOf({ finding, cylinder }: Pick<Finding, "finding" | "cylinder">): string {
  return `${finding} ${cylinder ?? ""}`;
}

describe("two cases side by side", () => {
  it("are alike in everything where they are the same, in whatever order it was answered", () => {
    fc.assert(
      fc.property(findings, fc.infiniteStream(fc.nat()), (given, numbers) => {
        const shuffled = given
          .map((each) => [numbers.next().value as number, each] as const)
          .sort(([a], [b]) => a - b)
          .map(([, each]) => each);
        expect(compared(given, shuffled)).toEqual({ differences: [], alike: given.length });
      }),
    );
  });

  it("have each question once: as a difference with both answers, or counted as alike", () => {
    fc.assert(
      fc.property(findings, findings, (a, b) => {
        const { differences, alike } = compared(a, b);
        const all = new Set([...a, ...b].map(questionOf));
        expect(differences.length + alike).toBe(all.size);
        expect(new Set(differences.map(questionOf)).size).toBe(differences.length);
        const of = (given: readonly Finding[], key: string): Answer | undefined =>
          given.find((each) => questionOf(each) === key)?.answer;
        for (const each of differences) {
          const key = questionOf(each);
          expect(each.answers).toEqual([of(a, key), of(b, key)]);
        }
      }),
    );
  });

  it("differ in the same the other way round", () => {
    fc.assert(
      fc.property(findings, findings, (a, b) => {
        const [there, back] = [compared(a, b), compared(b, a)];
        expect(back.alike).toBe(there.alike);
        const turned = back.differences.map(({ answers: [own, other], ...of }) => ({
          ...of,
          answers: [other, own],
        }));
        expect(turned).toHaveLength(there.differences.length);
        expect(turned).toEqual(expect.arrayContaining([...there.differences]));
      }),
    );
  });

  it("do not differ by the order of codes, options or counts, and by nothing but the last answer", () => {
    const [one, two] = [
      [{ finding: "codes", answer: ["P0301", "P0302"] }],
      [{ finding: "codes", answer: ["P0302", "P0301"] }],
    ];
    expect(compared(one, two).differences).toEqual([]);
    const counts = [
      { 1: 5, 2: 0 },
      Object.fromEntries([
        ["2", 0],
        ["1", 5],
      ]),
    ];
    const [a, b] = counts.map((answer) => [{ finding: "counts", answer }]);
    expect(compared(a ?? [], b ?? []).differences).toEqual([]);
    const changed = [
      { finding: "lamp", answer: "off" },
      { finding: "lamp", answer: "steady" },
    ];
    expect(compared(changed, [{ finding: "lamp", answer: "steady" }]).alike).toBe(1);
  });
});

describe("a thing that serves the whole engine", () => {
  const rowOf = (id: string): FindingRow | undefined => FINDINGS.find((row) => row.id === id);
  const connector = (FINDINGS as readonly FindingRow[]).find(({ scope }) => scope === "connector");
  const engineOf = (id: string) => {
    const profile = profileById(id);
    if (!profile) throw new Error(`no profile ${id}`);
    return resolveEngine(profile);
  };
  if (!connector) throw new Error("no finding of a connector");
  const noted = [1, 4].map((cylinder) => [{ finding: connector.id, answer: "x", cylinder }]);

  it("has no cylinder, and is one question at whichever it was noted", () => {
    const rail = engineOf("generic.i4.1342.rail");
    const [a = [], b = []] = noted.map((given) => atWhole(given, rowOf, rail));
    expect(a).toEqual([{ finding: connector.id, answer: "x" }]);
    expect(compared(a, b)).toEqual({ differences: [], alike: 1 });
  });

  it("keeps its cylinder where each has its own, and where this page does not know the question", () => {
    const single = engineOf("generic.i4.1342.coil-per-plug");
    const [a = []] = noted;
    expect(atWhole(a, rowOf, single)).toEqual(a);
    const unknown = [{ finding: "from.elsewhere", answer: "x", cylinder: 1 }];
    expect(atWhole(unknown, rowOf, single)).toEqual(unknown);
  });
});
