// Keeps cases on this device, in its own database. Nothing leaves the device.
import type { CaseDocument } from "@half-order/core/wire";
import type { mergeDocs } from "./merge.ts";

/** The document: what is exported, imported and kept. */
export type CaseDoc = CaseDocument & { readonly halfOrderCase: 1 };

/** A case as the device keeps it; `doc` is what a case file holds. */
export interface KeptCase {
  readonly id: string;
  /** Milliseconds since 1970 of the last change. */
  readonly changed: number;
  /** How often it was written; 0 before the first time. Missing in cases of the first pages. */
  readonly version?: number;
  readonly doc: CaseDoc;
  /** Documents to step back to, the last one last, and forth to; a reload keeps them. */
  readonly past?: readonly CaseDoc[];
  readonly future?: readonly CaseDoc[];
}

/** The same with each of its documents as `edit` makes it. */
export function eachDoc(
  { past = [], future = [], ...kept }: KeptCase,
  edit: (doc: CaseDoc) => CaseDoc,
): Required<KeptCase> {
  const steps = { past: past.map(edit), future: future.map(edit) };
  return { version: 0, ...kept, ...steps, doc: edit(kept.doc) };
}

const NAME = "half-order";
const STORE = "cases";
let shelf: Promise<IDBDatabase> | undefined;

function open(): Promise<IDBDatabase> {
  shelf ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => {
      const store = request.result.createObjectStore(STORE, { keyPath: "id" });
      store.createIndex("changed", "changed");
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  // A device that refused once may not the next time.
  shelf.catch(() => {
    shelf = undefined;
  });
  return shelf;
}

/** What a request gives; rejects when it fails. */
function result<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** Settles once a transaction is on the device; rejects when it was given up. */
function completed(transaction: IDBTransaction): Promise<void> {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error);
  });
}

async function cases(mode: IDBTransactionMode): Promise<IDBObjectStore> {
  const database = await open();
  return database.transaction(STORE, mode, { durability: "strict" }).objectStore(STORE);
}

/** What was written, and what both sides had changed. */
export interface Written {
  readonly kept: KeptCase;
  /** True when something had to be merged, so that `kept` holds more than was handed in. */
  readonly isMerged: boolean;
  /** Fields and answers that both had changed, each in its own way. */
  readonly clashes: readonly string[];
}

/**
 * Writes a case; rejects when the device cannot keep it. When somebody else, such as another tab, has
 * written it since `base` was read, both changes are merged, so that neither is lost.
 */
export async function keepCase(
  kept: KeptCase,
  base?: KeptCase,
  merge?: typeof mergeDocs,
): Promise<Written> {
  const store = await cases("readwrite");
  const stored: KeptCase | undefined = await result(store.get(kept.id));
  const isChanged = stored !== undefined && base !== undefined && stored.version !== base.version;
  // Nothing waits inside a transaction: what merges is fetched, and then all is done once more.
  if (isChanged && !merge) return keepCase(kept, base, (await import("./merge.ts")).mergeDocs);
  const merged = isChanged ? merge?.(base.doc, kept.doc, stored.doc) : undefined;
  // A step back must not take back what somebody else has entered.
  const joined =
    isChanged && merge ? eachDoc(kept, (doc) => merge(base.doc, doc, stored.doc).doc) : kept;
  const next: KeptCase = { ...joined, version: (stored?.version ?? kept.version ?? 0) + 1 };
  const done = completed(store.transaction);
  await Promise.all([result(store.put(next)), done]);
  return { kept: next, isMerged: merged !== undefined, clashes: merged?.clashes ?? [] };
}

export async function keptCase(id: string): Promise<KeptCase | undefined> {
  return result((await cases("readonly")).get(id));
}

/** All cases, the last changed first; rejects when the device does not let the page look. */
export async function keptCases(): Promise<readonly KeptCase[]> {
  const all: KeptCase[] = await result((await cases("readonly")).index("changed").getAll());
  return all.reverse();
}

export async function forgetCase(id: string): Promise<void> {
  const store = await cases("readwrite");
  store.delete(id);
  await completed(store.transaction);
}
