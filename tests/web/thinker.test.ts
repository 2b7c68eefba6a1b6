// Does the page hear the answer to its last question, whatever it asked before?
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { Thinker } from "../../packages/web/src/state/thinker.ts";

interface Told {
  readonly says?: string;
  readonly broke?: string;
  readonly ahead?: string;
  readonly turn?: number;
}

interface Asked {
  readonly of: string;
  readonly turn?: number;
}

/** A thread that answers when it is told to, and in what order. */
class HandWorker {
  static all: HandWorker[] = [];
  readonly asked: Asked[] = [];
  isStopped = false;
  onmessage: ((event: { data: Told }) => void) | undefined;
  onerror: ((event: { message: string }) => void) | undefined;
  constructor() {
    HandWorker.all.push(this);
  }
  postMessage(question: Asked): void {
    this.asked.push(question);
  }
  terminate(): void {
    this.isStopped = true;
  }
  answer(of: string, told: Told = { says: `of ${of}` }): void {
    const turn = this.asked.find((asked) => asked.of === of)?.turn;
    if (turn === undefined) throw new Error(`${of} was not asked.`);
    this.onmessage?.({ data: { ...told, turn } });
  }
  get words(): readonly string[] {
    return this.asked.map(({ of }) => of);
  }
}

const worker = (index: number): HandWorker => {
  const found = HandWorker.all[index];
  if (!found) throw new Error(`There is no thread ${index}.`);
  return found;
};

/** What came of a question by now. */
function watched(promise: Promise<Told>): { told: Told | Error | undefined } {
  const seen: { told: Told | Error | undefined } = { told: undefined };
  promise.then(
    (told) => {
      seen.told = told;
    },
    (error: Error) => {
      seen.told = error;
    },
  );
  return seen;
}

beforeEach(() => {
  vi.useFakeTimers();
  HandWorker.all = [];
  vi.stubGlobal("Worker", HandWorker);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const soon = (): Promise<unknown> => vi.advanceTimersByTimeAsync(10);
const late = (): Promise<unknown> => vi.advanceTimersByTimeAsync(2000);

describe("a thinker", () => {
  it("gives the answer of its thread", async () => {
    const seen = watched(new Thinker<Asked, Told>("x").ask({ of: "a" }));
    worker(0).answer("a");
    await soon();
    expect(seen.told).toMatchObject({ says: "of a" });
    await late();
    expect(worker(0).isStopped).toBe(false);
  });

  it("drops an answer that comes soon after the next question, and keeps the thread", async () => {
    const thinker = new Thinker<Asked, Told>("x");
    const [first, second, third] = ["a", "b", "c"].map((name) =>
      watched(thinker.ask({ of: name })),
    );
    for (const name of ["a", "b", "c"]) worker(0).answer(name);
    await late();
    expect([first?.told, second?.told]).toEqual([undefined, undefined]);
    expect(third?.told).toMatchObject({ says: "of c" });
    expect(HandWorker.all).toHaveLength(1);
    expect(worker(0).isStopped).toBe(false);
  });

  it("takes no earlier question's answer for its own, whichever comes first", async () => {
    const thinker = new Thinker<Asked, Told>("x");
    const first = watched(thinker.ask({ of: "a" }));
    const second = watched(thinker.ask({ of: "b" }));
    worker(0).answer("b");
    await soon();
    worker(0).answer("a");
    await late();
    expect(first.told).toBeUndefined();
    expect(second.told).toMatchObject({ says: "of b" });
    expect(worker(0).isStopped).toBe(false);
  });

  it("stops a thread that is long at an answer nobody waits for, and asks another one", async () => {
    const thinker = new Thinker<Asked, Told>("x");
    const first = watched(thinker.ask({ of: "a" }));
    const second = watched(thinker.ask({ of: "b" }));
    await late();
    expect(worker(0).isStopped).toBe(true);
    expect(worker(1).words).toEqual(["b"]);
    worker(1).answer("b");
    await soon();
    expect(second.told).toMatchObject({ says: "of b" });
    expect(first.told).toBeUndefined();
    // Another one is there for the next time.
    expect(HandWorker.all).toHaveLength(3);
  });

  it("asks nothing anew where all is told", async () => {
    const thinker = new Thinker<Asked, Told>("x");
    const first = watched(thinker.ask({ of: "a" }));
    thinker.tell({ of: "known" });
    await late();
    expect(worker(0).isStopped).toBe(true);
    expect(first.told).toBeUndefined();
    expect(HandWorker.all.flatMap(({ words }) => words)).toEqual(["a", "known"]);
  });

  it("says what broke, and answers the next question", async () => {
    const thinker = new Thinker<Asked, Told>("x");
    const first = watched(thinker.ask({ of: "a" }));
    worker(0).answer("a", { broke: "no table" });
    await soon();
    expect(first.told).toEqual(new Error("no table"));
    const second = watched(thinker.ask({ of: "b" }));
    worker(0).onerror?.({ message: "gone" });
    await soon();
    expect(second.told).toEqual(new Error("gone"));
    const third = watched(thinker.ask({ of: "c" }));
    worker(1).answer("c");
    await soon();
    expect(third.told).toMatchObject({ says: "of c" });
  });

  it("hears what is thought ahead only while nobody waits", async () => {
    const heard: Told[] = [];
    const thinker = new Thinker<Asked, Told>("x", (told) => heard.push(told));
    thinker.tell({ of: "known" });
    worker(0).onmessage?.({ data: { ahead: "k1" } });
    const seen = watched(thinker.ask({ of: "a" }));
    worker(0).onmessage?.({ data: { ahead: "k2" } });
    await soon();
    expect(heard).toEqual([{ ahead: "k1" }]);
    expect(seen.told).toBeUndefined();
  });
});
