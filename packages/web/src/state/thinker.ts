// The reasoning runs in a thread of its own: weighing may take longer than a finger waits. This is the
// page's side of it; the thread's side is `thread.ts`, which the thread loads by itself.
import type {
  EngineProfile,
  FaultAt,
  Finding,
  Ledger,
  Problem,
  Ranking,
  RepairDone,
} from "@half-order/core";
import type { Advice, AdviceQuestion } from "./advising.ts";

export interface Question {
  readonly profile: EngineProfile;
  readonly findings: readonly Finding[];
  readonly repairs: readonly RepairDone[];
  /** With a fault its ledger is asked for, else the ranking. */
  readonly of?: FaultAt;
  /** Asks for something else than ranking or ledger. */
  readonly advice?: AdviceQuestion;
  /** Probability that the ranking may leave unsearched. */
  readonly tolerance?: number;
  /** Faults present together at most that it looks at. */
  readonly most?: 2 | 3;
  /** The page has the ranking: nothing is told but what may be asked next. */
  readonly isKnown?: boolean;
}

/** What the page needs to know of fault tables that it does not load. */
export interface Facts {
  /** Faults whose part is a coil, whichever end of it has failed. */
  readonly ofCoil: readonly string[];
  /** Faults of parts that serve the whole engine and that only a distributor has. */
  readonly ofHub: readonly string[];
}

export interface Thought {
  readonly ranking?: Ranking;
  readonly facts?: Facts;
  readonly ledger?: Ledger;
  readonly advice?: Advice;
  readonly problems?: readonly Problem[];
  /** Of a ranking that nobody has asked for yet, what it is asked for with, see `rankingKey`. */
  readonly ahead?: string;
  /** What broke in the thread, in its own words. */
  readonly broke?: string;
}

/** What a thread may answer to anything: that it broke, or what it was not asked for. */
export interface Broken extends Turn {
  readonly broke?: string;
  readonly ahead?: string;
}

/** Comes back with the answer: threads may answer a later question sooner. */
export interface Turn {
  readonly turn?: number;
}

interface Waiting<Asked, Told> {
  readonly turn: number;
  readonly question: Asked;
  readonly resolve: (told: Told) => void;
  readonly reject: (reason: Error) => void;
}

/** A thread that is stopped in its work begins anew, and slowly: what takes no longer than this is waited for. */
const PATIENCE_MS = 400;

/** A question replaces the one before it: an answer that nobody waits for is dropped, or not worked out at all. */
export class Thinker<Asked = Question, Told extends Broken = Thought> {
  private worker: Worker | undefined;
  /** Waits, warm, for the day on which the other one is stopped in the middle of its work. */
  private spare: Worker | undefined;
  private waiting: Waiting<Asked, Told> | undefined;
  private turn = 0;
  /** Turns whose answers are still to come. */
  private readonly open = new Set<number>();
  private patience: ReturnType<typeof setTimeout> | undefined;
  private wasStopped = false;
  private readonly address: string;
  private readonly onAhead: ((told: Told) => void) | undefined;

  /** `address` is that of the script that answers questions in a thread; `onAhead` hears what is thought ahead. */
  constructor(address: string, onAhead?: (told: Told) => void) {
    this.address = address;
    this.onAhead = onAhead;
  }

  /** Starts the thread, so that it is warm when the first question comes. */
  start(): Worker {
    this.worker ??= this.spare ?? this.fresh();
    this.spare = undefined;
    return this.worker;
  }

  private fresh(): Worker {
    const worker = new Worker(this.address, { type: "module" });
    worker.onmessage = ({ data }: MessageEvent<Told>) => this.hear(data);
    worker.onerror = ({ message }) => {
      this.waiting?.reject(new Error(message || "The thread that weighs did not start."));
      this.stop();
    };
    return worker;
  }

  private hear(told: Told): void {
    if (told.ahead !== undefined) {
      // Who asked meanwhile gets an answer of their own.
      if (!this.waiting) this.onAhead?.(told);
      return;
    }
    if (this.wasStopped) this.spare ??= this.fresh();
    this.open.delete(told.turn ?? 0);
    const { waiting } = this;
    if (waiting?.turn !== told.turn) return;
    this.waiting = undefined;
    if (told.broke === undefined) waiting?.resolve(told);
    else waiting?.reject(new Error(told.broke));
  }

  /** Never settles when another question comes first; rejects when the thread breaks. */
  ask(question: Asked): Promise<Told> {
    this.leave();
    return new Promise((resolve, reject) => {
      this.turn += 1;
      this.hand({ turn: this.turn, question, resolve, reject });
    });
  }

  private hand(waiting: Waiting<Asked, Told>): void {
    const { turn, question } = waiting;
    this.waiting = waiting;
    this.open.add(turn);
    this.start().postMessage({ ...question, turn });
  }

  /** Tells what is known already: no answer comes back, but what is thought ahead. */
  tell(known: Asked): void {
    this.leave();
    this.start().postMessage(known);
  }

  /** Nobody waits for the answer to the last question any more. */
  private leave(): void {
    if (!this.waiting) return;
    this.waiting = undefined;
    clearTimeout(this.patience);
    this.patience = setTimeout(() => {
      const { waiting } = this;
      if (this.open.size === (waiting ? 1 : 0)) return;
      this.stop();
      if (waiting) this.hand(waiting);
    }, PATIENCE_MS);
  }

  stop(): void {
    clearTimeout(this.patience);
    this.wasStopped = true;
    this.worker?.terminate();
    this.worker = undefined;
    this.waiting = undefined;
    this.open.clear();
  }
}
