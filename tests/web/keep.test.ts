// Does the page come up with the case that was worked on last, and with its last entry?
import { beforeEach, describe, expect, it, vi } from "vitest";
import "fake-indexeddb/auto";
import {
  beginCase,
  closeCase,
  findings,
  giveAnswer,
  named,
  newCase,
  openCase,
  undo,
} from "../../packages/web/src/state/case.ts";
import { forget, keepOpenCase, resumeLast, shelve } from "../../packages/web/src/state/keep.ts";

function storage(): Storage {
  const kept = new Map<string, string>();
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  } as unknown as Storage;
}

vi.stubGlobal("localStorage", storage());
vi.stubGlobal("sessionStorage", storage());
keepOpenCase();

beforeEach(() => beginCase("demo.dunlin"));

/** As when the page is loaded anew: nothing is open, and all that is known is on the device. */
async function reload(isNewTab = false): Promise<void> {
  if (isNewTab) vi.stubGlobal("sessionStorage", storage());
  closeCase();
  await resumeLast();
}

describe("the case that comes up", () => {
  it.each([false, true])(
    "is the one worked on, not its newer copy (in a new tab: %s)",
    async (isNew) => {
      const mine = openCase.value;
      if (!mine) throw new Error("no case");
      giveAnswer("lamp", "off");
      await shelve(newCase(named(mine.doc, "A copy")));
      await reload(isNew);
      expect(openCase.value?.id).toBe(mine.id);
    },
  );

  it("holds what was entered the moment before, and the step back from it", async () => {
    giveAnswer("lamp", "off");
    // Before anything could be written.
    await reload();
    expect(findings.value.map(({ finding }) => finding)).toEqual(["lamp"]);
    giveAnswer("onset", "driving");
    await reload();
    expect(findings.value.map(({ finding }) => finding)).toEqual(["lamp", "onset"]);
    undo();
    expect(findings.value.map(({ finding }) => finding)).toEqual(["lamp"]);
  });

  it("is not one that was deleted", async () => {
    const id = openCase.value?.id ?? "";
    giveAnswer("lamp", "off");
    await forget(id);
    await reload();
    expect(openCase.value?.id).not.toBe(id);
  });
});
