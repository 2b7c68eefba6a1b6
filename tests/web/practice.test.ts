// Practising on the page: does a search survive its address, and does the thread say what the library says?
import { profileById } from "@half-order/core";
import { comparePaths, hideFault, type PracticeAct, practise } from "@half-order/core/instrument";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  readAddress,
  readSteps,
  type Steps,
  writeSteps,
} from "../../packages/web/src/practice/address.ts";
import { workOut } from "../../packages/web/src/practice/thread-work.ts";
import { sayCost, sayStep } from "../../packages/web/src/text/en-practice.ts";
import { PRACTICE_SCRIPT } from "../../packages/web/src/thread-practice.ts";

const profile = profileById("generic.i4.1342.rail");
if (!profile) throw new Error("generic.i4.1342.rail is gone");

describe("a search in the address", () => {
  const word = fc.stringMatching(/^[a-z][a-z-]{0,8}$/);
  const cylinder = fc.option(fc.stringMatching(/^[A-Z]?[1-9]$/), { nil: undefined });
  const at = (name: string | undefined) => (name === undefined ? {} : { cylinder: name });
  const act: fc.Arbitrary<PracticeAct> = fc.oneof(
    fc.constant<PracticeAct>({ kind: "peek" }),
    fc
      .tuple(word, cylinder)
      .map(([id, name]): PracticeAct => ({ kind: "check", check: `check.${id}`, ...at(name) })),
  );
  const wanted = fc.option(
    fc.tuple(word, cylinder).map(([id, name]) => ({ repair: `repair.${id}`, ...at(name) })),
    { nil: undefined },
  );

  it("is read back as it was written", () => {
    fc.assert(
      fc.property(fc.array(act), wanted, (acts, repair) => {
        const steps: Steps = { acts, ...(repair ? { wanted: repair } : {}) };
        expect(readSteps(writeSteps(steps))).toEqual(steps);
      }),
      { seed: 3 },
    );
  });

  it("reads well, and ends with the repair", () => {
    const steps: Steps = {
      acts: [{ kind: "check", check: "check.plugs-out", cylinder: 2 }, { kind: "peek" }],
      wanted: { repair: "repair.rail" },
    };
    expect(writeSteps(steps)).toEqual(["check.plugs-out@2", "peek", "repair.rail"]);
    expect(readSteps(["peek", "repair.rail", "check.counts"])).toEqual({
      acts: [{ kind: "peek" }],
      wanted: { repair: "repair.rail" },
    });
  });
});

describe("an address", () => {
  const read = (...parts: readonly string[]) => readAddress(parts, (id) => id === "demo.tern");

  it("gives engine, fault and steps", () => {
    expect(read("demo.tern", "7", "peek")).toEqual({
      engine: "demo.tern",
      seed: 7,
      steps: { acts: [{ kind: "peek" }] },
      misread: [],
    });
    expect(read()).toEqual({ steps: { acts: [] }, misread: [] });
  });

  it("that is damaged says which part of it was not understood, and takes no step of another fault", () => {
    const engine = read("demo.nope", "1");
    expect(engine).toMatchObject({ seed: 1, steps: { acts: [] } });
    expect(engine.misread).toEqual([expect.stringContaining("“demo.nope”")]);
    for (const wrong of ["abc", "-1", "1.5", "1234567890"]) {
      const { misread, ...rest } = read("demo.tern", wrong);
      expect(rest).toEqual({ engine: "demo.tern", steps: { acts: [] } });
      expect(misread).toEqual([expect.stringContaining(`“${wrong}”`)]);
    }
    const both = read("demo.nope", "abc", "peek");
    expect(both.steps.acts).toEqual([]);
    expect(both.misread.length).toBe(3);
    expect(both.misread[2]).toMatch(/left out/);
  });
});

describe("an address that goes on after the repair, or holds a step that cannot be read", () => {
  const read = (...steps: readonly string[]) =>
    readAddress(["demo.tern", "7", ...steps], (id) => id === "demo.tern");

  it("says what was left out, and keeps the rest", () => {
    const { steps, misread } = read("peek", "repair.rail", "check.counts", "peek");
    expect(steps).toEqual({ acts: [{ kind: "peek" }], wanted: { repair: "repair.rail" } });
    expect(misread).toEqual([expect.stringContaining("“check.counts/peek”")]);
    for (const wrong of ["check.plugs-out@", "check.plugs-out@2@3", "@2"]) {
      const damaged = read(wrong, "peek");
      expect(damaged.steps).toEqual({ acts: [{ kind: "peek" }] });
      expect(damaged.misread).toEqual([expect.stringContaining(`“${wrong}”`)]);
    }
    const repair = read("peek", "repair.plug-one@");
    expect(repair.steps).toEqual({ acts: [{ kind: "peek" }] });
    expect(repair.misread).toEqual([expect.stringContaining("“repair.plug-one@”")]);
  });

  it("loses nothing in silence: each part is a step, the repair, or named", () => {
    const part = fc.constantFrom("peek", "check.counts", "check.x@2", "repair.rail", "@", "a@b@c");
    fc.assert(
      fc.property(fc.array(part), (parts) => {
        const { steps, misread } = read(...parts);
        const kept = writeSteps(steps).length;
        const after = parts.findIndex((each) => each.startsWith("repair."));
        const beyond = after < 0 ? 0 : parts.length - after - 1;
        const named = misread.length - (beyond > 0 ? 1 : 0);
        expect(kept + named + beyond).toBe(parts.length);
      }),
      { seed: 12 },
    );
  });
});

describe("a check that was made", () => {
  it("is named with the cylinders that it looked at, where these are not all", () => {
    const at = (name: string, cylinders: readonly number[]) => sayStep({ name, cylinders });
    expect(at("Look at the plugs", [1, 4])).toBe("Look at the plugs: cylinders 1 and 4");
    expect(at("Look at the plugs", [3])).toBe("Look at the plugs: cylinder 3");
    expect(at("Read the codes", [])).toBe("Read the codes");
  });

  it("at one coil of several tells which: no check made at a place is without it", () => {
    const hidden = hideFault(profile, 5);
    for (const { id, places } of practise(hidden, []).checks) {
      if (places.length < 2) continue;
      for (const { cylinders } of places) {
        const [cylinder] = cylinders;
        expect(cylinder, id).toBeDefined();
        const acts = [{ kind: "check", check: id, cylinder: cylinder ?? 0 }] as const;
        const [made] = practise(hidden, acts).steps;
        expect(made, id).toMatchObject({ kind: "check", cylinders });
      }
    }
  });
});

describe("the cost", () => {
  it("is said to the minute below an hour, and in hours beyond", () => {
    expect([1, 12, 59, 60, 215, 1860].map(sayCost)).toEqual([
      "1 minute",
      "12 minutes",
      "59 minutes",
      "about 1 h",
      "about 3 h 35 min",
      "about 31 h",
    ]);
  });
});

describe("the thread", () => {
  const acts: readonly PracticeAct[] = [
    { kind: "check", check: "check.counts" },
    { kind: "check", check: "check.plugs-out", cylinder: "2" },
  ];

  it("says how it stands, as the library does", () => {
    const hidden = hideFault(profile, 5);
    expect(workOut({ profile, seed: 5, acts: [] })).toEqual({ practice: practise(hidden, []) });
    expect(workOut({ profile, seed: 5, acts })).toEqual({ practice: practise(hidden, acts) });
    expect(workOut({ profile, seed: 6, acts: [] })).not.toEqual({ practice: practise(hidden, []) });
  });

  it("lays both ways beside one another once a repair was chosen", () => {
    const hidden = hideFault(profile, 5);
    const wanted = { repair: "repair.plug-one", cylinder: "3" };
    const { comparison } = workOut({ profile, seed: 5, acts, wanted });
    expect(comparison).toEqual(comparePaths(hidden, acts, wanted));
    expect(comparison?.learner.steps.at(-1)).toMatchObject({ kind: "repair", cylinders: [3] });
  });

  it("tells what is wrong with an address", () => {
    const { problems } = workOut({ profile, seed: 5, acts: [{ kind: "check", check: "check.x" }] });
    expect(problems?.map(({ code }) => code)).toEqual(["check-unknown"]);
    const mended = workOut({ profile, seed: 5, acts: [], wanted: { repair: "repair.x" } });
    expect(mended.problems?.map(({ code }) => code)).toEqual(["repair-unknown"]);
  });

  it("is started on a script that a page may load without working anything out", () => {
    expect(PRACTICE_SCRIPT).toMatch(/thread-practice/);
  });
});
