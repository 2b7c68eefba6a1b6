// The reasoning, in a thread of its own: weighing may take longer than a finger waits. The thread runs
// the same script as the page (see main.tsx), so nothing is loaded twice.
import {
  type EngineProfile,
  type FaultAt,
  type Finding,
  InputError,
  type Ledger,
  type Problem,
  type Ranking,
  rank,
  why,
} from "@half-order/core";

export interface Question {
  readonly profile: EngineProfile;
  readonly findings: readonly Finding[];
  /** With a fault its ledger is asked for, else the ranking. */
  readonly of?: FaultAt;
  /** Probability that the ranking may leave unsearched. */
  readonly tolerance?: number;
}

export interface Thought {
  readonly ranking?: Ranking;
  readonly ledger?: Ledger;
  readonly problems?: readonly Problem[];
}

/** A question replaces the one before it: an answer that nobody waits for is not worked out. */
export class Thinker {
  private worker: Worker | undefined;
  private isBusy = false;
  private readonly address: string;

  /** `address` is that of the script that calls `answerQuestions` in a thread. */
  constructor(address: string) {
    this.address = address;
  }

  /** Never settles when another question comes first; rejects when the thread breaks. */
  ask(question: Question): Promise<Thought> {
    if (this.isBusy) this.stop();
    this.worker ??= new Worker(this.address, { type: "module" });
    const { worker } = this;
    this.isBusy = true;
    return new Promise((resolve, reject) => {
      worker.onmessage = ({ data }: MessageEvent<Thought>) => {
        this.isBusy = false;
        resolve(data);
      };
      worker.onerror = (event) => {
        this.stop();
        reject(new Error(event.message || "The thread that weighs did not start."));
      };
      worker.postMessage(question);
    });
  }

  stop(): void {
    this.worker?.terminate();
    this.worker = undefined;
    this.isBusy = false;
  }
}

/** The thread's side: answers each question that comes. */
export function answerQuestions(): void {
  addEventListener("message", ({ data }: MessageEvent<Question>) => {
    postMessage(think(data));
  });
}

/** What the library says; problems of the input are an answer too. */
export function think({ profile, findings, of, tolerance }: Question): Thought {
  try {
    if (of) return { ledger: why(profile, findings, of) };
    return { ranking: rank(profile, findings, tolerance === undefined ? {} : { tolerance }) };
  } catch (error) {
    if (error instanceof InputError) return { problems: error.problems };
    throw error;
  }
}
