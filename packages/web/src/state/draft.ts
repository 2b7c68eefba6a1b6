// What is ticked or typed and not yet confirmed? Kept on the device beside the case, so that neither a tap
// elsewhere nor a reload loses it; it is no answer to weigh before it is confirmed.
import type { Finding } from "@half-order/core";
import { computed, effect, signal } from "@preact/signals";
import { caseId } from "./case.ts";
import { findingRow } from "./catalogue.ts";

/** Ticked options, or what stands in the fields, in the order of its answerer. */
export type Draft = readonly string[];
type Drafts = Readonly<Record<string, Draft>>;

const keyOf = (id: string): string => `half-order.draft.${id}`;

const drafts = signal<Drafts>({});

effect(() => {
  drafts.value = caseId.value === undefined ? {} : read(caseId.value);
});

/** A question, of one cylinder where it asks for one, as drafts name it. */
export function draftKey(finding: string, cylinder?: string | number): string {
  return cylinder === undefined ? finding : `${finding} ${cylinder}`;
}

export function draftOf(key: string): Draft | undefined {
  return drafts.value[key];
}

/** The findings with something unconfirmed. */
export const drafted = computed(() => Object.keys(drafts.value).map((key) => key.split(" ", 1)[0]));

/** What is ticked, as answers: what speaks against driving is not waited for. */
export const ticked = computed((): readonly Finding[] =>
  Object.entries(drafts.value).flatMap(([finding, draft]) => {
    const row = findingRow(finding);
    const answer = draft.filter((option) => row?.kind === "several" && option in row.options);
    return answer.length > 0 ? [{ finding, answer }] : [];
  }),
);

/** `undefined` puts it away. */
export function setDraft(key: string, draft: Draft | undefined): void {
  const id = caseId.peek();
  if (id === undefined || (!draft && !drafts.peek()[key])) return;
  const { [key]: _, ...others } = drafts.peek();
  drafts.value = draft ? { ...others, [key]: draft } : others;
  try {
    localStorage.setItem(keyOf(id), JSON.stringify(drafts.peek()));
  } catch {
    // A device that keeps nothing: it holds until the page is closed.
  }
}

function read(id: string): Drafts {
  try {
    return (JSON.parse(localStorage.getItem(keyOf(id)) ?? "{}") as Drafts | null) ?? {};
  } catch {
    // A device that lets nobody look has kept nothing.
    return {};
  }
}
