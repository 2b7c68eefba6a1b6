// The thread's side of what goes beyond a ranking: may one drive, what pays next, how is it mended. Fetched
// when the first such question comes.
import { driveAdvice, InputError, mend, next } from "@half-order/core";
import type { Advice, AdviceQuestion } from "./state/advising.ts";
import type { Question } from "./state/thinker.ts";

/** What the library says; problems of the input are an answer too. */
export function advise(of: Question, question: AdviceQuestion): Advice {
  try {
    return answerTo(of, question);
  } catch (error) {
    if (error instanceof InputError) return { problems: error.problems };
    throw error;
  }
}

function answerTo({ profile, findings, repairs }: Question, question: AdviceQuestion): Advice {
  switch (question.kind) {
    case "drive":
      return { drive: driveAdvice(profile, findings) };
    case "next": {
      const { atHand, open, patienceMs } = question;
      const end = performance.now() + patienceMs;
      const isEnough = (): boolean => performance.now() > end;
      return { next: next(profile, findings, { repairs, atHand, open, isEnough }) };
    }
    case "mend": {
      const { wanted, atHand, open, units } = question;
      return { mending: mend(profile, findings, wanted, { repairs, atHand, open, units }) };
    }
    case "names":
      // Without findings, which a name does not depend on: that is soon worked out.
      return { names: repairs.map((done) => mend(profile, [], done).name) };
  }
}
