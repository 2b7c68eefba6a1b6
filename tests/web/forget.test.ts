// Does all that is kept of a case go with it, and come back with it?
import "fake-indexeddb/auto";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { draft, followDraft } from "../../packages/web/src/record/book.ts";
import { withPlug } from "../../packages/web/src/record/draft.ts";
import { forgetWhole } from "../../packages/web/src/record/forget.ts";
import { allPhotosOf, keepPhoto, photosOf } from "../../packages/web/src/record/photo-store.ts";
import { newCase, openCase, resumeCase } from "../../packages/web/src/state/case.ts";
import { lookAtShelf, shelf, shelve } from "../../packages/web/src/state/keep.ts";
import type { KeptCase } from "../../packages/web/src/state/store.ts";

let kept: Map<string, string>;

beforeEach(() => {
  kept = new Map();
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  });
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const photo = (words: string): Blob => new Blob([words], { type: "image/jpeg" });

/** A case on the shelf with two photos and a record half written, beside another that must not be touched. */
async function shelved(): Promise<readonly [KeptCase, KeptCase]> {
  const [mine, other] = [1, 2].map(() =>
    newCase({ halfOrderCase: 1, engine: "demo.tern", findings: [] }),
  );
  if (!mine || !other) throw new Error("no case");
  for (const each of [mine, other]) {
    await shelve(each);
    await keepPhoto({ caseId: each.id, day: "2026-05-01", cylinder: 2 }, photo(each.id));
  }
  await keepPhoto({ caseId: mine.id, day: "2026-06-01", cylinder: 1 }, photo("later"));
  const stop = followDraft(mine.id);
  draft.value = withPlug({ ...draft.value, odometerKm: 90_000 }, { cylinder: 1, gapMm: 1.1 });
  stop();
  await lookAtShelf();
  return [mine, other];
}

const isShelved = ({ id }: KeptCase): boolean => shelf.value.some((each) => each.id === id);
const draftKeys = (): readonly string[] => [...kept.keys()].filter((key) => key.includes("record"));

describe("a case that is forgotten", () => {
  it("goes with its photos and its record half written, and nothing else goes", async () => {
    const [mine, other] = await shelved();
    expect(draftKeys()).toHaveLength(1);
    const gone = await forgetWhole(mine);
    expect(gone).toMatchObject({ kept: mine, arePhotosLeft: false });
    expect(isShelved(mine)).toBe(false);
    expect(await allPhotosOf(mine.id)).toEqual([]);
    expect(draftKeys()).toEqual([]);
    expect(isShelved(other)).toBe(true);
    expect(await allPhotosOf(other.id)).toHaveLength(1);
  });

  it("comes back as it was, each photo on its day and at its cylinder", async () => {
    const [mine] = await shelved();
    const written = kept.get(draftKeys()[0] ?? "");
    const gone = await forgetWhole(mine);
    expect(await gone?.putBack()).toBe(true);
    expect(shelf.value.find(({ id }) => id === mine.id)?.doc).toEqual(mine.doc);
    expect(kept.get(draftKeys()[0] ?? "")).toBe(written);
    const back = await photosOf(mine.id, "2026-05-01");
    expect(await back.get(2)?.text()).toBe(mine.id);
    expect(await (await photosOf(mine.id, "2026-06-01")).get(1)?.text()).toBe("later");
  });

  it("is open no longer", async () => {
    const [mine, other] = await shelved();
    resumeCase(mine);
    await forgetWhole(other);
    expect(openCase.value?.id).toBe(mine.id);
    await forgetWhole(mine);
    expect(openCase.value).toBeUndefined();
  });

  it("is not said to be gone, and loses nothing, when the device does not let it go", async () => {
    const [mine] = await shelved();
    vi.spyOn(IDBObjectStore.prototype, "delete").mockImplementation(() => {
      throw new DOMException("refused", "UnknownError");
    });
    expect(await forgetWhole(mine)).toBeUndefined();
    expect(isShelved(mine)).toBe(true);
    expect(draftKeys()).toHaveLength(1);
    expect(await allPhotosOf(mine.id)).toHaveLength(2);
  });

  it("goes without its photos where the device keeps those, and says so", async () => {
    const [mine] = await shelved();
    const whole = IDBObjectStore.prototype.delete;
    vi.spyOn(IDBObjectStore.prototype, "delete").mockImplementation(function (
      this: IDBObjectStore,
      query,
    ) {
      if (this.name === "photos") throw new DOMException("refused", "UnknownError");
      return whole.call(this, query);
    });
    const gone = await forgetWhole(mine);
    expect(gone).toMatchObject({ arePhotosLeft: true });
    expect(isShelved(mine)).toBe(false);
  });

  it("comes back even where its photos do not, and says so", async () => {
    const [mine] = await shelved();
    const gone = await forgetWhole(mine);
    const whole = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(function (
      this: IDBObjectStore,
      ...of
    ) {
      if (this.name === "photos") throw new DOMException("full", "QuotaExceededError");
      return whole.apply(this, of);
    });
    expect(await gone?.putBack()).toBe(false);
    expect(isShelved(mine)).toBe(true);
  });
});
