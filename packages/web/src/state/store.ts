// Keeps cases on this device, in its own database. Nothing leaves the device.
import type { CaseDocument } from "@half-order/core/wire";
import type { DBSchema, IDBPDatabase } from "idb";
import { openDB } from "idb";
import { mergeDocs } from "./merge.ts";

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
}

interface Shelf extends DBSchema {
  cases: { key: string; value: KeptCase; indexes: { changed: number } };
}

const NAME = "half-order";
let shelf: Promise<IDBPDatabase<Shelf>> | undefined;

function open(): Promise<IDBPDatabase<Shelf>> {
  shelf ??= openDB<Shelf>(NAME, 1, {
    upgrade(database) {
      database.createObjectStore("cases", { keyPath: "id" }).createIndex("changed", "changed");
    },
  });
  // A device that refused once may not the next time.
  shelf.catch(() => {
    shelf = undefined;
  });
  return shelf;
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
export async function keepCase(kept: KeptCase, base?: KeptCase): Promise<Written> {
  const transaction = (await open()).transaction("cases", "readwrite", { durability: "strict" });
  const stored = await transaction.store.get(kept.id);
  const isChanged = stored && base && stored.version !== base.version;
  const merged = isChanged ? mergeDocs(base.doc, kept.doc, stored.doc) : undefined;
  const next: KeptCase = {
    ...kept,
    version: (stored?.version ?? kept.version ?? 0) + 1,
    doc: merged?.doc ?? kept.doc,
  };
  await Promise.all([transaction.store.put(next), transaction.done]);
  return { kept: next, isMerged: merged !== undefined, clashes: merged?.clashes ?? [] };
}

export async function keptCase(id: string): Promise<KeptCase | undefined> {
  return (await open()).get("cases", id);
}

/** All cases, the last changed first; rejects when the device does not let the page look. */
export async function keptCases(): Promise<readonly KeptCase[]> {
  const all = await (await open()).getAllFromIndex("cases", "changed");
  return all.reverse();
}

export async function forgetCase(id: string): Promise<void> {
  await (await open()).delete("cases", id);
}
