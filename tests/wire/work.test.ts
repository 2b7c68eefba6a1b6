// Does a case take along the work beside finding and mending, and say what is wrong with it at its place?
import { parseCase, type WorkBook } from "@half-order/core/wire";
import { describe, expect, it } from "vitest";

const WHEN = "2026-05-01T09:30:00Z";

/** Every field there is: a new one must be added here before this compiles. */
const work: Required<WorkBook> = {
  open: ["access.rail@engine"],
  spent: [
    { step: "check.spark 2", minutes: 15, shownBy: { finding: "spark", cylinder: 2 }, when: WHEN },
    { step: "repair.rail", minutes: 40, shownBy: { when: WHEN }, when: WHEN },
  ],
  ticks: [{ list: "repair.rail", line: "connector.click", when: WHEN }],
  drives: [{ of: WHEN, misfire: "none", isCodeBack: true, when: "2026-05-01T18:00:00Z" }],
};

const withWork = (value: unknown): unknown => ({ engine: "demo.tern", findings: [], work: value });
const [drive] = work.drives;

describe("the work book of a case", () => {
  it("comes out as it went in, and may be empty or missing", () => {
    expect(parseCase(withWork(work))).toMatchObject({ case: { work } });
    expect(parseCase(withWork({}))).toMatchObject({ case: { work: {} } });
    expect(parseCase({ engine: "demo.tern", findings: [] })).not.toHaveProperty("problems");
  });

  it.each([
    [[], "/work"],
    [{ ...work, open: [5] }, "/work/open/0"],
    [{ ...work, ticks: [{ list: "repair.rail" }] }, "/work/ticks/0/line"],
    [{ ...work, drives: [{ ...drive, misfire: "some" }] }, "/work/drives/0/misfire"],
    [{ ...work, drives: [{ ...drive, when: undefined }] }, "/work/drives/0/when"],
    [{ ...work, spent: [{ ...work.spent[0], minutes: -1 }] }, "/work/spent/0/minutes"],
    [{ ...work, spent: [{ ...work.spent[0], shownBy: {} }] }, "/work/spent/0/shownBy"],
    [{ ...work, paid: 5 }, "/work/paid"],
  ])("%j is refused at %s", (value, path) => {
    const reading = parseCase(JSON.parse(JSON.stringify(withWork(value))));
    const paths = "problems" in reading ? reading.problems.map((problem) => problem.path) : [];
    expect(paths.some((at) => at.startsWith(path))).toBe(true);
    expect(paths.every((at) => at.startsWith("/work"))).toBe(true);
  });
});
