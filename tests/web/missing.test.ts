// Is it said what an address asks for in vain, whatever it is and whether a case is open or not?
import { describe, expect, it } from "vitest";
import { SCREENS } from "../../packages/web/src/screens.ts";
import { type Here, missingOf, OF_CASE } from "../../packages/web/src/state/missing.ts";
import { NOWHERE } from "../../packages/web/src/text/en-nowhere.ts";

const none: Here = { isOpen: false, hasCase: false };
const open: Here = { isOpen: true, hasCase: true };

describe("an address that leads to nothing", () => {
  it("is no page at all, or a thing that the open case has not", () => {
    expect(missingOf(["foo"], open)).toBe("page");
    expect(missingOf(["question", "foo"], open)).toBe("question");
    expect(missingOf(["check", "check.foo"], open)).toBe("check");
    expect(missingOf(["step", "check.foo", "1+2"], open)).toBe("check");
    expect(missingOf(["mend", "repair.foo"], open)).toBe("repair");
  });

  it("needs a case for each screen of a case, and for no other", () => {
    const inCase = Object.entries(SCREENS).filter(([, { frame }]) => frame !== "outside");
    // The ranking is what stands where no screen of its own is asked for.
    expect([...OF_CASE].sort()).toEqual(["ranking", ...inCase.map(([name]) => name)].sort());
  });

  it("lacks the case first, where none is open or its engine is not known", () => {
    expect(missingOf(["foo"], none)).toBe("page");
    for (const name of OF_CASE) {
      expect(missingOf([name, "foo"], none), name).toBe("case");
      expect(missingOf([name, "foo"], { isOpen: true, hasCase: false }), name).toBe("engine");
    }
  });

  it("names a kind of engine that there is none of, with a case or without", () => {
    expect([none, open].map((here) => missingOf(["pick", "99"], here))).toEqual(["kind", "kind"]);
    expect(missingOf(["engine", "4", "foo"], open)).toBe("kind");
  });

  it("is told with a reason and a way on, each in words of its own", () => {
    const titles = Object.values(NOWHERE.missing).map(([title]) => title);
    expect(new Set(titles).size).toBe(titles.length);
    for (const [, why] of Object.values(NOWHERE.missing)) expect(why).toMatch(/\.$/);
  });
});
