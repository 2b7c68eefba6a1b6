// A photo of one plug: taken, made small, kept on the device, shown, deleted.
import type { CylinderName } from "@half-order/core";
import type { VNode } from "preact";
import { useEffect, useId, useState } from "preact/hooks";
import { PHOTO } from "../text/en-record.ts";
import { addressOf, smallPhoto } from "./photo.ts";
import { forgetPhoto, keepPhoto, type PhotoAddress, type PhotoTrouble } from "./photo-store.ts";

interface PhotoFieldProps {
  readonly at: PhotoAddress;
  readonly photo: Blob | undefined;
  /** After a photo was kept or deleted. */
  readonly onChange: (cylinder: CylinderName, photo: Blob | undefined) => void;
}

type News = "keeping" | "unreadable" | PhotoTrouble | undefined;

export function PhotoField({ at, photo, onChange }: PhotoFieldProps): VNode {
  const [news, setNews] = useState<News>();
  const id = useId();
  const take = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setNews("keeping");
    const small = await smallPhoto(file).catch(() => undefined);
    if (!small) return setNews("unreadable");
    const trouble = await keepPhoto(at, small);
    setNews(trouble);
    if (!trouble) onChange(at.cylinder, small);
  };
  const remove = async (): Promise<void> => {
    const isGone = await forgetPhoto(at).then(
      () => true,
      () => false,
    );
    setNews(isGone ? undefined : "failed");
    if (isGone) onChange(at.cylinder, undefined);
  };
  return (
    <div class="photo-field">
      {photo && <Photo of={photo} alt={PHOTO.alt(String(at.cylinder))} />}
      <div class="photo-ways">
        <label class="photo-take" for={id}>
          {photo ? PHOTO.another : PHOTO.take}
          <input
            id={id}
            class="vh"
            type="file"
            accept="image/*"
            capture="environment"
            onChange={(event) => {
              const input = event.currentTarget;
              // The same photo may be taken again after room was made.
              void take(input.files?.[0]).finally(() => {
                input.value = "";
              });
            }}
          />
        </label>
        {photo && (
          <button type="button" class="quiet" onClick={() => void remove()}>
            {PHOTO.remove}
          </button>
        )}
      </div>
      {news === "keeping" ? (
        <p role="status">{PHOTO.keeping}</p>
      ) : (
        news && (
          <p class="wrong" role="alert">
            {PHOTO[news]}
          </p>
        )
      )}
      <p class="fine">{PHOTO.private}</p>
    </div>
  );
}

function Photo({ of, alt }: { of: Blob; alt: string }): VNode | null {
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    let isWanted = true;
    addressOf(of).then(
      (next) => {
        if (isWanted) setAddress(next);
      },
      // A photo that cannot be read any more shows its words.
      () => setAddress(""),
    );
    return () => {
      isWanted = false;
    };
  }, [of]);
  return address === undefined ? null : <img class="photo" src={address} alt={alt} />;
}
