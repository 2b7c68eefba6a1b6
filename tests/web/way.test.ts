// Does Back lead to where somebody came from?
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";

beforeEach(() => {
  vi.resetModules();
});
afterEach(() => vi.unstubAllGlobals());

/** The way as it is at an address. */
async function wayAt(hash: string) {
  vi.stubGlobal("location", { hash });
  return import("../../packages/web/src/state/way.ts");
}

describe("the drive answer", () => {
  it.each([["#/ranking"], ["#/question"], ["#/question/codes"], ["#/question/plug.gap/add"]])(
    "leads back to %s, where it was read",
    async (from) => {
      const { driveAddress } = await wayAt(from);
      const drive = driveAddress();
      vi.resetModules();
      const { backAddress } = await wayAt(drive);
      expect(drive).toMatch(/^#\/drive\//);
      expect(backAddress()).toBe(from);
    },
  );

  it("leads to the ranking where its address tells of nothing", async () => {
    const { backAddress } = await wayAt("#/drive");
    expect(backAddress()).toBe("#/ranking");
  });
});
