// A case goes from this device with all that is kept of it beside its document: photos, and a record half written.
import { forget, shelf, shelve } from "../state/keep.ts";
import type { KeptCase } from "../state/store.ts";
import { dropDraft, putBackDraft } from "./book.ts";
import { allPhotosOf, forgetPhotos, type KeptPhoto, putBackPhotos } from "./photo-store.ts";

export interface Forgotten {
  readonly kept: KeptCase;
  /** True when the photos could not be deleted. */
  readonly arePhotosLeft: boolean;
  /** Puts the case back, with all that went with it; false when its photos stay lost. */
  readonly putBack: () => Promise<boolean>;
}

/** Never rejects; `undefined` when the device did not let the case go, which the page says by itself. */
export async function forgetWhole(kept: KeptCase): Promise<Forgotten | undefined> {
  const photos = await allPhotosOf(kept.id).catch((): readonly KeptPhoto[] => []);
  await forget(kept.id);
  if (shelf.value.some(({ id }) => id === kept.id)) return undefined;
  const draft = dropDraft(kept.id);
  const arePhotosLeft = await forgetPhotos(kept.id).then(
    () => false,
    () => true,
  );
  const putBack = async (): Promise<boolean> => {
    await shelve(kept);
    if (draft) putBackDraft(kept.id, draft);
    return putBackPhotos(photos).then(
      () => true,
      () => false,
    );
  };
  return { kept, arePhotosLeft, putBack };
}
