// Can an engine be switched and fuelled as its profile says?
import { type Problem, pointer } from "../units/problem.ts";
import { type EngineProfile, FUELLINGS, SWITCHINGS } from "./profile.ts";

/** By field, the words that there are; the second is of older engines, and sits in or beside a distributor. */
const WORDS = { switching: SWITCHINGS, fuelling: FUELLINGS } as const;

/** Problems of `switching` and `fuelling`, also against the ignition and a diagnostic port. */
export function checkBuild(profile: EngineProfile): readonly Problem[] {
  const canBeOlder = profile.ignition === "distributor" && !profile.diagnosticPort;
  return (["switching", "fuelling"] as const).flatMap((field) => {
    const [later, older] = WORDS[field];
    const value = profile[field] ?? later;
    if (value === later || (value === older && canBeOlder)) return [];
    return [
      {
        code: "build-wrong",
        path: pointer(field),
        message: `The ${field} ${JSON.stringify(value)} cannot be on this engine.`,
        hint: `Write "${later}", or "${older}" with a distributor and no diagnosticPort.`,
      },
    ];
  });
}
