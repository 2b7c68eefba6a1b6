// Is an engine without a diagnostic port asked only what can be seen on it?
import { checkProfile, type EngineProfile, FINDINGS, rank } from "@half-order/core";
import { parseCase } from "@half-order/core/wire";
import { beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import { askedOf, firstQuestions } from "../../packages/web/src/state/asked.ts";
import {
  beginCase,
  findings,
  giveAnswer,
  openCase,
  profile,
} from "../../packages/web/src/state/case.ts";
import { questionAfter } from "../../packages/web/src/state/catalogue.ts";
import { olderParts, toggleOlder } from "../../packages/web/src/state/older.ts";
import { hasPort, setPort } from "../../packages/web/src/state/port.ts";
import { emptySketch, profileOf } from "../../packages/web/src/state/sketch.ts";

const known = (): EngineProfile => {
  if (!profile.value) throw new Error("no case is open");
  return profile.value;
};
const throughPort = FINDINGS.filter((row) => row.throughPort).map(({ id }) => id);

beforeEach(() => beginCase("demo.tern"));

describe("an engine without a port", () => {
  it("is asked neither lamp nor codes nor live data, and everything else", () => {
    expect(throughPort).toContain("codes");
    const all = askedOf(known()).map(({ id }) => id);
    expect(all).toEqual(expect.arrayContaining(throughPort));
    setPort(false);
    expect(hasPort.value).toBe(false);
    expect(askedOf(known()).map(({ id }) => id)).toEqual(
      all.filter((id) => !throughPort.includes(id)),
    );
  });

  it("has fewer first questions, each of which leads to the next", () => {
    setPort(false);
    const first = firstQuestions(known());
    expect(first.length).toBeGreaterThan(2);
    expect(first.map(({ id }) => id).filter((id) => throughPort.includes(id))).toEqual([]);
    first.forEach((row, i) => {
      expect(questionAfter(row.id, known())).toBe(first[i + 1]);
    });
  });

  it("keeps its answers, which speak again when it has a port after all", () => {
    giveAnswer("onset", "driving");
    giveAnswer("codes", ["P0302"]);
    const before = rank(known(), findings.value).ranking;
    setPort(false);
    expect(findings.value).toHaveLength(2);
    expect(rank(known(), findings.value).ranking).not.toEqual(before);
    setPort(true);
    expect(known()).not.toHaveProperty("diagnosticPort");
    expect(rank(known(), findings.value).ranking).toEqual(before);
  });

  it("is a case that the command reads", () => {
    setPort(false);
    expect(parseCase(openCase.value?.doc)).toHaveProperty("case.engine.diagnosticPort", false);
  });
});

describe("an older engine", () => {
  it("has a breaker or a carburettor only beside a distributor", () => {
    expect(olderParts("rail")).toEqual([]);
    expect(olderParts("distributor")).toEqual(["switching", "fuelling"]);
    beginCase("demo.plover");
    toggleOlder("switching");
    toggleOlder("fuelling");
    expect(checkProfile(known())).toEqual([]);
    expect(known()).toMatchObject({ switching: "contact-breaker", fuelling: "carburettor" });
    expect(hasPort.value).toBe(false);
    const asked = askedOf(known()).map(({ id }) => id);
    expect(asked).toContain("breaker.dwell");
    expect(asked).not.toContain("injector.tick");
    expect(firstQuestions(known()).map(({ id }) => id)).not.toContain("lamp");
    toggleOlder("switching");
    expect(known()).not.toHaveProperty("switching");
    expect(hasPort.value).toBe(false);
  });

  it("is a later one when it has a port after all", () => {
    beginCase("demo.lapwing");
    setPort(true);
    expect(hasPort.value).toBe(true);
    expect(known()).not.toHaveProperty("fuelling");
  });

  it("can be typed, and forgets its parts with another ignition", () => {
    const sketch = { ...emptySketch, order: "1-3-4-2", cylinders: "4" };
    const older = { ...sketch, older: ["switching", "fuelling"] } as const;
    const typed = profileOf({ ...older, ignition: "distributor" });
    expect(typed).toMatchObject({ switching: "contact-breaker", fuelling: "carburettor" });
    expect(checkProfile(typed)).toEqual([]);
    expect(profileOf(older)).toEqual(profileOf(sketch));
  });
});

describe("an engine that is typed", () => {
  it("has a port unless it is said to have none", () => {
    const sketch = { ...emptySketch, order: "1-3-4-2", cylinders: "4" };
    expect(profileOf(sketch)).not.toHaveProperty("diagnosticPort");
    const without = profileOf({ ...sketch, hasPort: false });
    expect(without).toEqual({ ...profileOf(sketch), diagnosticPort: false });
    expect(checkProfile(without)).toEqual([]);
  });
});

describe("an engine that is chosen anew", () => {
  let choose: typeof import("../../packages/web/src/state/begin.ts")["chooseEngine"];
  let path: typeof import("../../packages/web/src/state/route.ts")["path"];

  beforeAll(async () => {
    // Both read the address of the page as soon as they are there.
    vi.stubGlobal("location", { hash: "" });
    vi.stubGlobal("history", { pushState: () => undefined });
    vi.stubGlobal("requestAnimationFrame", (then: () => void) => setTimeout(then));
    ({ path } = await import("../../packages/web/src/state/route.ts"));
    ({ chooseEngine: choose } = await import("../../packages/web/src/state/begin.ts"));
  });

  it("stays without a port while the case stays, and a new case begins with one", () => {
    setPort(false);
    path.value = ["engine"];
    choose("generic.i4.1342.rail");
    expect(known()).toMatchObject({ id: "generic.i4.1342.rail", diagnosticPort: false });
    path.value = ["pick"];
    choose("generic.i4.1342.rail");
    expect(openCase.value?.doc.engine).toBe("generic.i4.1342.rail");
    expect(hasPort.value).toBe(true);
  });

  it("keeps breaker and carburettor where the other engine has a distributor too", () => {
    beginCase("demo.lapwing");
    path.value = ["engine"];
    choose("generic.i4.1342.distributor");
    expect(known()).toMatchObject({ switching: "contact-breaker", fuelling: "carburettor" });
    path.value = ["engine"];
    choose("generic.i4.1342.rail");
    expect(known()).not.toHaveProperty("switching");
    expect(checkProfile(known())).toEqual([]);
    expect(hasPort.value).toBe(false);
  });

  it("has a port again where the choice itself says so", () => {
    setPort(false);
    path.value = ["sketch", "engine"];
    choose(profileOf({ ...emptySketch, order: "1-3-4-2", cylinders: "4" }), true);
    expect(hasPort.value).toBe(true);
    choose(profileOf({ ...emptySketch, hasPort: false }), true);
    expect(hasPort.value).toBe(false);
  });
});
