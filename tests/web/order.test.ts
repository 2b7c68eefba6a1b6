// While the firing order is not known, is the one that is drawn told with its own chance?
import { candidateEngines, type EngineProfile, profileById, REPAIRS, rank } from "@half-order/core";
import { describe, expect, it } from "vitest";
import { mendedLines } from "../../packages/web/src/hand-over/mended.ts";
import { drawnOrder, orderOf } from "../../packages/web/src/state/order.ts";

const vague: EngineProfile = { cylinders: 6, layout: "v", ignition: "rail" };
const ranking = rank(vague, []);
const engines = candidateEngines(vague).map(({ engine }) => engine);

describe("an engine whose firing order is not known", () => {
  it("is drawn by one of its candidates, each with its chance", () => {
    expect(engines.length).toBeGreaterThan(1);
    for (const engine of engines) {
      const order = drawnOrder(ranking, engine);
      expect(order?.firingOrder).toEqual(orderOf(engine));
      expect(order?.probability).toBeGreaterThan(0);
    }
  });

  it("says of a coil only the cylinder that was named, for nobody knows who shares it", () => {
    const [engine] = engines;
    if (!engine) throw new Error("no engine");
    const row = REPAIRS.find(({ at, name }) => at === "coil" && name.includes("{at}"));
    const repairs = [{ repair: row?.id ?? "", cylinder: 2 }];
    const doc = { halfOrderCase: 1 as const, engine: vague, findings: [], repairs };
    const [flat] = mendedLines(doc, engine);
    const [careful] = mendedLines(doc, engine, true);
    expect(flat?.asked).toMatch(/2 and \d/);
    expect(careful?.asked).toMatch(/2/);
    expect(careful?.asked).not.toMatch(/and \d/);
  });
});

describe("an engine whose firing order is known", () => {
  it("has no chances of orders", () => {
    const known = profileById("demo.tern") as EngineProfile;
    const [candidate] = candidateEngines(known);
    if (!candidate) throw new Error("no engine");
    expect(drawnOrder(rank(known, []), candidate.engine)).toBeUndefined();
  });
});
