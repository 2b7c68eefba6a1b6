// The first pages kept the work of a case beside it: where does that go? Into the case, once.
import type { ProvingDrive, SpentTime, WorkBook } from "@half-order/core/wire";
import { joinCase, openCase } from "./case.ts";
import { lookAtShelf, reshelve } from "./keep.ts";
import { type KeptCase, keptCase } from "./store.ts";

const KEY = "half-order.work.";

/** Moves what is left of it. Never rejects: what could not be moved stays for the next time. */
export async function takeInOldWork(): Promise<void> {
  for (const key of oldKeys()) {
    const id = key.slice(KEY.length);
    try {
      await takeIn(id, readOld(localStorage.getItem(key)));
      const kept = await keptCase(id);
      const isGone = !kept && openCase.peek()?.id !== id;
      if (isGone || kept?.doc.work) localStorage.removeItem(key);
    } catch {
      // The device does not let the page look at its cases, which the page says by itself.
      return;
    }
  }
}

async function takeIn(id: string, work: WorkBook = {}): Promise<void> {
  const withWork = (of: KeptCase): KeptCase => ({ ...of, doc: { ...of.doc, work } });
  const mine = openCase.peek();
  if (mine?.id === id) {
    if (!mine.doc.work) await joinCase(mine, withWork(mine));
    // By then it is written.
    return lookAtShelf();
  }
  const kept = await keptCase(id);
  if (kept && !kept.doc.work) await reshelve(kept, withWork(kept));
}

function oldKeys(): readonly string[] {
  try {
    return Object.keys(localStorage).filter((key) => key.startsWith(KEY));
  } catch {
    // A device that lets nobody look has kept nothing.
    return [];
  }
}

/** As the first pages wrote it. */
interface OldWork {
  readonly open: readonly string[];
  readonly spent: readonly SpentTime[];
  readonly ticks: Readonly<Record<string, readonly string[]>>;
  readonly drives: Readonly<Record<string, readonly Omit<ProvingDrive, "of" | "when">[]>>;
}

/** The book that it makes; `undefined` for what is none. */
export function readOld(text: string | null): WorkBook | undefined {
  const old = parsed(text);
  if (!old) return undefined;
  return {
    open: old.open,
    spent: old.spent,
    ticks: Object.entries(old.ticks).flatMap(([list, lines]) =>
      lines.map((line) => ({ list, line })),
    ),
    drives: Object.entries(old.drives).flatMap(([of, drives]) =>
      // Their moments were not kept: their number tells them apart.
      drives.map((drive, i) => ({ of, ...drive, when: `${of} ${i + 1}` })),
    ),
  };
}

function parsed(text: string | null): OldWork | undefined {
  try {
    const value: unknown = JSON.parse(text ?? "null");
    return isOld(value) ? value : undefined;
  } catch {
    // What was cut off is no work.
    return undefined;
  }
}

/** Only this page wrote it: enough to know that it is one. */
function isOld(value: unknown): value is OldWork {
  if (typeof value !== "object" || value === null) return false;
  const { open, spent, ticks, drives } = value as Partial<Record<keyof OldWork, unknown>>;
  return (
    Array.isArray(open) &&
    Array.isArray(spent) &&
    typeof ticks === "object" &&
    ticks !== null &&
    typeof drives === "object" &&
    drives !== null
  );
}
