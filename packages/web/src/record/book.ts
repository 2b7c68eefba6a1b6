// The records of the open case, and the one that is being written. What is written survives a reload and a
// dead battery, like every answer.
import type { PlugRecord } from "@half-order/core";
import { computed, effect, signal } from "@preact/signals";
import { changeCase, openCase } from "../state/case.ts";
import { today } from "./day.ts";
import { type Draft, isEmpty, newDraft, withFindings, withRecord } from "./draft.ts";

const NO_RECORDS: readonly PlugRecord[] = [];

export const records = computed(() => openCase.value?.doc.records ?? NO_RECORDS);

/** Keeps a record in the place of that of the day `was`, and its plugs as findings too if wished. */
export function keepRecord(record: PlugRecord, was: string | undefined, isFinding: boolean): void {
  const when = new Date().toISOString();
  changeCase((doc) => ({
    ...doc,
    records: withRecord(doc.records ?? [], record, was),
    findings: isFinding ? withFindings(doc.findings, record.plugs, when) : doc.findings,
  }));
}

export function dropRecord(day: string): void {
  changeCase((doc) => ({
    ...doc,
    records: (doc.records ?? []).filter(({ when }) => when !== day),
  }));
}

/** The draft of the open case. */
export const draft = signal<Draft>({ when: "", plugs: [] });
/** False once the device has refused to keep a draft. */
export const isDraftKept = signal(true);

const keyOf = (caseId: string): string => `half-order.record.${caseId}`;

/** Takes up the draft of a case where it was left, and keeps it from now on; returns the end of that. */
export function followDraft(caseId: string): () => void {
  draft.value = read(caseId) ?? newDraft(today(), records.peek());
  return effect(() => write(caseId, draft.value));
}

/** Forgets the draft of a case that goes; returns it, to put it back. */
export function dropDraft(caseId: string): Draft | undefined {
  const left = read(caseId);
  if (left) localStorage.removeItem(keyOf(caseId));
  return left;
}

export function putBackDraft(caseId: string, left: Draft): void {
  write(caseId, left);
}

function read(caseId: string): Draft | undefined {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(keyOf(caseId)) ?? "null");
    return isDraft(value) ? value : undefined;
  } catch {
    // A device that lets nobody look has kept nothing; what was cut off is no draft.
    return undefined;
  }
}

/** Only this page writes drafts: enough to know that it is one. */
function isDraft(value: unknown): value is Draft {
  return (
    typeof value === "object" &&
    value !== null &&
    typeof (value as Partial<Draft>).when === "string" &&
    Array.isArray((value as Partial<Draft>).plugs)
  );
}

function write(caseId: string, value: Draft): void {
  try {
    if (isEmpty(value)) localStorage.removeItem(keyOf(caseId));
    else localStorage.setItem(keyOf(caseId), JSON.stringify(value));
    isDraftKept.value = true;
  } catch {
    // Said on the screen.
    isDraftKept.value = false;
  }
}
