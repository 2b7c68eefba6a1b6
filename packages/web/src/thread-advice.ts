// The thread's side of what goes beyond a ranking: what pays next, how is it mended. Fetched when the first
// such question comes; whether one may drive is answered by `thread-drive.ts`.
import { InputError, mend, next } from "@half-order/core";
import type { Advice, AdviceQuestion } from "./state/advising.ts";
import type { Question } from "./state/thinker.ts";

/** What the library says; problems of the input are an answer too. */
export async function advise(of: Question, question: MoreQuestion): Promise<Advice> {
  try {
    return await answerTo(of, question);
  } catch (error) {
    if (error instanceof InputError) return { problems: error.problems };
    throw error;
  }
}

type MoreQuestion = Exclude<AdviceQuestion, { readonly kind: "drive" }>;

async function answerTo(
  { profile, findings, repairs }: Question,
  question: MoreQuestion,
): Promise<Advice> {
  switch (question.kind) {
    case "next": {
      const { atHand, open, putOff, patienceMs } = question;
      const end = performance.now() + patienceMs;
      const isEnough = (): boolean => performance.now() > end;
      return { next: next(profile, findings, { repairs, atHand, open, putOff, isEnough }) };
    }
    case "mend": {
      const { wanted, atHand, open, units } = question;
      return { mending: mend(profile, findings, wanted, { repairs, atHand, open, units }) };
    }
    case "sensitivity": {
      const { sensitivityOf } = await import("./thread-sensitivity.ts");
      return { sensitivity: sensitivityOf(profile, findings, repairs, question.shakes) };
    }
    case "names":
      // Without findings, which a name does not depend on: that is soon worked out.
      return { names: repairs.map((done) => mend(profile, [], done).name) };
  }
}
