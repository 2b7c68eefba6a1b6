// When are the next plugs due? By distance, by months or by the gap, and as an entry for a calendar.
import {
  calendarFile,
  type EngineProfile,
  InputError,
  type NextService,
  type PlugRecord,
  type WearReport,
} from "@half-order/core";
import type { VNode } from "preact";
import { openCase } from "../state/case.ts";
import { sayProfile } from "../text/answer.ts";
import { NEXT } from "../text/en-record.ts";
import { Option } from "../ui/option.tsx";
import { Problems } from "../ui/problems.tsx";
import { QuantityField } from "../ui/quantity-field.tsx";
import { courseOf, keepSaid, type Said } from "./course.ts";
import { sayDistance, sayDue } from "./due.ts";
import { nextAfter } from "./plan.ts";
import { saveFile } from "./save.ts";

interface NextPlugsProps {
  readonly profile: EngineProfile;
  readonly record: PlugRecord;
  readonly records: readonly PlugRecord[];
  readonly report: WearReport;
}

export function NextPlugs({ profile, record, records, report }: NextPlugsProps): VNode {
  const say = (said: Said): void => keepSaid(record.when, said);
  const course = courseOf(record, records);
  const { wentIn, kmPerYear, fittedOn } = course;
  const next = guarded(() => nextAfter(profile, record, report, course));
  return (
    <section class="next-plugs">
      <h2>{NEXT.title}</h2>
      <fieldset class="options went-in">
        <legend>{NEXT.wentIn}</legend>
        {(["new", "same"] as const).map((each) => (
          <Option
            key={each}
            say={NEXT.wentInWords[each]}
            isGiven={wentIn === each}
            onClick={() => say({ wentIn: each })}
          />
        ))}
      </fieldset>
      <QuantityField
        label={NEXT.pace}
        help={NEXT.paceHelp}
        quantity="distance"
        value={kmPerYear}
        onChange={(typed) => say({ kmPerYear: typed })}
        within={[1, 1_000_000]}
      />
      {wentIn === "same" && (
        <div class="field">
          <label>
            {NEXT.fittedOn}
            <input
              type="date"
              value={fittedOn ?? ""}
              max={record.when}
              onChange={({ currentTarget: field }) => {
                if (field.reportValidity()) say({ fittedOn: field.value || undefined });
              }}
            />
          </label>
        </div>
      )}
      {next instanceof InputError ? (
        <Problems title={NEXT.cannot} of={next.problems} />
      ) : (
        <Due next={next} profile={profile} isAsked={wentIn === undefined} />
      )}
    </section>
  );
}

function guarded(work: () => NextService | undefined): NextService | undefined | InputError {
  try {
    return work();
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
}

interface DueProps {
  readonly next: NextService | undefined;
  readonly profile: EngineProfile;
  /** True while it is not said what went in. */
  readonly isAsked: boolean;
}

function Due({ next, profile, isAsked }: DueProps): VNode {
  if (isAsked) return <p class="help">{NEXT.sayFirst}</p>;
  if (!next || (next.atKm === undefined && next.onDay === undefined)) {
    return <p class="help">{NEXT.unknown}</p>;
  }
  const { dueOn, by } = next;
  const at = sayDistance(next);
  return (
    <div class="due">
      <p class="act">{sayDue(next)}</p>
      <p class="help">
        {at && dueOn && NEXT.whichever} {by && NEXT.by[by]}
      </p>
      {dueOn ? (
        <button
          type="button"
          class="option is-finish"
          onClick={() => saveEntry(dueOn, at, profile)}
        >
          {NEXT.calendar}
        </button>
      ) : (
        <p class="help">{NEXT.noDay}</p>
      )}
    </div>
  );
}

/** Weeks ahead, so that plugs can be bought. */
const REMIND_DAYS = 14;

function saveEntry(day: string, at: string | undefined, profile: EngineProfile): void {
  const engine = sayProfile(profile);
  const text = calendarFile({
    day,
    summary: NEXT.event(engine),
    description: at === undefined ? NEXT.eventAbout : `${NEXT.at(at)}. ${NEXT.eventAbout}`,
    uid: `${openCase.value?.id ?? engine}-plugs@half-order`,
    stamp: `${new Date().toISOString().slice(0, 19)}Z`,
    remindDays: REMIND_DAYS,
  });
  saveFile(new Blob([text], { type: "text/calendar" }), NEXT.fileName(day));
}
