// The thread's side of one question: why does a fault stand where it stands? Fetched when somebody first asks.
import { InputError, why } from "@half-order/core";
import type { Question, Thought } from "./state/thinker.ts";

/** The ledger of the fault that is asked for; problems of the input are an answer too. */
export function explain({ profile, findings, repairs, of }: Question): Thought {
  if (!of) return {};
  try {
    return { ledger: why(profile, findings, of, { repairs }) };
  } catch (error) {
    if (error instanceof InputError) return { problems: error.problems };
    throw error;
  }
}
