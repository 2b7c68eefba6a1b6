// When it is proved which cylinders miss and nothing else is known, the catalogue's shares times its
// reaches give these parts in 100 (worked out by hand from rounded estimates; from memory, no source).
// They hold for one fault at a time. Tolerance 3 points: the hand calculation has one row for worn
// plugs, one for seats and one for boots, which the catalogue splits into a set and single ones.
import { describe, expect, it } from "vitest";
import { compile } from "../../packages/core/src/compile/compile.ts";
import { profileById } from "../../packages/core/src/engine/profile-library.ts";
import { resolveEngine } from "../../packages/core/src/engine/resolve-engine.ts";
import { posterior } from "../../packages/core/src/inference/posterior.ts";
import { KNOWLEDGE } from "../../packages/core/src/knowledge/knowledge.ts";

const WORN = ["plug.gap-worn", "plug.set-worn"];
const SEAT = ["boot.no-contact", "boot.not-home"];

const PAIR_ON_A_RAIL: [string[], number][] = [
  [["coil.half-dead"], 40],
  [["coil.weak"], 11],
  [["coil.leg-leaks"], 9],
  [WORN, 8],
  [["connector.loose"], 6],
  [["trigger-wire.broken"], 5],
  [["driver.dead"], 4],
  [["coil.housing-cracked"], 3],
  [SEAT, 2],
];

const PAIR_ON_A_PACK: [string[], number][] = [
  [["coil.half-dead"], 28],
  [["lead.open"], 12],
  [WORN, 9],
  [["coil.weak"], 8],
  [["coil.leg-leaks"], 7],
  [["trigger-wire.broken"], 5],
  [["module.failing"], 4],
  [["connector.loose"], 4],
  [["driver.dead"], 4],
  [["coil.housing-cracked"], 4],
];

const SINGLE_ON_A_RAIL: [string[], number][] = [
  [WORN, 19],
  [["boot.leaking"], 8],
  [["injector.clogged"], 7],
  [["coil.leg-leaks"], 6],
  [["well.oil"], 5],
  [SEAT, 4],
  [["valve.leaking"], 4],
  [["plug.flashover"], 4],
  [["intake.runner-leak"], 3],
  [["injector.leaking"], 3],
  [["plug.cracked"], 3],
  [["plug.fouled"], 3],
  [["injector.dead"], 3],
  [["well.water"], 3],
];

const SINGLE_ON_A_PACK: [string[], number][] = [
  [WORN, 18],
  [["lead.leaking"], 11],
  [["lead.open"], 6],
  [["injector.clogged"], 6],
  [["coil.leg-leaks"], 4],
  [["valve.leaking"], 3],
  [["boot.leaking"], 3],
  [["intake.runner-leak"], 3],
  [["plug.flashover"], 3],
  [["tower.corroded"], 3],
  [["well.oil"], 3],
  [["plug.cracked"], 3],
];

/** Parts in 100 by fault type when exactly these cylinders (bit mask) are known to miss. */
function whenMissing(engineId: string, set: number): (types: readonly string[]) => number {
  const profile = profileById(engineId);
  if (!profile) throw new Error(engineId);
  const { model, instances } = compile(resolveEngine(profile), [], KNOWLEDGE);
  const known = (reached: number): number => (reached === set ? 1 : 1e-12);
  const { fault } = posterior(
    { ...model, misfireObservations: [{ likelihood: known, answer: 0 }] },
    { most: 1 },
  );
  return (types) =>
    100 *
    instances.reduce(
      (sum, instance, f) => (types.includes(instance.fault.id) ? sum + (fault[f] as number) : sum),
      0,
    );
}

const COMPANIONS_2_AND_5 = 0b010010;
const CYLINDER_2 = 0b000010;

describe.each([
  ["companions on a rail", "generic.i6.153624.rail", COMPANIONS_2_AND_5, PAIR_ON_A_RAIL],
  ["companions on a pack", "generic.i6.153624.pack", COMPANIONS_2_AND_5, PAIR_ON_A_PACK],
  ["one cylinder on a rail", "generic.i6.153624.rail", CYLINDER_2, SINGLE_ON_A_RAIL],
  ["one cylinder on a pack", "generic.i6.153624.pack", CYLINDER_2, SINGLE_ON_A_PACK],
])("%s, proved to miss", (_, engine, set, expected) => {
  const parts = whenMissing(engine, set);

  it.each(expected)("%j: about %i in 100", (types, percent) => {
    expect(Math.abs(parts(types) - percent)).toBeLessThanOrEqual(3);
  });
});
