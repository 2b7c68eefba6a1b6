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
  /** What broke in the thread, in its own words. */
  readonly broke?: string;
}

/** What a thread may answer to anything: that it broke. */
export interface Broken {
  readonly broke?: string;
}

/** A question replaces the one before it: an answer that nobody waits for is not worked out. */
export class Thinker<Asked = Question, Told extends Broken = Thought> {
  private worker: Worker | undefined;
  /** Waits, warm, for the day on which the other one is stopped in the middle of its work. */
  private spare: Worker | undefined;
  private isBusy = false;
  private wasStopped = false;
  private readonly address: string;

  /** `address` is that of the script that answers questions when it runs in a thread. */
  constructor(address: string) {
    this.address = address;
  }

  /** Starts the thread, so that it is warm when the first question comes. */
  start(): Worker {
    this.worker ??= this.spare ?? this.fresh();
    this.spare = undefined;
    return this.worker;
  }

  private fresh(): Worker {
    return new Worker(this.address, { type: "module" });
  }

  /** Never settles when another question comes first; rejects when the thread breaks. */
  ask(question: Asked): Promise<Told> {
    if (this.isBusy) this.stop();
    const worker = this.start();
    this.isBusy = true;
    return new Promise((resolve, reject) => {
      worker.onmessage = ({ data }: MessageEvent<Told>) => {
        this.isBusy = false;
        if (this.wasStopped) this.spare ??= this.fresh();
        if (data.broke === undefined) resolve(data);
        else reject(new Error(data.broke));
      };
      worker.onerror = (event) => {
        this.stop();
        reject(new Error(event.message || "The thread that weighs did not start."));
      };
      worker.postMessage(question);
    });
  }

  stop(): void {
    this.wasStopped = true;
    this.worker?.terminate();
    this.worker = undefined;
    this.isBusy = false;
  }
}
