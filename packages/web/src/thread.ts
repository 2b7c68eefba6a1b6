// The thread's side of the reasoning: answers each question of the page. Only it loads the fault tables.
import { FAULTS, FINDINGS, InputError, rank } from "@half-order/core";
import { isOlder } from "./packed/pack.ts";
import { rankingKey, SOON } from "./state/look.ts";
import type { Facts, Question, Thought } from "./state/thinker.ts";
import { nextQuestions } from "./thread-ahead.ts";
import { adviseDrive } from "./thread-drive.ts";
import { fillKnowledge } from "./thread-tables.ts";

/** Fetches what the question needs, and answers it. */
export async function answer(question: Question): Promise<Thought> {
  const isFirst = question.findings.every(({ finding }) => firstFindings.has(finding));
  const { advice, of, most, repairs } = question;
  const asksMore = advice !== undefined && (advice.kind !== "drive" || advice.isInFull);
  const isEarly = isFirst && repairs.length === 0 && !isOlder(question.profile);
  if (!isEarly || asksMore) await fillKnowledge();
  if (advice?.kind === "drive") return { advice: adviseDrive(question) };
  if (advice) {
    const { advise } = await import("./thread-advice.ts");
    return { advice: await advise(question, advice) };
  }
  if (of) return (await import("./thread-ledger.ts")).explain(question);
  if (!isEarly || most !== SOON.most) return think(question);
  const thought = ahead.get(rankingKey(question)) ?? think(question);
  goOn(question);
  return thought;
}

/** From a ranking that is known to those that may be asked for next. */
export function goOn(known: Question): undefined {
  ahead.clear();
  asked += 1;
  lookAhead(nextQuestions(known), asked);
}

/** What was thought ahead and told, by `rankingKey`: the page may have asked just before it heard of it. */
const ahead = new Map<string, Thought>();
let asked = 0;
/** The page draws meanwhile. */
const PAUSE_MS = 40;
/** Before the first time: a page that still comes up has more need of the processor. */
const CALM_MS = 3000;

/** One question after the other, until the thread is asked the next time. It also makes the code fast. */
function lookAhead([next, ...rest]: readonly Question[], after: number): void {
  if (!next) return;
  setTimeout(
    () => {
      if (asked !== after) return;
      const key = rankingKey(next);
      const thought = { ...think(next), ahead: key };
      ahead.set(key, thought);
      postMessage(thought);
      lookAhead(rest, after);
    },
    asked > 1 || ahead.size > 0 ? PAUSE_MS : CALM_MS,
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
    return { ranking: rank(profile, findings, options), facts: factsNow() };
  } catch (error) {
    if (error instanceof InputError) return { problems: error.problems };
    throw error;
  }
}

/** What drawings and questions need to know of the fault tables, as far as they are there. */
function factsNow(): Facts {
  return {
    ofCoil: FAULTS.filter(({ part }) => part.at === "coil").map(({ id }) => id),
    ofHub: FAULTS.filter(
      ({ part, shares }) => part.at === "engine" && Object.keys(shares).join() === "distributor",
    ).map(({ id }) => id),
  };
}
