// What a look may show, given what is wrong: a chance, and the same one that the ranking reckons with.
import { describe, expect, it } from "vitest";
import { outcomesOf } from "../../../packages/core/src/advice/look.ts";
import { prospectFor } from "../../../packages/core/src/advice/next.ts";
import type { Outlook } from "../../../packages/core/src/advice/outlook.ts";
import { KNOWLEDGE, profileById } from "../../../packages/core/src/index.ts";

const rail = profileById("generic.i4.1342.rail");
const row = KNOWLEDGE.findings.get("injector.tick");
const dead = KNOWLEDGE.faults.find(({ id }) => id === "injector.dead");
if (!rail || !row || !dead) throw new Error("nobody listens to injectors");
const prospect = prospectFor(rail, [{ finding: "codes", answer: ["P0303"] }], {});
const [{ instances, states }] = prospect.outlooks as readonly [Outlook];
const byMisfire = row.byMisfire as Readonly<Record<string, Readonly<Record<string, number>>>>;
const usual = byMisfire["hit"]?.["silent"] ?? Number.NaN;

/** Chance of silence at cylinder 3 where one fault alone is present there, and it misses. */
function silentGiven(fault: string): number {
  const outcomes = outcomesOf(prospect, { row: row as NonNullable<typeof row>, cylinder: 3 });
  const silent = outcomes.find(({ answers }) => answers[0]?.answer === "silent");
  const at = states.findIndex(({ faults, set }) => {
    const only = faults.length === 1 ? instances[faults[0] as number] : undefined;
    return only?.fault.id === fault && only.place.cylinders.includes(2) && set === 0b100;
  });
  return silent?.chance[at] ?? Number.NaN;
}

describe("a look that depends on which cylinders miss", () => {
  it("shows what the fault states, as often as it shows, and says it once", () => {
    const sign = dead.signs.find(({ finding }) => finding === "injector.tick");
    const stated = sign?.gives["silent"] ?? Number.NaN;
    const expected = dead.shows * stated + (1 - dead.shows) * usual;
    expect(silentGiven("injector.dead")).toBeCloseTo(expected, 2);
  });

  it("shows what is usual at a dead cylinder where the fault states nothing", () => {
    expect(silentGiven("valve.leaking")).toBeCloseTo(usual, 3);
  });
});
