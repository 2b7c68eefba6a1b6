// Random answers from the catalogue of findings, for an engine: none is made up for the purpose.
import fc from "fast-check";
import { cylinderNames } from "../../packages/core/src/engine/cylinder-name.ts";
import type { EngineProfile } from "../../packages/core/src/engine/profile.ts";
import type { Answer, Finding } from "../../packages/core/src/knowledge/answer.ts";
import { KNOWLEDGE } from "../../packages/core/src/knowledge/knowledge.ts";
import type { FindingRow } from "../../packages/core/src/knowledge/schema.ts";

/** Codes that name no cylinder, one or two of each family that often comes with a misfire. */
const OTHER_CODES = ["P0300", "P0171", "P0174", "P0335", "P0340", "P0420", "P0505", "P0562"];

/** Up to `most` answers to different questions, in random order. */
export function findingsFor(profile: EngineProfile, most: number): fc.Arbitrary<Finding[]> {
  const rows = [...KNOWLEDGE.findings.values()].filter(
    ({ suits }) => !suits || suits.includes(profile.ignition),
  );
  return fc
    .shuffledSubarray(rows, { minLength: 1, maxLength: most })
    .chain((chosen) => fc.tuple(...chosen.map((row) => findingFor(profile, row))));
}

function findingFor(profile: EngineProfile, row: FindingRow): fc.Arbitrary<Finding> {
  const answer = answerFor(profile, row);
  if (row.scope === "engine") return answer.map((a) => ({ finding: row.id, answer: a }));
  const cylinder = fc.constantFrom(...cylinderNames(profile));
  return fc.record({ answer, cylinder }).map((said): Finding => ({ finding: row.id, ...said }));
}

function answerFor(profile: EngineProfile, row: FindingRow): fc.Arbitrary<Answer> {
  const options = Object.keys(row.options);
  const names = cylinderNames(profile);
  switch (row.kind) {
    case "choice":
      return fc.constantFrom(...options);
    case "presence":
      return fc.constantFrom("yes", "no");
    case "several":
      return fc.subarray(options, { maxLength: Math.min(3, options.length) });
    case "codes":
      return fc.subarray([...misfireCodes(names), ...injectorCodes(names), ...OTHER_CODES], {
        maxLength: 4,
      });
    case "counts":
      return fc
        .array(fc.constantFrom(0, 1, 3, 40, 250), {
          minLength: names.length,
          maxLength: names.length,
        })
        .map((counts) =>
          Object.fromEntries(names.map((name, i) => [String(name), counts[i] ?? 0])),
        );
  }
}

function misfireCodes(names: readonly (number | string)[]): readonly string[] {
  return numbersOf(names).map((n) => `P0${300 + n}`);
}

function injectorCodes(names: readonly (number | string)[]): readonly string[] {
  return numbersOf(names).map((n) => `P0${258 + 3 * n}`);
}

/** Codes count to twelve, and only cylinders that are numbered. */
function numbersOf(names: readonly (number | string)[]): readonly number[] {
  return names.filter((name): name is number => typeof name === "number" && name <= 12);
}
