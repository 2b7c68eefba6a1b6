// The thread's side of one question alone: may one drive? It is asked from the first answer on, so it must
// not wait for all the rest of the advice.
import { driveAdvice, InputError } from "@half-order/core";
import type { Advice } from "./state/advising.ts";
import type { Question } from "./state/thinker.ts";

/** What the library says; problems of the input are an answer too. */
export function adviseDrive({ profile, findings }: Question): Advice {
  try {
    return { drive: driveAdvice(profile, findings) };
  } catch (error) {
    if (error instanceof InputError) return { problems: error.problems };
    throw error;
  }
}
