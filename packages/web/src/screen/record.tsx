// Plugs out: what was found on each of them, what that tells, and when the next set is due.
import type { VNode } from "preact";
import { useEffect, useState } from "preact/hooks";
import { draft, followDraft, records } from "../record/book.ts";
import { today } from "../record/day.ts";
import { draftOf, isEmpty, newDraft } from "../record/draft.ts";
import { Earlier } from "../record/earlier.tsx";
import { DRAFT_DAY } from "../record/photo-store.ts";
import { RecordForm } from "../record/record-form.tsx";
import { Report } from "../record/report.tsx";
import { saveFile } from "../record/save.ts";
import { type Photos, usePhotos } from "../record/use-photos.ts";
import { openCase, profile } from "../state/case.ts";
import { drawn } from "../state/view.ts";
import { PHOTO, RECORD } from "../text/en-record.ts";
import { Heading } from "../ui/heading.tsx";
import { UnitPanel } from "../ui/unit-panel.tsx";
import "../style/record.css";

/** Reads the open case; shows nothing when none is open or its engine is not sound. */
function Record(): VNode | null {
  const id = openCase.value?.id;
  const known = profile.value;
  if (id === undefined || !known || !drawn.value) return null;
  return <Book key={id} caseId={id} />;
}

function Book({ caseId }: { caseId: string }): VNode | null {
  const [isReady, setReady] = useState(false);
  const [isWriting, setWriting] = useState(false);
  const [shown, setShown] = useState<string | undefined>(records.value.at(-1)?.when);
  useEffect(() => {
    const stop = followDraft(caseId);
    setReady(true);
    setWriting(!isEmpty(draft.value) || records.value.length === 0);
    return stop;
  }, [caseId]);
  const photos = usePhotos(caseId, isWriting ? (draft.value.was ?? DRAFT_DAY) : (shown ?? ""));
  const [engine, known] = [drawn.value, profile.value];
  const record = records.value.find(({ when }) => when === shown);
  if (!isReady || !engine || !known) return null;
  return (
    <section class="record">
      <div class="record-main">
        <Heading of={`record ${isWriting}`}>{RECORD.title}</Heading>
        <p class="lead">{RECORD.lead}</p>
        <UnitPanel />
        {photos.isBroken && <p class="wrong">{PHOTO.cannotLook}</p>}
        {isWriting ? (
          <RecordForm
            engine={engine}
            caseId={caseId}
            photos={photos}
            onKeep={(day) => {
              setShown(day);
              setWriting(false);
            }}
          />
        ) : (
          <button
            type="button"
            class="option is-finish"
            onClick={() => {
              draft.value = newDraft(today(), records.value);
              setWriting(true);
            }}
          >
            {RECORD.new}
          </button>
        )}
        <Earlier
          caseId={caseId}
          shown={isWriting ? undefined : shown}
          onShow={(day) => {
            setShown(day);
            setWriting(false);
          }}
          onEdit={(of) => {
            draft.value = draftOf(of);
            setWriting(true);
          }}
        />
      </div>
      {record && !isWriting && (
        <div class="record-tells">
          <Report key={record.when} profile={known} record={record} records={records.value} />
          <PhotoCopies photos={photos} day={record.when} />
        </div>
      )}
    </section>
  );
}

/** Photos leave the page only here, by hand, as files of their own. */
function PhotoCopies({ photos, day }: { photos: Photos; day: string }): VNode | null {
  if (photos.of.size === 0) return null;
  const save = (): void => {
    for (const [cylinder, photo] of photos.of) {
      saveFile(photo, PHOTO.fileName(day, String(cylinder)));
    }
  };
  return (
    <section class="photo-copies">
      <p class="fine">{PHOTO.private}</p>
      <button type="button" class="option" onClick={save}>
        {PHOTO.save}
      </button>
    </section>
  );
}

export { Record as Screen };
