// The thread's side of the reasoning: answers each question of the page. Only it loads the fault tables.
import { FAULTS, FINDINGS, InputError, rank } from "@half-order/core";
import type { Facts, Question, Thought } from "./state/thinker.ts";
import { adviseDrive } from "./thread-drive.ts";
import { fillKnowledge } from "./thread-tables.ts";

/** Fetches what the question needs, and answers it. */
export async function answer(question: Question): Promise<Thought> {
  asked += 1;
  const isFirst = question.findings.every(({ finding }) => firstFindings.has(finding));
  const { advice } = question;
  const asksMore = advice !== undefined && (advice.kind !== "drive" || advice.isInFull);
  if (!isFirst || asksMore || question.repairs.length > 0) await fillKnowledge();
  if (!advice) {
    if (!question.of) {
      rehearse(asked);
      return think(question);
    }
    return (await import("./thread-ledger.ts")).explain(question);
  }
  if (advice.kind === "drive") return { advice: adviseDrive(question) };
  const { advise } = await import("./thread-advice.ts");
  return { advice: await advise(question, advice) };
}

/** After so many rankings that nobody reads the code is fast when somebody waits for one. */
const REHEARSALS = 8;
const PAUSE_MS = 30;
/** Before the first of them: a page that still comes up has more need of the processor. */
const CALM_MS = 3000;
let asked = 0;
let rehearsed = 0;

/** Ranks an engine that is soon ranked, again and again, until the thread is asked something. */
function rehearse(after: number): void {
  setTimeout(
    () => {
      if (asked !== after || rehearsed >= REHEARSALS) return;
      rehearsed += 1;
      think(REHEARSAL);
      rehearse(after);
    },
    rehearsed > 0 ? PAUSE_MS : CALM_MS,
  );
}

const firstFindings = new Set(
  FINDINGS.filter(({ first }) => first !== undefined).map(({ id }) => id),
);

/** The ranking; problems of the input are an answer too. */
export function think({ profile, findings, repairs, tolerance, most }: Question): Thought {
  try {
    const options = {
      repairs,
      hypotheses: 0,
      ...(tolerance === undefined ? {} : { tolerance }),
      ...(most === undefined ? {} : { most }),
    };
    return { ranking: rank(profile, findings, options), facts };
  } catch (error) {
    if (error instanceof InputError) return { problems: error.problems };
    throw error;
  }
}

/** Every first question that is answered by one option, answered. */
export const REHEARSAL: Question = {
  profile: { cylinders: 4, ignition: "rail", firingOrder: [1, 3, 4, 2] },
  findings: FINDINGS.filter(({ first, kind }) => first !== undefined && kind === "choice").map(
    ({ id, options }) => ({ finding: id, answer: Object.keys(options)[0] ?? "" }),
  ),
  repairs: [],
  tolerance: 0.02,
  most: 2,
};

/** What drawings and questions need to know of the fault tables. */
const facts: Facts = {
  ofCoil: FAULTS.filter(({ part }) => part.at === "coil").map(({ id }) => id),
  ofHub: FAULTS.filter(
    ({ part, shares }) => part.at === "engine" && Object.keys(shares).join() === "distributor",
  ).map(({ id }) => id),
};
