// A case from a file or a pipe, with the numbers to weigh it with; what to say when it is something else.
import { InputError, type Problem } from "@half-order/core";
import { type Case, parseCase } from "@half-order/core/wire";
import { type Input, readJson, refuseTwoPipes, UsageError } from "./input.ts";
import { type Numbers, readNumbers } from "./knowledge.ts";

/** A case and the tables that it is weighed with. */
export interface CaseAndNumbers {
  readonly known: Case;
  readonly numbers: Numbers;
}

/** Both, from a file or a pipe each. Throws with the problems of both at once. */
export async function readCaseAndNumbers(
  file: string | undefined,
  own: string | undefined,
  stdin: Input,
): Promise<CaseAndNumbers> {
  refuseTwoPipes(file, own);
  const problems: Problem[] = [];
  const collected = <T>(reading: Promise<T>): Promise<T | undefined> =>
    reading.catch((error: unknown) => {
      if (!(error instanceof InputError)) throw error;
      problems.push(...error.problems);
      return undefined;
    });
  const numbers = await collected(readNumbers(own, stdin));
  const known = await collected(readCase(file, stdin));
  if (!known || !numbers) throw new InputError(problems);
  return { known, numbers };
}

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
