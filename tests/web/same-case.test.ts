// Is a case that comes again known to be the one that is here?
import { describe, expect, it } from "vitest";
import { sameCase } from "../../packages/web/src/hand-over/same-case.ts";
import type { CaseDoc, KeptCase } from "../../packages/web/src/state/store.ts";

const DOC: CaseDoc = {
  halfOrderCase: 1,
  engine: "demo.tern",
  title: "Hill road",
  findings: [
    { finding: "lamp", answer: "steady" },
    { finding: "codes", answer: ["P0302", "P0305"] },
  ],
};
const kept = (doc: CaseDoc, id = "a"): KeptCase => ({ id, changed: 1, doc });

describe("a case that comes again", () => {
  it("is the one that holds the same, in whatever order its fields stand", () => {
    const turned = {
      title: DOC.title,
      findings: DOC.findings.map(({ finding, answer }) => ({ answer, finding })),
      engine: DOC.engine,
      halfOrderCase: 1,
    } as CaseDoc;
    expect(sameCase(turned, [kept({ ...DOC, title: "Valley" }, "b"), kept(DOC)])?.id).toBe("a");
  });

  it.each<readonly [string, CaseDoc]>([
    ["a name", { ...DOC, title: "Hill" }],
    ["an answer", { ...DOC, findings: DOC.findings.slice(1) }],
    ["the order of the answers", { ...DOC, findings: [...DOC.findings].reverse() }],
    ["a repair", { ...DOC, repairs: [{ repair: "repair.rail" }] }],
  ])("is another one once %s was changed", (_, changed) => {
    expect(sameCase(DOC, [kept(changed)])).toBeUndefined();
  });
});
