// Does a tap on the picture mean what the eye sees there?
import { type EngineProfile, type IgnitionKind, resolveEngine } from "@half-order/core";
import { describe, expect, it } from "vitest";
import { HYBRID_PAIRS } from "../../packages/web/src/diagram/ignition.tsx";
import { facts } from "../../packages/web/src/state/facts.ts";
import { meantBy } from "../../packages/web/src/state/tap.ts";
import { placesOf } from "../../packages/web/src/state/view.ts";
import { think } from "../../packages/web/src/thread.ts";

const engineOf = (ignition: IgnitionKind, firingOrder = [1, 3, 4, 2]) =>
  resolveEngine({ cylinders: firingOrder.length, ignition, firingOrder } satisfies EngineProfile);

describe("a tap", () => {
  const engine = engineOf("rail");

  it("on a disc means all that the cylinder has of its own", () => {
    expect(meantBy(["cylinder 3", "leg 3"], engine)).toEqual(["cylinder 3", "leg 3", "lead 3"]);
  });

  it("on a coil means that coil, whatever lies beneath", () => {
    expect(meantBy(["coil 1+4", "leg 1"], engine)).toEqual(["coil 1+4"]);
  });

  it("where the coils cross means any of them, or the connector that feeds them", () => {
    expect(meantBy(["coil 2+3", "coil 1+4"], engine)).toEqual([
      "coil 2+3",
      "coil 1+4",
      "connector 1+2+3+4",
    ]);
  });

  it("on the ring of the hub means the connector, and on a spoke the leg", () => {
    expect(meantBy(["connector 1+2+3+4", "leg 1"], engine)).toEqual(["connector 1+2+3+4"]);
    expect(meantBy(["leg 2"], engine)).toEqual(["leg 2"]);
  });
});

describe("the hub of a distributor", () => {
  it("shows the faults of the parts that only a distributor has", () => {
    const engine = engineOf("distributor");
    const { ranking, facts: told } = think({ profile: engine.profile, findings: [], repairs: [] });
    if (!ranking || !told) throw new Error("no ranking");
    facts.value = told;
    const atHub = ranking.ranking.filter((ranked) =>
      placesOf(ranked, engine).includes("connector 1+2+3+4"),
    );
    const names = atHub.map(({ name }) => name).join("\n");
    expect(names).toMatch(/Rotor/);
    expect(names).toMatch(/Distributor cap/);
    expect(names).not.toMatch(/Fuel|Injector|Coil driver/);
  });
});

describe("the sketch of a hybrid", () => {
  it("leads each cable to the companion of the plug under its coil", () => {
    const engine = engineOf("hybrid");
    for (const [carrier, fed] of HYBRID_PAIRS) expect(engine.companions[carrier]).toBe(fed);
  });
});
