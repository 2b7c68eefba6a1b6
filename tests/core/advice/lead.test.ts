// Does an outcome of a check name what the ranking then shows first: the part, with its chance and its words?
import { describe, expect, it } from "vitest";
import { next } from "../../../packages/core/src/advice/next.ts";
import { profileById } from "../../../packages/core/src/engine/profile-library.ts";
import { rank } from "../../../packages/core/src/explain/rank.ts";
import type { EngineProfile, Finding } from "../../../packages/core/src/index.ts";
import { saysCured } from "../../../packages/core/src/knowledge/made-by-check.ts";
import { partGroups } from "../../../packages/web/src/state/group.ts";
import { sayGroup } from "../../../packages/web/src/text/answer.ts";

const SHAKES: Finding = { finding: "complaint.main", answer: "shakes-at-idle" };
const CASES: readonly (readonly [string, readonly Finding[]])[] = [
  ["generic.i4.1342.distributor", [SHAKES, { finding: "onset", answer: "after-wet" }]],
  ["generic.i4.1342.distributor", [SHAKES, { finding: "codes", answer: ["P0302"] }]],
  ["generic.i4.1342.rail", [SHAKES, { finding: "codes", answer: ["P0302", "P0303"] }]],
  ["generic.i4.1342.coil-per-plug", [SHAKES, { finding: "codes", answer: ["P0303"] }]],
  ["generic.i4.1342.pack", [SHAKES, { finding: "codes", answer: ["P0301"] }]],
  ["demo.tern", [SHAKES, { finding: "codes", answer: ["P0305"] }]],
];
/** The plan looks at its 200 likeliest states: after an answer that was hardly expected the others weigh more. */
const SLACK = 0.1;
/** Parts this close are as likely. */
const TIE = 0.01;

describe.each(CASES)("what leads after a check of %s", (id, findings) => {
  const profile = profileById(id) as EngineProfile;
  const { checks } = next(profile, findings, { maxWork: 0 });
  const told = checks
    .flatMap(({ outcomes }) => outcomes)
    .filter(({ answers, probability }) => answers.length > 0 && probability > 0.03)
    .filter(({ answers }) => !saysCured(answers));

  it("is the first row of the ranking by then, or one as likely, with its chance", () => {
    expect(told.length).toBeGreaterThan(5);
    for (const { answers, leader } of told) {
      const { components } = rank(profile, [...findings, ...answers], { hypotheses: 0 });
      const own = components.find(({ component }) => component === leader?.component);
      const say = JSON.stringify([answers, leader?.name]);
      expect(Math.abs((own?.probability ?? 0) - (leader?.probability ?? 1)), say).toBeLessThan(
        SLACK,
      );
      expect((components[0]?.probability ?? 1) - (own?.probability ?? 0), say).toBeLessThan(TIE);
    }
  });

  it("is said as the page says that row", () => {
    const same = told.filter(({ answers, leader }) => {
      const ranking = rank(profile, [...findings, ...answers], { hypotheses: 0 });
      const [row] = partGroups(ranking);
      return row !== undefined && row.key === leader?.component && sayGroup(row) === leader.name;
    });
    expect(same.length).toBeGreaterThan(0.8 * told.length);
  });
});
