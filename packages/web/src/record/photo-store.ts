// Keeps photos of plugs on this device, in a database of their own: they are no part of the case, so no file,
// link or page that is handed on holds them.
import type { CylinderName } from "@half-order/core";
import type { DBSchema, IDBPDatabase } from "idb";
import { openDB } from "idb";

/** In the place of a day: of a record that is not kept yet. */
export const DRAFT_DAY = "draft";

/** Which photo: one of each plug of a record; a record is known by its day. */
export interface PhotoAddress {
  readonly caseId: string;
  readonly day: string;
  readonly cylinder: CylinderName;
}

type PhotoKey = [caseId: string, day: string, cylinder: CylinderName];

interface Album extends DBSchema {
  photos: { key: PhotoKey; value: Blob };
}

let album: Promise<IDBPDatabase<Album>> | undefined;

function open(): Promise<IDBPDatabase<Album>> {
  album ??= openDB<Album>("half-order-photos", 1, {
    upgrade(database) {
      database.createObjectStore("photos");
    },
  });
  // A device that refused once may not the next time.
  album.catch(() => {
    album = undefined;
  });
  return album;
}

function keyOf({ caseId, day, cylinder }: PhotoAddress): PhotoKey {
  return [caseId, day, cylinder];
}

/** Everything of a case, or of one day of it: an empty list sorts after all texts and numbers. */
function rangeOf(...start: readonly string[]): IDBKeyRange {
  return IDBKeyRange.bound(start, [...start, []]);
}

/** Why a photo is not kept. */
export type PhotoTrouble = "full" | "failed";

/** Keeps a photo in the place of an earlier one; `undefined` when it is kept. */
export async function keepPhoto(at: PhotoAddress, photo: Blob): Promise<PhotoTrouble | undefined> {
  try {
    await (await open()).put("photos", photo, keyOf(at));
    return undefined;
  } catch (error) {
    const isFull = error instanceof DOMException && error.name === "QuotaExceededError";
    return isFull ? "full" : "failed";
  }
}

/** The photos of a day by cylinder; rejects when the device does not let the page look. */
export async function photosOf(
  caseId: string,
  day: string,
): Promise<ReadonlyMap<CylinderName, Blob>> {
  const store = (await open()).transaction("photos").store;
  const range = rangeOf(caseId, day);
  const [keys, photos] = await Promise.all([store.getAllKeys(range), store.getAll(range)]);
  return new Map(keys.flatMap(([, , cylinder], i) => (photos[i] ? [[cylinder, photos[i]]] : [])));
}

export async function forgetPhoto(at: PhotoAddress): Promise<void> {
  await (await open()).delete("photos", keyOf(at));
}

/** A photo with its place in the store. */
export type KeptPhoto = readonly [key: PhotoKey, photo: Blob];

/** All photos of a case; rejects when the device does not let the page look. */
export async function allPhotosOf(caseId: string): Promise<readonly KeptPhoto[]> {
  const store = (await open()).transaction("photos").store;
  const range = rangeOf(caseId);
  const [keys, photos] = await Promise.all([store.getAllKeys(range), store.getAll(range)]);
  return keys.flatMap((key, i): readonly KeptPhoto[] => (photos[i] ? [[key, photos[i]]] : []));
}

/** Keeps photos that were forgotten once more, all or none; rejects when the device cannot. */
export async function putBackPhotos(photos: readonly KeptPhoto[]): Promise<void> {
  const transaction = (await open()).transaction("photos", "readwrite");
  await Promise.all([
    ...photos.map(([key, photo]) => transaction.store.put(photo, key)),
    transaction.done,
  ]);
}

/** Forgets all photos of a case, or of one day of it. */
export async function forgetPhotos(caseId: string, day?: string): Promise<void> {
  const range = day === undefined ? rangeOf(caseId) : rangeOf(caseId, day);
  await (await open()).delete("photos", range);
}

/** The record was of another day: its photos follow, in one step or not at all. */
export async function movePhotos(caseId: string, from: string, to: string): Promise<void> {
  if (from === to) return;
  const photos = await photosOf(caseId, from);
  const transaction = (await open()).transaction("photos", "readwrite");
  const moves = [...photos].flatMap(([cylinder, photo]) => [
    transaction.store.put(photo, [caseId, to, cylinder]),
    transaction.store.delete([caseId, from, cylinder]),
  ]);
  await Promise.all([...moves, transaction.done]);
}
