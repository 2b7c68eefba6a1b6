// The work on the open case beside finding and mending: what is off the engine, what is ticked of a put-back
// list, how the proving drives went, the minutes spent. Part of its document, like every answer.
import type { TrialOutcome } from "@half-order/core";
import type { ProvingDrive, SpentTime, TickedLine, WorkBook } from "@half-order/core/wire";
import { computed } from "@preact/signals";
import { changeCase, openCase } from "./case.ts";
import { takeInOldWork } from "./old-work.ts";

type Whole = Required<WorkBook>;

const NONE: Whole = { open: [], spent: [], ticks: [], drives: [] };

/** The work on the open case; a list that did not change stays the same list. */
export const work = computed<Whole>(() => {
  const book = openCase.value?.doc.work;
  return book ? { ...NONE, ...book } : NONE;
});

/** Ids of what is off the engine. */
export const offNow = computed<readonly string[]>(() => work.value.open);

function changeWork(edit: (before: Whole) => WorkBook): void {
  changeCase((doc) => ({ ...doc, work: { ...doc.work, ...edit({ ...NONE, ...doc.work }) } }));
}

/** These are off the engine: for a step they need not be taken off any more. */
export function setOpen(ids: readonly string[]): void {
  if (ids.every((id) => work.value.open.includes(id))) return;
  changeWork(({ open }) => ({ open: [...new Set([...open, ...ids])] }));
}

/** Everything is back on. */
export function closeUp(): void {
  if (work.value.open.length === 0) return;
  changeWork(() => ({ open: [] }));
}

/** A repair is done: everything is back on, and its list may be needed again. */
export function closeList(of: string): void {
  changeWork(({ ticks }) => ({ open: [], ticks: ticks.filter(({ list }) => list !== of) }));
}

/** Notes what a step took; a second time takes the place of the first. */
export function spend(entry: Omit<SpentTime, "when">): void {
  changeWork(({ spent }) => ({
    spent: [...spent.filter(({ step }) => step !== entry.step), { ...entry, when: now() }],
  }));
}

/** The lines of a put-back list that are ticked. */
export function tickedOf(of: string): readonly string[] {
  return work.value.ticks.flatMap(({ list, line }) => (list === of ? [line] : []));
}

/**
 * Ticks a line of a put-back list, or takes the tick away, with those of the lines that may only follow it.
 */
export function tick(of: string, line: string, isDone: boolean): void {
  const stays = (other: TickedLine): boolean =>
    other.list !== of || (other.line !== line && (isDone || ONLY_AFTER[other.line] !== line));
  changeWork(({ ticks }) => ({
    ticks: [...ticks.filter(stays), ...(isDone ? [{ list: of, line, when: now() }] : [])],
  }));
}

/** Lines that wait for another: a lock that is closed first hides that the connector is not home. */
export const ONLY_AFTER: Readonly<Record<string, string>> = {
  "connector.lock": "connector.click",
};

/** The proving drives of a repair, the first one first; `of`: see `ProvingDrive`. */
export function drivesOf(of: string): readonly ProvingDrive[] {
  return work.value.drives.filter((drive) => drive.of === of);
}

/** Notes one more drive of a repair. */
export function addDrive(of: string, outcome: TrialOutcome): void {
  changeWork(({ drives }) => ({ drives: [...drives, { of, ...outcome, when: now() }] }));
}

/** Takes the last drive of a repair back. */
export function dropDrive(of: string): void {
  const last = drivesOf(of).at(-1);
  changeWork(({ drives }) => ({ drives: drives.filter((drive) => drive !== last) }));
}

void takeInOldWork();

function now(): string {
  return new Date().toISOString();
}
