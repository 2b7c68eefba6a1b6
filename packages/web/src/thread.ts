// The thread's side of the reasoning: answers each question of the page. Only it loads the fault tables.
import { FAULTS, FINDINGS, InputError, rank } from "@half-order/core";
import type { Facts, Question, Thought } from "./state/thinker.ts";
import { adviseDrive } from "./thread-drive.ts";
import { fillKnowledge } from "./thread-tables.ts";

/** Fetches what the question needs, and answers it. */
export async function answer(question: Question): Promise<Thought> {
  const isFirst = question.findings.every(({ finding }) => firstFindings.has(finding));
  const { advice } = question;
  const asksMore = advice !== undefined && (advice.kind !== "drive" || advice.isInFull);
  if (!isFirst || asksMore || question.repairs.length > 0) await fillKnowledge();
  if (!advice) {
    if (!question.of) return think(question);
    return (await import("./thread-ledger.ts")).explain(question);
  }
  if (advice.kind === "drive") return { advice: adviseDrive(question) };
  const { advise } = await import("./thread-advice.ts");
  return { advice: advise(question, advice) };
}

const firstFindings = new Set(
  FINDINGS.filter(({ first }) => first !== undefined).map(({ id }) => id),
);

/** The ranking; problems of the input are an answer too. */
export function think({ profile, findings, repairs, tolerance }: Question): Thought {
  try {
    const options = { repairs, ...(tolerance === undefined ? {} : { tolerance }) };
    return { ranking: rank(profile, findings, options), facts };
  } catch (error) {
    if (error instanceof InputError) return { problems: error.problems };
    throw error;
  }
}

/** What drawings and questions need to know of the fault tables. */
const facts: Facts = {
  ofCoil: FAULTS.filter(({ part }) => part.at === "coil").map(({ id }) => id),
};
