// Keeps the open case on the device after each change, says so when that fails, and hears of what other
// tabs write, so that two tabs on one case hold the same.
import { effect, signal } from "@preact/signals";
import { closeCase, joinCase, openCase, resumeCase } from "./case.ts";
import { forgetCase, type KeptCase, keepCase, keptCase, keptCases } from "./store.ts";

/** What went wrong with the device's store last. */
export const storeTrouble = signal<"full" | "failed" | "unreadable" | undefined>(undefined);

/** What came of two tabs on one case, until it is put away. */
export interface TabNews {
  readonly kind: "joined" | "clash" | "deleted";
  /** What both had changed: fields and findings. */
  readonly clashes: readonly string[];
}
export const tabNews = signal<TabNews | undefined>(undefined);

/** Cases that the device holds, the last changed first. */
export const shelf = signal<readonly KeptCase[]>([]);

/** The open case as the device last held it. */
let base: KeptCase | undefined;
const tabs =
  typeof BroadcastChannel === "undefined" ? undefined : new BroadcastChannel("half-order.cases");

/** One write after the other: each knows what the one before left behind. */
let settled: Promise<void> = Promise.resolve();

/** Brings back the case that was open last. Never rejects: a page without a store still works. */
export async function resumeLast(): Promise<void> {
  await refresh();
  if (openCase.value) return;
  const { id, last } = remembered();
  const stored = shelf.value.find((kept) => kept.id === id);
  if (last && last.id === id && (!stored || last.changed > stored.changed)) {
    // The page was left before the last entry was written.
    base = stored;
    resumeCase(stored ? { ...stored, ...last, past: [...(stored.past ?? []), stored.doc] } : last);
    return;
  }
  const kept = stored ?? shelf.value[0];
  if (kept) open(kept);
}

/** Of this tab the id of its case, of all tabs the case that was changed last: written at once, unlike the store. */
const LAST = "half-order.last";

function rememberLast({ id, changed, doc }: KeptCase): void {
  try {
    sessionStorage.setItem(LAST, id);
    localStorage.setItem(LAST, JSON.stringify({ id, changed, doc }));
  } catch {
    // A device that keeps nothing at once may still keep it in its store, or says that it does not.
  }
}

interface Remembered {
  readonly id?: string | undefined;
  readonly last?: KeptCase | null;
}

function remembered(): Remembered {
  try {
    const last = JSON.parse(localStorage.getItem(LAST) ?? "null") as KeptCase | null;
    return { id: sessionStorage.getItem(LAST) ?? last?.id, last };
  } catch {
    // A device that lets nobody look: the case that was written last is taken.
    return {};
  }
}

/** Opens a case of the shelf. */
export function open(kept: KeptCase): void {
  base = kept;
  tabNews.value = undefined;
  resumeCase(kept);
}

/** Looks at what the device holds, once all is written. */
export async function lookAtShelf(): Promise<void> {
  await settled;
  await refresh();
}

async function refresh(): Promise<void> {
  try {
    shelf.value = await keptCases();
  } catch {
    storeTrouble.value = "unreadable";
  }
}

/** Puts a case on the shelf without opening it. */
export async function shelve(kept: KeptCase): Promise<void> {
  await write(kept, undefined);
  await refresh();
}

/** Writes a change of a case that is not open. */
export async function reshelve(before: KeptCase, after: KeptCase): Promise<void> {
  await write(after, before);
  await refresh();
}

export async function forget(id: string): Promise<void> {
  if (openCase.value?.id === id) closeCase();
  await settled;
  try {
    if (remembered().last?.id === id) localStorage.removeItem(LAST);
    await forgetCase(id);
    tell(id);
  } catch (error) {
    storeTrouble.value = troubleOf(error);
  }
  await refresh();
}

/** Writes the open case whenever it changes, and takes in what other tabs write. */
export function keepOpenCase(): void {
  effect(() => {
    const kept = openCase.value;
    if (!kept) return;
    rememberLast(kept);
    if (kept.id === base?.id && kept.doc === base.doc) return;
    settled = settled.then(() => writeOpen(kept)).catch(notJoined);
  });
  tabs?.addEventListener("message", ({ data }: MessageEvent<string>) => {
    settled = settled.then(() => hear(data)).catch(notJoined);
  });
}

/** What two tabs have entered could not be brought together: what joins them was not to be had. */
function notJoined(): void {
  storeTrouble.value = "failed";
}

async function writeOpen(kept: KeptCase): Promise<void> {
  // A later change of the same case is already waiting and holds this one too.
  if (kept !== openCase.peek() && kept.id === openCase.peek()?.id) return;
  const before = base?.id === kept.id ? base : undefined;
  const written = await write(kept, before);
  if (!written || openCase.peek()?.id !== kept.id) return;
  base = written.kept;
  await joinCase(kept, written.kept);
  if (!written.isMerged) return;
  const { clashes } = written;
  tabNews.value = { kind: clashes.length > 0 ? "clash" : "joined", clashes };
}

/** Another tab has written this case. */
async function hear(id: string): Promise<void> {
  const mine = openCase.peek();
  if (mine?.id !== id) return refresh();
  const stored = await keptCase(id).catch(() => undefined);
  const before = base;
  if (!before || (stored && stored.version === before.version)) return;
  if (!stored) {
    // The answers stay on this screen; the next one puts the case back.
    tabNews.value = { kind: "deleted", clashes: [] };
    return;
  }
  // Before anything is taken for known: without it nothing can be joined.
  await import("./merge.ts");
  base = stored;
  await joinCase(before, stored);
  tabNews.value = { kind: "joined", clashes: [] };
}

async function write(kept: KeptCase, before: KeptCase | undefined) {
  try {
    const written = await keepCase(kept, before);
    if (storeTrouble.peek() !== "unreadable") storeTrouble.value = undefined;
    tell(kept.id);
    return written;
  } catch (error) {
    storeTrouble.value = troubleOf(error);
    return undefined;
  }
}

function tell(id: string): void {
  tabs?.postMessage(id);
}

function troubleOf(error: unknown): "full" | "failed" {
  const isFull = error instanceof DOMException && error.name === "QuotaExceededError";
  return isFull ? "full" : "failed";
}
