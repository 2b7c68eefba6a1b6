// Do the tables arrive on the page as they left the library?
import { CHECKS, FAULTS, FINDINGS, KNOWLEDGE } from "@half-order/core";
import { describe, expect, it } from "vitest";
import { packedFiles } from "../../packages/web/packing.ts";
import {
  outlineOf,
  packFaults,
  unpackFaults,
  wordsOf,
} from "../../packages/web/src/packed/pack.ts";

/** As a file would hold it. */
function sent<T>(value: T): T {
  return JSON.parse(JSON.stringify(value)) as T;
}

describe("packed faults", () => {
  it("unpack to the same rows, number by number, but for their prose", () => {
    const unpacked = unpackFaults(sent(packFaults(FAULTS, FINDINGS)), FINDINGS);
    const words = sent(wordsOf(FAULTS, CHECKS));
    expect(unpacked.map((row) => ({ ...row, ...words.faults[row.id] }))).toEqual(FAULTS);
  });

  it("unpack with outlines of the findings too", () => {
    const unpacked = unpackFaults(sent(packFaults(FAULTS, FINDINGS)), FINDINGS.map(outlineOf));
    expect(unpacked.map(({ signs, risks }) => ({ signs, risks }))).toEqual(
      FAULTS.map(({ signs, risks }) => ({ signs, risks })),
    );
  });
});

describe("the files beside the page", () => {
  const files = sent(packedFiles()) as Readonly<Record<string, Record<string, unknown>>>;

  it("hold every table of the knowledge", () => {
    const { faults, findings, checks, cautions, ...others } = KNOWLEDGE;
    const held = { ...part("faults.json").others, ...part("later.json").others };
    expect(held).toEqual(sent(others));
    expect(files["steps.json"]).toEqual(sent(wordsOf([], CHECKS).steps));
  });

  it("hold every finding whole, in the first file or the later one", () => {
    const first = part("asked.json").findings as typeof FINDINGS;
    const later = new Map((part("later.json").findings as typeof FINDINGS).map((r) => [r.id, r]));
    expect(first.map((row) => later.get(row.id) ?? row)).toEqual(sent(FINDINGS));
    expect(first.filter(({ ask }) => ask !== "").length).toBeLessThanOrEqual(6);
  });

  function part(name: string): Record<string, unknown> & { others?: object } {
    const file = files[name];
    if (!file) throw new Error(`no file ${name}`);
    return file;
  }
});
