// Keeps cases on this device, in its own database. Nothing leaves the device.
import type { EngineProfile, Finding } from "@half-order/core";
import type { DBSchema, IDBPDatabase } from "idb";
import { openDB } from "idb";

/** The document: what is exported, imported and kept. */
export interface CaseDoc {
  readonly halfOrderCase: 1;
  readonly title?: string;
  readonly note?: string;
  /** The id of a profile that comes with the library, or a profile. */
  readonly engine: string | EngineProfile;
  readonly findings: readonly Finding[];
}

/** A case as the device keeps it; `doc` is what a case file holds. */
export interface KeptCase {
  readonly id: string;
  /** Milliseconds since 1970 of the last change. */
  readonly changed: number;
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

/** Writes a case; rejects when the device cannot keep it. */
export async function keepCase(kept: KeptCase): Promise<void> {
  await (await open()).put("cases", kept);
}

/** All cases, the last changed first; rejects when the device does not let the page look. */
export async function keptCases(): Promise<readonly KeptCase[]> {
  const all = await (await open()).getAllFromIndex("cases", "changed");
  return all.reverse();
}

export async function forgetCase(id: string): Promise<void> {
  await (await open()).delete("cases", id);
}
