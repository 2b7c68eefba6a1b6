// The records that a case has already: to look at, to change, to delete.
import type { PlugRecord } from "@half-order/core";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { sayQuantity } from "../state/unit.ts";
import { PHOTO, RECORD } from "../text/en-record.ts";
import { dropRecord, records } from "./book.ts";
import { sayDay } from "./day.ts";
import { forgetPhotos } from "./photo-store.ts";

interface EarlierProps {
  readonly caseId: string;
  readonly shown: string | undefined;
  readonly onShow: (day: string) => void;
  readonly onEdit: (record: PlugRecord) => void;
}

export function Earlier({ caseId, shown, onShow, onEdit }: EarlierProps): VNode | null {
  const [isLeft, setLeft] = useState(false);
  if (records.value.length === 0) return null;
  const remove = (day: string): void => {
    dropRecord(day);
    forgetPhotos(caseId, day).then(
      () => setLeft(false),
      () => setLeft(true),
    );
  };
  return (
    <section>
      <h2 class="minor">{RECORD.earlier}</h2>
      {isLeft && (
        <p class="wrong" role="alert">
          {PHOTO.notDeleted}
        </p>
      )}
      <ul class="answers">
        {[...records.value].reverse().map((record) => (
          <li key={record.when}>
            <p>
              {sayDay(record.when)}
              <small>
                {RECORD.at(sayQuantity(record.odometerKm, "distance"))},{" "}
                {RECORD.plugs(record.plugs.length)}
              </small>
            </p>
            {record.when !== shown && (
              <button type="button" class="quiet" onClick={() => onShow(record.when)}>
                {RECORD.show}
                <span class="vh"> {sayDay(record.when)}</span>
              </button>
            )}
            <button type="button" class="quiet" onClick={() => onEdit(record)}>
              {RECORD.edit}
              <span class="vh"> {sayDay(record.when)}</span>
            </button>
            <Remove day={record.when} onRemove={() => remove(record.when)} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Remove({ day, onRemove }: { day: string; onRemove: () => void }): VNode {
  const [isAsked, setAsked] = useState(false);
  return (
    <button
      type="button"
      class="quiet"
      onClick={() => {
        if (isAsked) onRemove();
        else setAsked(true);
      }}
    >
      {isAsked ? RECORD.removeConfirm : RECORD.remove}
      <span class="vh"> {sayDay(day)}</span>
    </button>
  );
}
