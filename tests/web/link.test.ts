// Does a case survive its way through a link, and is every broken link refused in clear words?
import { crc32, inflateRawSync } from "node:zlib";
import { allProfiles, FINDINGS } from "@half-order/core";
import type { CaseDocument } from "@half-order/core/wire";
import fc from "fast-check";
import decodeQR from "qr/decode.js";
import { afterEach, describe, expect, it, vi } from "vitest";
import { linkOf, readLink, writeLink } from "../../packages/web/src/hand-over/link.ts";
import { checksum, pack, unpack } from "../../packages/web/src/hand-over/pack.ts";
import { qrOf } from "../../packages/web/src/hand-over/qr.ts";
import { QR_MOST_BYTES } from "../../packages/web/src/hand-over/square.ts";

const SEED = { seed: 20261125 };

afterEach(() => vi.unstubAllGlobals());

/** Whole pages of text, with every kind of letter. */
const texts = fc.oneof(
  fc.string({ unit: "binary", maxLength: 400 }),
  fc.json(),
  fc.string({ maxLength: 20 }).map((text) => text.repeat(300)),
);

describe("packing a text", () => {
  it("gives it back as it was", async () => {
    await fc.assert(
      fc.asyncProperty(texts, async (text) => {
        const packed = await pack(text);
        expect(packed).toMatch(/^1[zp][A-Za-z0-9_-]+$/);
        expect(await unpack(packed)).toEqual({ text });
      }),
      { ...SEED, numRuns: 200 },
    );
  });

  it("is raw DEFLATE behind checksum and length, in base64url", async () => {
    const text = "misfire ".repeat(50);
    const bytes = Buffer.from((await pack(text)).slice(2), "base64url");
    const body = bytes.subarray(8);
    expect(inflateRawSync(body).toString("utf8")).toBe(text);
    expect(bytes.readUInt32BE(0)).toBe(crc32(body));
    expect(bytes.readUInt32BE(4)).toBe(body.length);
  });

  it("has the check value that is published with CRC-32, and agrees with zlib", () => {
    // "123456789" gives CBF43926: R. N. Williams, "A painless guide to CRC error detection" (1993).
    expect(checksum(new TextEncoder().encode("123456789"))).toBe(0xcbf43926);
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(checksum(bytes)).toBe(crc32(bytes));
      }),
      SEED,
    );
  });

  it("works where the browser cannot compress, and is read where it can", async () => {
    const text = "a b c ".repeat(40);
    vi.stubGlobal("CompressionStream", undefined);
    const packed = await pack(text);
    expect(packed).toMatch(/^1p/);
    vi.unstubAllGlobals();
    expect(await unpack(packed)).toEqual({ text });
  });

  it("says so where the browser cannot unpack", async () => {
    const packed = await pack("a b c ".repeat(40));
    vi.stubGlobal("DecompressionStream", undefined);
    expect(await unpack(packed)).toEqual({ trouble: "browser" });
  });

  it("refuses what was cut off anywhere", async () => {
    const packed = await pack(JSON.stringify(CASE));
    for (let length = 0; length < packed.length; length += 1) {
      const reading = await unpack(packed.slice(0, length));
      expect(reading, `${length} letters`).toEqual({ trouble: expect.stringMatching(/^cut$/) });
    }
  });

  it("never takes what was changed for something else", async () => {
    const text = JSON.stringify(CASE);
    const packed = await pack(text);
    await fc.assert(
      fc.asyncProperty(
        fc.nat(packed.length - 1),
        fc.string({ minLength: 0, maxLength: 3 }),
        async (at, other) => {
          const reading = await unpack(packed.slice(0, at) + other + packed.slice(at + 1));
          if ("text" in reading) expect(reading.text).toBe(text);
          else expect(["cut", "damaged", "newer"]).toContain(reading.trouble);
        },
      ),
      { ...SEED, numRuns: 500 },
    );
  });

  it("never rejects, whatever it is given", async () => {
    await fc.assert(
      fc.asyncProperty(fc.oneof(fc.string(), fc.base64String()), async (text) => {
        expect(await unpack(text)).toHaveProperty("trouble");
        expect(await unpack(`1z${text}`)).toHaveProperty("trouble");
      }),
      { ...SEED, numRuns: 200 },
    );
  });

  it("stops before it fills the memory", async () => {
    expect(await unpack(await pack(" ".repeat(3_000_000)))).toEqual({ trouble: "large" });
  });

  it("knows the work of a newer program", async () => {
    const packed = await pack("{}");
    expect(await unpack(`2${packed.slice(1)}`)).toEqual({ trouble: "newer" });
    expect(await unpack(`0${packed.slice(1)}`)).toEqual({ trouble: "damaged" });
  });
});

const CASE: CaseDocument = {
  halfOrderCase: 1,
  title: "Zündung, Öl – 4 Zylinder",
  engine: "demo.dunlin",
  findings: [
    { finding: "lamp", answer: "steady", when: "2026-05-01T09:30:00Z" },
    { finding: "codes", answer: ["P0302"] },
    { finding: "plug.gap", answer: 1.15, cylinder: 2 },
    { finding: "counts", answer: { "1": 0, "2": 131 } },
  ],
  repairs: [{ repair: "repair.plug-set", result: "same" }],
  records: [
    { when: "2026-05-01", odometerKm: 120_000, plugs: [{ cylinder: 2, gapMm: 1.15, look: "tan" }] },
  ],
};

/** Documents that a page may hold: any engine, any answers that suit it, any note. */
const documents: fc.Arbitrary<CaseDocument> = fc.record(
  {
    halfOrderCase: fc.constant(1 as const),
    engine: fc.oneof(
      fc.constantFrom(...allProfiles().flatMap(({ id }) => id ?? [])),
      fc.constantFrom(...allProfiles()),
    ),
    findings: fc.uniqueArray(
      fc
        .constantFrom(
          ...FINDINGS.filter(
            ({ kind, scope, suits }) => kind === "choice" && scope === "engine" && !suits,
          ),
        )
        .chain((row) =>
          fc.record({
            finding: fc.constant(row.id),
            answer: fc.constantFrom(...Object.keys(row.options)),
            when: fc.date({ noInvalidDate: true }).map((date) => date.toISOString()),
          }),
        ),
      { selector: ({ finding }) => finding, maxLength: 12 },
    ),
    title: fc.string({ unit: "grapheme", maxLength: 60 }),
    note: fc.string({ unit: "grapheme", maxLength: 300 }),
  },
  { requiredKeys: ["halfOrderCase", "engine", "findings"] },
);

describe("a case as a link", () => {
  it("is the same case at the other end", async () => {
    await fc.assert(
      fc.asyncProperty(documents, async (doc) => {
        expect(await readLink(await writeLink(doc))).toEqual({ doc });
      }),
      { ...SEED, numRuns: 40 },
    );
  });

  it("keeps records and repairs, and the id of a known engine", async () => {
    expect(await readLink(await writeLink(CASE))).toEqual({ doc: CASE });
  });

  it("is told from every other address", async () => {
    for (const hash of ["", "#", "#/ranking", "#/question/lamp", "link/1z"]) {
      expect(await readLink(hash)).toBeUndefined();
    }
  });

  it("survives the full stop of the sentence that it stood in", async () => {
    const hash = await writeLink(CASE);
    for (const after of [".", ",", ")", "…", ">."]) {
      expect(await readLink(hash + after)).toEqual({ doc: CASE });
    }
  });

  it("is checked like a file: what makes no sense is named with its place", async () => {
    const wrong = { ...CASE, findings: [{ finding: "lamp", answer: "purple" }] };
    const reading = await readLink(await writeLink(wrong));
    expect(reading).toMatchObject({ problems: [{ path: "/findings/0/answer" }] });
    const newer = { ...CASE, halfOrderCase: 2 } as unknown as CaseDocument;
    expect(await readLink(await writeLink(newer))).toMatchObject({
      problems: [{ path: "/halfOrderCase", hint: expect.stringContaining("newer program") }],
    });
  });

  it("says what to do when it is broken", async () => {
    const hash = await writeLink(CASE);
    const cut = await readLink(hash.slice(0, -9));
    expect(cut).toMatchObject({
      problems: [{ code: "link-unreadable", message: "The end of this link is missing." }],
    });
    const newer = await readLink(hash.replace("/1z", "/2z"));
    expect(newer).toMatchObject({
      problems: [{ message: expect.stringContaining("newer version") }],
    });
  });
});

describe("a case with work on it", () => {
  const PAGE = "https://example.org/half-order/";
  /** Moments that no packing makes small. */
  const withTicks = (count: number): CaseDocument => ({
    ...CASE,
    work: {
      ticks: Array.from({ length: count }, (_, i) => ({
        list: "repair.rail",
        line: `line ${i}`,
        when: new Date(1.7e12 + i * i * 7_654_321).toISOString(),
      })),
    },
  });

  it("is whole in link and square while it is small", async () => {
    const { address, square } = await linkOf(PAGE, withTicks(3));
    expect(square).toBe(address);
    expect(await readLink(address.slice(PAGE.length))).toEqual({ doc: withTicks(3) });
  });

  it("leaves the work out of the square alone, where only then it can be read", async () => {
    const { address, square } = await linkOf(PAGE, withTicks(90));
    expect(address.length).toBeGreaterThan(QR_MOST_BYTES);
    expect(await readLink(address.slice(PAGE.length))).toEqual({ doc: withTicks(90) });
    expect(qrOf(square)).toBeDefined();
    expect(await readLink(square.slice(PAGE.length))).toEqual({ doc: CASE });
  });

  it("leaves nothing out where that would not help", async () => {
    const note = Array.from({ length: 900 }, (_, i) => ((i * 7919) % 10_007).toString(36)).join("");
    const { address, square } = await linkOf(PAGE, { ...withTicks(3), note });
    expect(address.length).toBeGreaterThan(QR_MOST_BYTES);
    expect(square).toBe(address);
  });
});

describe("the square of dots", () => {
  it("is read back as the same text", async () => {
    const text = `https://example.org/half-order/${await writeLink(CASE)}`;
    const drawing = qrOf(text);
    if (!drawing) throw new Error("no square");
    expect(decodeQR(imageOf(drawing))).toBe(text);
  });

  it("is read back at its largest, and refused beyond", () => {
    const largest = "x".repeat(QR_MOST_BYTES);
    const drawing = qrOf(largest);
    if (!drawing) throw new Error("no square");
    // Version 27 has 125 dots a side (ISO/IEC 18004), with 4 of quiet on each.
    expect(drawing.size).toBe(125 + 8);
    expect(decodeQR(imageOf(drawing))).toBe(largest);
    expect(qrOf(`${largest}x`)).toBeUndefined();
  });
});

/** The path drawn into an image, four pixels a dot. */
function imageOf({ size, path }: { size: number; path: string }) {
  const [scale, width] = [4, size * 4];
  const data = new Uint8Array(width * width * 4).fill(255);
  for (const [, x, y, run] of path.matchAll(/M(\d+) (\d+)h(\d+)v1/g)) {
    for (let dy = 0; dy < scale; dy += 1) {
      const from = ((Number(y) * scale + dy) * width + Number(x) * scale) * 4;
      for (let i = 0; i < Number(run) * scale; i += 1) data.fill(0, from + 4 * i, from + 4 * i + 3);
    }
  }
  return { width, height: width, data };
}
