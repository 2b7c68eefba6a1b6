// Is what was ticked and not confirmed still there: after another screen, another case, a reload?
import { beforeEach, describe, expect, it, vi } from "vitest";
import "fake-indexeddb/auto";
import { beginCase, findings, openCase, resumeCase } from "../../packages/web/src/state/case.ts";
import {
  drafted,
  draftKey,
  draftOf,
  setDraft,
  ticked,
} from "../../packages/web/src/state/draft.ts";

const kept = new Map<string, string>();
vi.stubGlobal("localStorage", {
  getItem: (key: string) => kept.get(key) ?? null,
  setItem: (key: string, value: string) => kept.set(key, value),
});

beforeEach(() => {
  kept.clear();
  beginCase("demo.dunlin");
});

describe("a draft", () => {
  it("is no answer, and is told of until it is put away", () => {
    setDraft(draftKey("codes"), ["", "P0302"]);
    expect(findings.value).toEqual([]);
    expect(draftOf("codes")).toEqual(["", "P0302"]);
    expect(drafted.value).toEqual(["codes"]);
    setDraft("codes", undefined);
    expect(drafted.value).toEqual([]);
  });

  it("speaks against driving before it is confirmed, where it is ticks and no text", () => {
    setDraft(draftKey("alarm"), ["fuel-seen", "no such"]);
    setDraft(draftKey("codes"), ["", "P0302"]);
    expect(ticked.value).toEqual([{ finding: "alarm", answer: ["fuel-seen"] }]);
    setDraft(draftKey("alarm"), undefined);
    setDraft(draftKey("codes"), undefined);
    expect(ticked.value).toEqual([]);
  });

  it("belongs to one cylinder where the question does", () => {
    setDraft(draftKey("plug.gap", 2), ["1.2"]);
    expect(draftOf(draftKey("plug.gap", 3))).toBeUndefined();
    expect(drafted.value).toEqual(["plug.gap"]);
  });

  it("waits with its case", () => {
    const mine = openCase.value;
    if (!mine) throw new Error("no case");
    setDraft("work", ["wash"]);
    beginCase("demo.tern");
    expect(drafted.value).toEqual([]);
    // As after a reload: all that is known of it is on the device.
    resumeCase({ ...mine });
    expect(draftOf("work")).toEqual(["wash"]);
  });

  it("holds on a device that keeps nothing", () => {
    vi.stubGlobal("localStorage", {
      getItem: () => null,
      setItem: () => {
        throw new Error("refused");
      },
    });
    setDraft("work", ["wash"]);
    expect(draftOf("work")).toEqual(["wash"]);
  });
});
