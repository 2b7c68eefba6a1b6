// The photos of one day of a case, as far as the device shows them.
import type { CylinderName } from "@half-order/core";
import { useEffect, useState } from "preact/hooks";
import { forgetPhotos, movePhotos, photosOf } from "./photo-store.ts";

export interface Photos {
  readonly of: ReadonlyMap<CylinderName, Blob>;
  /** The device does not let the page look. */
  readonly isBroken: boolean;
  /** Shows a photo that was kept, or shows none any more. */
  readonly set: (cylinder: CylinderName, photo: Blob | undefined) => void;
  /** The record was kept as one of that day: its photos follow. */
  readonly moveTo: (day: string) => Promise<void>;
  /** Forgets them all. */
  readonly forget: () => Promise<void>;
}

const NONE: ReadonlyMap<CylinderName, Blob> = new Map();

export function usePhotos(caseId: string, day: string): Photos {
  const [of, setOf] = useState(NONE);
  const [isBroken, setBroken] = useState(false);
  useEffect(() => {
    let isWanted = true;
    setOf(NONE);
    photosOf(caseId, day).then(
      (photos) => {
        if (isWanted) setOf(photos);
      },
      () => setBroken(true),
    );
    return () => {
      isWanted = false;
    };
  }, [caseId, day]);
  return {
    of,
    isBroken,
    set: (cylinder, photo) => {
      const next = new Map(of);
      if (photo) next.set(cylinder, photo);
      else next.delete(cylinder);
      setOf(next);
    },
    moveTo: (to) => movePhotos(caseId, day, to).catch(() => setBroken(true)),
    forget: () =>
      forgetPhotos(caseId, day).then(
        () => setOf(NONE),
        () => setBroken(true),
      ),
  };
}
