// Do the sentences about a bad shape say what was got and what to write instead?
import { profileSchema, readShape } from "@half-order/core/wire";
import { describe, expect, it } from "vitest";
import { z } from "zod";

const sound = { cylinders: 4, ignition: "rail" };

function say(fields: object, schema: z.ZodType = profileSchema): readonly string[] {
  const reading = readShape(schema, schema === profileSchema ? { ...sound, ...fields } : fields);
  if (!("problems" in reading)) return [];
  return reading.problems.map((p) => `${p.code} ${p.path}: ${p.message} ${p.hint}`);
}

describe("the sentences about a bad shape", () => {
  it.each([
    [
      { cylinders: "four" },
      'kind-wrong /cylinders: "four" was not expected here. Write a number: how many cylinders the engine has, for example 4.',
    ],
    [
      { cylinders: undefined },
      'field-missing /cylinders: The field "cylinders" is missing. Write a number: how many cylinders the engine has, for example 4.',
    ],
    [{ cylinders: 0 }, "too-small /cylinders: 0 is too small. Write at least 1."],
    [{ cylinders: 17 }, "too-big /cylinders: 17 is too big. Write at most 16."],
    [
      { cylinders: 4.5 },
      "kind-wrong /cylinders: 4.5 was not expected here. Write a number: how many cylinders the engine has, for example 4.",
    ],
    [
      { ignition: "rial" },
      'value-unknown /ignition: "rial" cannot be used here. Write "rail" if you meant that.',
    ],
    [
      { ignition: "sparks" },
      'value-unknown /ignition: "sparks" cannot be used here. Write one of "distributor", "pack", "rail", "hybrid", "coil-per-plug".',
    ],
    [
      { firing_order: [1] },
      'field-unknown /firing_order: There is no field "firing_order" here. Write "firingOrder" if you meant that.',
    ],
    [
      { firingOrder: [1, true] },
      "kind-wrong /firingOrder/1: true was not expected here. Write a cylinder as its maker names it, for example 3.",
    ],
    [
      { firingOrder: [1, ""] },
      'too-small /firingOrder/1: "" is too short. Write at least 1 character.',
    ],
    [
      { figures: { plugGapMm: [1] } },
      "too-small /figures/plugGapMm: A list is too short. Write at least 2 entries.",
    ],
    [
      { firingIntervals: Array(65).fill(1) },
      /^too-big \/firingIntervals: .* at most 64 entries\.$/,
    ],
    [{ name: "x".repeat(200) }, /^too-big \/name: "x+ … is too long\. .* 120 characters\.$/],
  ])("%j", (fields, sentence) => {
    const said = say(fields);
    expect(said).toHaveLength(1);
    if (typeof sentence === "string") expect(said[0]).toBe(sentence);
    else expect(said[0]).toMatch(sentence);
  });

  it("lists the fields when none is near", () => {
    const [said] = say({ zzz: 1 });
    expect(said).toMatch(/The fields are id, name, .*figures\.$/);
  });

  it("gives each unknown field a problem and a path of its own, escaped", () => {
    const paths = say({ "a/b": 1, "c~d": 2 }).map((line) => line.split(":")[0]);
    expect(paths).toEqual(["field-unknown /a~1b", "field-unknown /c~0d"]);
  });

  it("speaks of the form of a union that was meant", () => {
    const either = z.strictObject({
      engine: z.union([z.string(), z.strictObject({ cylinders: z.number() })]),
    });
    expect(say({ engine: { cylinders: "x" } }, either)).toEqual([
      'kind-wrong /engine/cylinders: "x" was not expected here. Write a number.',
    ]);
  });
});

it("a value of the right shape comes out as it went in", () => {
  const reading = readShape(profileSchema, sound);
  expect(reading).toEqual({ value: sound });
});
