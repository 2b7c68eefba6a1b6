// The work on the open case that is no part of its document: what is off the engine, what is ticked of a
// put-back list, how the proving drives went, the minutes spent. Kept on the device beside the case.
import type { TrialOutcome } from "@half-order/core";
import { computed, signal } from "@preact/signals";
import { caseId } from "./case.ts";
import type { Spent } from "./step.ts";

export interface Work {
  /** Ids of openings that are open. */
  readonly open: readonly string[];
  readonly spent: readonly Spent[];
  /** By repair, the lines of its put-back list that are ticked. */
  readonly ticks: Readonly<Record<string, readonly string[]>>;
  /** By the moment at which a repair was noted: its proving drives, the first one first. */
  readonly drives: Readonly<Record<string, readonly TrialOutcome[]>>;
}

const NONE: Work = { open: [], spent: [], ticks: {}, drives: {} };

/** False once the device has refused to keep it: then it holds until the page is closed. */
export const isWorkKept = signal(true);

/** What this page has read or written, by case. */
const books = signal<ReadonlyMap<string, Work>>(new Map());

/** The work on the open case. */
export const work = computed<Work>(() => {
  const id = caseId.value;
  return id === undefined ? NONE : (books.value.get(id) ?? read(id));
});

/** Changes the work on the open case and keeps it. */
export function changeWork(edit: (before: Work) => Partial<Work>): void {
  const id = caseId.value;
  if (id === undefined) return;
  const next = { ...work.value, ...edit(work.value) };
  books.value = new Map(books.value).set(id, next);
  try {
    localStorage.setItem(keyOf(id), JSON.stringify(next));
    isWorkKept.value = true;
  } catch {
    // Said beside the ticks.
    isWorkKept.value = false;
  }
}

/** These are off the engine: for a step they need not be taken off any more. */
export function setOpen(ids: readonly string[]): void {
  changeWork(({ open }) => ({ open: [...new Set([...open, ...ids])] }));
}

/** Everything is back on. */
export function closeUp(): void {
  changeWork(() => ({ open: [] }));
}

/** Notes what a step took; a second time takes the place of the first. */
export function spend(entry: Spent): void {
  changeWork(({ spent }) => ({
    spent: [...spent.filter(({ step }) => step !== entry.step), entry],
  }));
}

/**
 * Ticks a line of a put-back list, or takes the tick away, with those of the lines that may only follow it.
 */
export function tick(repair: string, line: string, isDone: boolean): void {
  changeWork(({ ticks }) => {
    const without = (ticks[repair] ?? []).filter(
      (each) => each !== line && (isDone || ONLY_AFTER[each] !== line),
    );
    return { ticks: { ...ticks, [repair]: isDone ? [...without, line] : without } };
  });
}

/** Lines that wait for another: a lock that is closed first hides that the connector is not home. */
export const ONLY_AFTER: Readonly<Record<string, string>> = {
  "connector.lock": "connector.click",
};

export function setDrives(when: string, drives: readonly TrialOutcome[]): void {
  changeWork((before) => ({ drives: { ...before.drives, [when]: drives } }));
}

const keyOf = (id: string): string => `half-order.work.${id}`;

function read(id: string): Work {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(keyOf(id)) ?? "null");
    return isWork(value) ? value : NONE;
  } catch {
    // A device that lets nobody look has kept nothing; what was cut off is no work.
    return NONE;
  }
}

/** Only this page writes it: enough to know that it is one. */
function isWork(value: unknown): value is Work {
  if (typeof value !== "object" || value === null) return false;
  const { open, spent, ticks, drives } = value as Partial<Record<keyof Work, unknown>>;
  return (
    Array.isArray(open) &&
    Array.isArray(spent) &&
    typeof ticks === "object" &&
    typeof drives === "object"
  );
}
