// What follows from the answers so far: the part that the foot names, and the engine that is drawn?
import type { CylinderName, Engine, EngineProfile, Finding } from "@half-order/core";
import { beforeEach, describe, expect, it, vi } from "vitest";
import "fake-indexeddb/auto";
import {
  beginCase,
  closeAsMended,
  engines,
  findings,
  giveAnswer,
  profile,
  reopen,
} from "../../packages/web/src/state/case.ts";
import { ranking } from "../../packages/web/src/state/thinking.ts";
import { clearView, drawn, drawnIndex, soFar } from "../../packages/web/src/state/view.ts";
import { sayGroup } from "../../packages/web/src/text/answer.ts";
import { think } from "../../packages/web/src/thread.ts";

// A drawing follows with the next frame; here there is none.
vi.stubGlobal("requestAnimationFrame", (then: () => void) => setTimeout(then));

beforeEach(() => beginCase("demo.tern"));

function weigh(): void {
  if (!profile.value) throw new Error("no engine");
  const question = { profile: profile.value, findings: findings.value, repairs: [] };
  ranking.value = think(question).ranking;
}

describe("what is likely so far", () => {
  it("is nothing before any answer, and nothing while every cylinder is as likely", () => {
    weigh();
    expect(soFar.value).toBeUndefined();
    giveAnswer("lamp", "blinking");
    weigh();
    expect(soFar.value).toBeUndefined();
  });

  it("is the likeliest part, with its own chance, once codes have named cylinders, and nothing once it is mended", () => {
    giveAnswer("codes", ["P0302", "P0305"]);
    weigh();
    expect(soFar.value?.places).toEqual([[2, 5]]);
    // A part that may have failed in several ways: neither one way nor the chance of one stands for it.
    const [likeliest] = ranking.value?.components ?? [];
    expect(soFar.value?.faults.length).toBeGreaterThan(1);
    expect(soFar.value).toMatchObject({ probability: likeliest?.probability });
    expect(soFar.value && sayGroup(soFar.value)).toBe("Coil of 2 and 5");
    closeAsMended();
    expect(soFar.value).toBeUndefined();
    reopen();
    expect(soFar.value?.places).toEqual([[2, 5]]);
  });
});

describe("the engine that is drawn while its order is not known", () => {
  const known: EngineProfile = { cylinders: 8, layout: "v", ignition: "pack" };
  const codes: Finding = { finding: "codes", answer: ["P0303", "P0305"] };

  it("has the likeliest order after the answers, until one is chosen", () => {
    beginCase(known);
    const told = think({ profile: known, findings: [codes], repairs: [] }).ranking;
    const orders = told?.orders ?? [];
    const named = ({ order, names }: Engine): readonly CylinderName[] =>
      order.map((c) => names[c] as CylinderName);
    const [common] = engines.value;
    expect(named(common as Engine)).not.toEqual(orders[0]?.firingOrder);
    ranking.value = told;
    expect(named(drawn.value as Engine)).toEqual(orders[0]?.firingOrder);
    drawnIndex.value = 0;
    expect(drawn.value).toBe(common);
    clearView();
    expect(named(drawn.value as Engine)).toEqual(orders[0]?.firingOrder);
    ranking.value = undefined;
    expect(drawn.value).toBe(common);
  });
});
