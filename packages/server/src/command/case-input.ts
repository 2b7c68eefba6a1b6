// A case from a file or a pipe, and what to say when it is something else.
import { InputError } from "@half-order/core";
import { type Case, parseCase } from "@half-order/core/wire";
import { type Input, readJson, UsageError } from "./input.ts";

/** The case in a file or a pipe. Throws when it cannot be used, in one sentence when it is a profile. */
export async function readCase(file: string | undefined, stdin: Input): Promise<Case> {
  const value = await readJson(file, stdin);
  if (kindOf(value) === "profile") {
    throw new UsageError(
      'This is an engine profile, not a case: put it into one, { "engine": PROFILE, "findings": [] }, ' +
        "or look at it with half-order engine.",
    );
  }
  const reading = parseCase(value);
  if ("problems" in reading) throw new InputError(reading.problems);
  return reading.case;
}

/** Throws when a value that should be a profile is a whole case. */
export function refuseCase(value: unknown): void {
  if (kindOf(value) !== "case") return;
  throw new UsageError(
    'This is a case, not an engine profile: give what stands under "engine" in it, ' +
      "or rank it with half-order rank.",
  );
}

const OF_CASE = ["engine", "findings"];
const OF_PROFILE = ["cylinders", "ignition", "firingOrder"];

/** What an object was meant to be, by the fields that only one of the two has. */
function kindOf(value: unknown): "case" | "profile" | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  const isCase = OF_CASE.some((field) => field in value);
  const isProfile = OF_PROFILE.some((field) => field in value);
  if (isCase === isProfile) return undefined;
  return isCase ? "case" : "profile";
}
