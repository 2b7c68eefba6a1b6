// A visit to an engine that physics broke: what a rule costs until it runs right.
import { expect, it } from "vitest";
import type { NextRepair } from "../../packages/core/src/advice/advice.ts";
import type { Engine } from "../../packages/core/src/engine/engine.ts";
import { profileById } from "../../packages/core/src/engine/profile-library.ts";
import { resolveEngine } from "../../packages/core/src/engine/resolve-engine.ts";
import { FIXED } from "../../packages/core/src/instrument/simulated-rule.ts";
import { startOfVisit, visit } from "../../packages/core/src/instrument/simulated-visit.ts";
import { simulate } from "../../packages/core/src/physics/simulate.ts";
import { randomOf } from "../../packages/core/src/units/random.ts";

const profile = profileById("generic.i4.1342.rail");
if (!profile) throw new Error("generic.i4.1342.rail is gone");
const engine: Engine = resolveEngine(profile);
const broken = simulate(engine, { fault: "injector.dead" }, randomOf(7));
const start = startOfVisit(engine, broken, {});

const repair = (
  id: string,
  cylinders: NextRepair["cylinders"],
  partsPrice: number,
): NextRepair => ({
  kind: "repair",
  repair: id,
  name: id,
  cylinders,
  opens: [],
  minutes: 10,
  partsPrice,
  cures: 0,
  cautions: [],
});

it("counts every repair, its trial and its parts until one cures", () => {
  const cylinder = engine.names[broken.place.cylinders[0] ?? 0] ?? 1;
  const steps = [repair("repair.plug-set", [], 60), repair("repair.injector-one", [cylinder], 60)];
  // A draw of 0 lets a repair work that can.
  const sure = { ...randomOf(1), uniform: () => 0 };
  const outcome = visit(broken, start, ({ repairs }) => steps[repairs.length], sure);
  // twice 10 minutes and 5 of trial; twice 60 of parts at 25 an hour
  expect(outcome).toEqual({
    isCured: true,
    minutes: 30,
    minutesWithParts: 30 + (120 / 25) * 60,
    checks: 0,
    repairs: 2,
    boughtInVain: 1,
  });
});

it("adds the call when the rule gives up", () => {
  const outcome = visit(broken, start, () => undefined, randomOf(1));
  expect(outcome).toMatchObject({ isCured: false, minutes: 0, minutesWithParts: (450 / 25) * 60 });
});

it("takes a repair elsewhere for no cure, whatever is drawn", () => {
  const cylinder = engine.names[((broken.place.cylinders[0] ?? 0) + 1) % 4] ?? 1;
  const steps = [repair("repair.injector-one", [cylinder], 60)];
  const sure = { ...randomOf(1), uniform: () => 0 };
  const outcome = visit(broken, start, ({ repairs }) => steps[repairs.length], sure);
  expect(outcome).toMatchObject({ isCured: false, repairs: 1, boughtInVain: 1 });
});

it("follows the order of the trade to its end", () => {
  const seen: string[] = [];
  const never = { ...randomOf(1), uniform: () => 0.999999 };
  visit(
    broken,
    start,
    (now) => {
      const step = FIXED(now);
      if (step) seen.push(step.kind === "repair" ? step.repair : step.check);
      return step;
    },
    never,
  );
  expect(seen).toEqual([
    "repair.plug-set",
    "repair.boot-set",
    "repair.rail",
    "repair.injector-one",
    "check.compression",
  ]);
});
