// Does a sentence mark the words of the trade, each once, and nothing else?
import { TERMS } from "@half-order/core";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { search } from "../../packages/web/src/state/glossary.ts";
import { type Piece, withTerms } from "../../packages/web/src/ui/term.tsx";

const text = (piece: Piece): string => (typeof piece === "string" ? piece : piece.words);
const marked = (sentence: string): readonly string[] =>
  withTerms(sentence).flatMap((piece) =>
    typeof piece === "string" ? [] : [`${piece.words}=${piece.term.id}`],
  );

describe("a sentence", () => {
  it("has each known word marked where it comes first", () => {
    expect(marked("A coil rail feeds two coils; the coil fires both.")).toEqual([
      "coil rail=rail",
      "coils=coil",
    ]);
  });

  it("keeps its own spelling, and knows plurals and the other usual word", () => {
    expect(marked("Read the MIL and the Trouble Codes.")).toEqual([
      "MIL=lamp",
      "Trouble Codes=code",
    ]);
  });

  it("has no part of a word marked", () => {
    expect(marked("It recoils; the banked road, a leak-down-like hiss, gapless.")).toEqual([]);
  });

  it("is what it was when its pieces are put together, whatever it says", () => {
    const words = fc.constantFrom("coil", "Coil rail", "x", ", ", " ", "gap", "-", "rail.", "é");
    const sentences = fc.oneof(
      fc.string(),
      fc.array(words).map((all) => all.join("")),
    );
    fc.assert(
      fc.property(sentences, (sentence) => {
        const pieces = withTerms(sentence);
        expect(pieces.map(text).join("")).toBe(sentence);
        const ids = pieces.flatMap((piece) => (typeof piece === "string" ? [] : piece.term.id));
        expect(new Set(ids).size).toBe(ids.length);
      }),
      { seed: 20261125, numRuns: 500 },
    );
  });
});

describe("the search", () => {
  it("shows all while nothing is typed, in the order of the alphabet", () => {
    const words = search("  ").map(({ word }) => word);
    expect(words).toHaveLength(TERMS.length);
    expect(words).toEqual([...words].sort((a, b) => a.localeCompare(b, "en")));
  });

  it("finds by a part of any form first, then by the meaning", () => {
    expect(search("MIL")[0]?.id).toBe("lamp");
    const found = search("rubber").map(({ id }) => id);
    expect(found).toContain("boot");
    expect(search("qzx")).toEqual([]);
  });
});
