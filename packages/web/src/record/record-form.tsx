// A record while it is written: the day and the distances, then plug after plug.
import { type CylinderName, checkRecord, type Engine } from "@half-order/core";
import type { VNode } from "preact";
import { useRef, useState } from "preact/hooks";
import { inOrder, PlugRow } from "../diagram/plug-picker.tsx";
import { isClosed } from "../state/case.ts";
import { checkRow } from "../state/catalogue.ts";
import { RECORD } from "../text/en-record.ts";
import { Problems } from "../ui/problems.tsx";
import { QuantityField } from "../ui/quantity-field.tsx";
import { StepCautions } from "../ui/step-caution.tsx";
import { goToWrong } from "../ui/wrong-field.ts";
import { draft, isDraftKept, keepRecord, records } from "./book.ts";
import { sayDay, today } from "./day.ts";
import {
  type Draft,
  type DraftReading,
  type Edit,
  isEmpty,
  newDraft,
  recordOf,
  setField,
} from "./draft.ts";
import { asLook } from "./look.ts";
import { PhotoField } from "./photo-field.tsx";
import { DRAFT_DAY } from "./photo-store.ts";
import { PlugForm } from "./plug-form.tsx";
import type { Photos } from "./use-photos.ts";
import { usualGap } from "./usual-gap.ts";

const FARTHEST_KM = 3_000_000;

interface RecordFormProps {
  readonly engine: Engine;
  readonly caseId: string;
  readonly photos: Photos;
  /** After a record was kept. */
  readonly onKeep: (day: string) => void;
}

export function RecordForm({ engine, caseId, photos, onKeep }: RecordFormProps): VNode {
  const [inHand, setInHand] = useState<CylinderName>(inOrder(engine)[0] ?? 1);
  const now = draft.value;
  const form = useRef<HTMLElement>(null);
  // A plug goes out of the hand, and a record is kept, only once what is typed is right: else it would be lost.
  const take = (cylinder: CylinderName): boolean => {
    if (goToWrong(form.current?.querySelector(".plug-form"))) return false;
    setInHand(cylinder);
    return true;
  };
  // On what is there at the tap, which may come before the last entry is drawn.
  const set = (edit: Edit): void => {
    draft.value = edit(draft.value);
  };
  const drawn = new Map(
    now.plugs.map((plug) => [plug.cylinder, { look: asLook(plug.look) }] as const),
  );
  return (
    <section class="record-form" ref={form}>
      <h2>{now.was === undefined ? RECORD.new : RECORD.change(sayDay(now.was))}</h2>
      <section class="record-care" aria-label={RECORD.cautions}>
        <StepCautions of={checkRow("check.plugs-out")} />
      </section>
      <Distances draft={now} onChange={set} />
      <PlugRow engine={engine} plugs={drawn} inHand={inHand} onTake={take} />
      <PlugForm engine={engine} draft={now} inHand={inHand} onChange={set} onTake={take}>
        <PhotoField
          key={inHand}
          at={{ caseId, day: now.was ?? DRAFT_DAY, cylinder: inHand }}
          photo={photos.of.get(inHand)}
          onChange={photos.set}
        />
      </PlugForm>
      <Keep
        engine={engine}
        photos={photos}
        onKeep={onKeep}
        isHeld={() => goToWrong(form.current)}
      />
    </section>
  );
}

interface DistancesProps {
  readonly draft: Draft;
  readonly onChange: (edit: Edit) => void;
}

function Distances({ draft: now, onChange }: DistancesProps): VNode {
  return (
    <div class="pair-of-fields">
      <div class="field">
        <label>
          {RECORD.when}
          <input
            type="date"
            required
            max={today()}
            value={now.when}
            onChange={(event) => {
              const day = event.currentTarget.value;
              if (day !== "") onChange((all) => ({ ...all, when: day }));
            }}
          />
        </label>
      </div>
      <QuantityField
        label={RECORD.odometer}
        quantity="distance"
        value={now.odometerKm}
        onChange={(value) => onChange((all) => setField(all, "odometerKm", value))}
        within={[0, FARTHEST_KM]}
      />
      <QuantityField
        label={RECORD.fittedAt}
        help={RECORD.fittedAtHelp}
        quantity="distance"
        value={now.fittedAtKm}
        onChange={(value) => onChange((all) => setField(all, "fittedAtKm", value))}
        within={[0, FARTHEST_KM]}
      />
      <QuantityField
        label={RECORD.newGap}
        help={RECORD.newGapHelp}
        quantity="gap"
        value={now.newGapMm}
        onChange={(value) => onChange((all) => setField(all, "newGapMm", value))}
        within={[0, 5]}
        usual={usualGap()}
      />
    </div>
  );
}

interface KeepProps extends Omit<RecordFormProps, "caseId"> {
  /** True while a field is wrong; takes the hand there. */
  readonly isHeld: () => boolean;
}

function Keep({ engine, photos, onKeep, isHeld }: KeepProps): VNode {
  const [isTried, setTried] = useState(false);
  // What is found on an engine that is mended says nothing of what was wrong with it.
  const [isFinding, setFinding] = useState(!isClosed.value);
  const reading = readingOf(draft.value, engine);
  const keep = async (): Promise<void> => {
    const now = draft.value;
    if (isHeld()) return;
    setTried(true);
    if ("problems" in reading) return;
    const { record } = reading;
    keepRecord(record, now.was, isFinding);
    await photos.moveTo(record.when);
    draft.value = newDraft(today(), records.value);
    onKeep(record.when);
  };
  return (
    <div class="keep">
      {!isDraftKept.value && <p class="wrong">{RECORD.draftNotKept}</p>}
      <label class="tick-line">
        <input
          type="checkbox"
          checked={isFinding}
          onChange={(event) => setFinding(event.currentTarget.checked)}
        />
        {RECORD.useAsFindings}
      </label>
      {isTried && "problems" in reading && <Problems title={RECORD.cannot} of={reading.problems} />}
      <button type="button" class="option is-finish" onClick={() => void keep()}>
        {RECORD.keep}
      </button>
      {!isEmpty(draft.value) && <Discard photos={photos} />}
    </div>
  );
}

/** The record that the draft makes on this engine, or what is wrong with it. */
function readingOf(now: Draft, engine: Engine): DraftReading {
  const reading = recordOf(now, records.value, engine.names, {
    missing: RECORD.missingOdometer,
    sameDay: RECORD.sameDay,
  });
  if ("problems" in reading) return reading;
  const problems = checkRecord(engine.profile, reading.record);
  return problems.length > 0 ? { problems } : reading;
}

/** Throws the draft away, at the second tap. */
function Discard({ photos }: Pick<RecordFormProps, "photos">): VNode {
  const [isAsked, setAsked] = useState(false);
  const discard = (): void => {
    // The photos of a kept record stay with it.
    if (draft.value.was === undefined) void photos.forget();
    draft.value = newDraft(today(), records.value);
  };
  return (
    <button type="button" class="quiet" onClick={() => (isAsked ? discard() : setAsked(true))}>
      {isAsked ? RECORD.discardConfirm : RECORD.discard}
    </button>
  );
}
