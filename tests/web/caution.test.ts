// Are the cautions above a question, which wait for no ranking, those of the ranking?
import { FINDINGS, profileById, rank } from "@half-order/core";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cautionsOf } from "../../packages/web/src/state/catalogue.ts";
import { alarmsSince } from "../../packages/web/src/state/mended.ts";

const tern = profileById("demo.tern");
if (!tern) throw new Error("no engine");

/** Answers to questions of the whole engine that hold options, one a question. */
const asked = FINDINGS.filter(
  ({ scope, kind, suits }) =>
    scope === "engine" &&
    ["choice", "presence", "several"].includes(kind) &&
    (!suits || suits.includes(tern.ignition)),
);
const answers = fc
  .subarray(asked, { maxLength: 5 })
  .chain((rows) =>
    fc.tuple(
      ...rows.map(({ id, kind, options }) =>
        fc
          .constantFrom(...Object.keys(options))
          .map((option) => ({ finding: id, answer: kind === "several" ? [option] : option })),
      ),
    ),
  );

describe("the cautions that answers call for", () => {
  it("are known without a ranking, and are the same", () => {
    const alarming = asked.filter(({ options }) => Object.values(options).some((o) => o.caution));
    expect(alarming.length).toBeGreaterThan(3);
    fc.assert(
      fc.property(answers, (given) => {
        expect(cautionsOf(given)).toEqual(rank(tern, given).cautions);
      }),
      { seed: 20261128, numRuns: 40 },
    );
  });

  it("tell of the engine as it is where they were given after its repair", () => {
    const blinking = { finding: "lamp", answer: "blinking", when: "2026-05-02T08:00:00Z" };
    const mended = { repair: "repair.rail", result: "cured" } as const;
    expect(alarmsSince([blinking], [{ ...mended, when: "2026-05-01T08:00:00Z" }])).toBe(true);
    expect(alarmsSince([blinking], [{ ...mended, when: "2026-05-03T08:00:00Z" }])).toBe(false);
    expect(alarmsSince([{ ...blinking, answer: "off" }], [mended])).toBe(false);
  });

  it("are none of a measured figure, and none of an answer that nobody knows", () => {
    expect(cautionsOf([{ finding: "trim.idle", answer: 14.5 }])).toEqual([]);
    expect(cautionsOf([{ finding: "nothing", answer: "yes" }])).toEqual([]);
    expect(cautionsOf([{ finding: "lamp", answer: "blinking" }])).toEqual(["blinking-lamp"]);
  });
});
