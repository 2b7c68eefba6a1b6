// Two tabs changed one case: what does it hold now, so that nobody loses an answer?
import type { Finding, RepairDone } from "@half-order/core";
import type { SpentTime, TickedLine } from "@half-order/core/wire";
import type { CaseDoc } from "./store.ts";

export interface Merged {
  readonly doc: CaseDoc;
  /** Fields, and findings by name, that both changed, each in its own way; ours holds. */
  readonly clashes: readonly string[];
}

/** Both changes since `base`. Where both changed the same thing differently, ours holds. */
export function mergeDocs(base: CaseDoc, ours: CaseDoc, theirs: CaseDoc): Merged {
  const clashes: string[] = [];
  const [before, mine, other] = [base, ours, theirs].map(fieldsOf) as [Fields, Fields, Fields];
  return { doc: mergeFields(before, mine, other, clashes) as unknown as CaseDoc, clashes };
}

/** Clashes are added to the list that is handed in. */
function mergeFields(before: Fields, mine: Fields, other: Fields, clashes: string[]): Fields {
  const merged: Record<string, unknown> = { ...mine };
  for (const field of new Set([...Object.keys(before), ...Object.keys(other)])) {
    const [was, here, there] = [before[field], mine[field], other[field]];
    if (isSame(was, there)) continue;
    if (isList(here ?? there) && isList(there ?? here)) {
      merged[field] = mergeList(listOf(was), listOf(here), listOf(there), clashes);
    } else if (field === "work") {
      // Lists of its own; a tick that two hands set is no clash.
      merged[field] = mergeFields(fieldsOf(was), fieldsOf(here), fieldsOf(there), []);
    } else if (!isSame(was, here)) {
      if (!isSame(here, there)) clashes.push(field);
    } else if (there === undefined) delete merged[field];
    else merged[field] = there;
  }
  return merged;
}

type Fields = Readonly<Record<string, unknown>>;

function fieldsOf(value: unknown): Fields {
  return (value ?? {}) as Fields;
}

function isList(value: unknown): value is readonly unknown[] {
  return Array.isArray(value);
}

function listOf(value: unknown): readonly unknown[] {
  return isList(value) ? value : [];
}

/** Entries in our order, then those that only the other side added. */
function mergeList(
  base: readonly unknown[],
  ours: readonly unknown[],
  theirs: readonly unknown[],
  clashes: string[],
): readonly unknown[] {
  const [before, mine, other] = [base, ours, theirs].map(entriesOf) as [Entries, Entries, Entries];
  const merged = new Map(mine);
  for (const key of new Set([...before.keys(), ...other.keys()])) {
    const entry = other.get(key);
    if (isSame(before.get(key), entry)) continue;
    if (!isSame(before.get(key), mine.get(key))) {
      if (!isSame(mine.get(key), entry)) clashes.push(key);
    } else if (entry === undefined) merged.delete(key);
    else merged.set(key, entry);
  }
  return [...merged.values()];
}

type Entries = ReadonlyMap<string, unknown>;

function entriesOf(list: readonly unknown[]): Entries {
  return new Map(list.map((entry) => [keyOf(entry), entry]));
}

/**
 * What makes an entry the same on both sides: for a finding its question and cylinder, for minutes the step,
 * for a tick its line; for anything else, such as a repair, which may be done twice, also when it was done.
 */
function keyOf(entry: unknown): string {
  const { finding, step, line, list, repair, cylinder, when } = entry as Partial<
    Finding & SpentTime & TickedLine & RepairDone
  >;
  const once = finding ?? step ?? line;
  const parts = once === undefined ? [repair, cylinder, when] : [once, list, cylinder];
  const known = parts.filter((part) => part !== undefined);
  return known.length > 0 ? known.join(" ") : JSON.stringify(entry);
}

/** Of JSON values: the moment at which something was entered does not make it another answer. */
function isSame(a: unknown, b: unknown): boolean {
  return JSON.stringify(withoutWhen(a)) === JSON.stringify(withoutWhen(b));
}

function withoutWhen(value: unknown): unknown {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return value;
  const { when: _, ...rest } = value as { readonly when?: unknown };
  return rest;
}
