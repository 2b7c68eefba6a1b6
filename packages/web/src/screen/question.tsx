// One question. The first ones lead on to the next; one that was reached from a list leads back to it.
import type { FindingRow } from "@half-order/core";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { answersOf, profile, withdrawAnswer } from "../state/case.ts";
import { firstQuestions, targetKind } from "../state/catalogue.ts";
import { ranking } from "../state/thinking.ts";
import { drawn, isDesk, missing } from "../state/view.ts";
import { goOn, openQuestion } from "../state/way.ts";
import { sayAnswer } from "../text/answer.ts";
import { CODES, LEDGER, QUESTION } from "../text/en.ts";
import { Asker } from "../ui/asker.tsx";
import { Cautions, SafeFirst } from "../ui/caution.tsx";
import { Heading, Under } from "../ui/heading.tsx";
import { Dashed } from "../ui/option.tsx";

export function Question(): VNode | null {
  const row = openQuestion.value;
  return row ? <Of key={row.id} row={row} /> : null;
}

function Of({ row }: { row: FindingRow }): VNode | null {
  const [ticks, setTicks] = useState(0);
  const engine = drawn.value;
  if (!engine) return null;
  const steps = firstQuestions(profile.value?.ignition);
  const step = steps.findIndex(({ id }) => id === row.id);
  const isOfPart = targetKind(row) !== undefined;
  return (
    <section class="question">
      {step === 0 && <SafeFirst />}
      {!isDesk.value && <Cautions ids={ranking.value?.cautions ?? []} isShort />}
      <p class="facts">{step < 0 ? QUESTION.own : QUESTION.step(step + 1, steps.length)}</p>
      <Heading of={row.id} level={isDesk.value ? 2 : 1}>
        {row.ask}
      </Heading>
      {row.help && <p class="help">{row.help}</p>}
      <Asker
        row={row}
        engine={engine}
        suspects={missing.value}
        onTicks={setTicks}
        onAnswered={isOfPart ? () => undefined : () => goOn(row)}
      />
      {isOfPart && <Given row={row} />}
      <Leave row={row} ticks={ticks} />
    </section>
  );
}

interface LeaveProps {
  readonly row: FindingRow;
  /** Options ticked and not yet confirmed. */
  readonly ticks: number;
}

/** "Can't tell", always there; it says so when it takes something back. */
function Leave({ row, ticks }: LeaveProps): VNode {
  const isGiven = answersOf(row.id).length > 0;
  if (targetKind(row) !== undefined) {
    return (
      <Dashed onClick={() => goOn(row)}>{isGiven ? QUESTION.done : QUESTION.cannotTell}</Dashed>
    );
  }
  const drops = isGiven || ticks > 0;
  const more = row.kind === "codes" && !drops ? CODES.cannotTellMore : undefined;
  const say = ticks > 0 ? QUESTION.dropTicks : isGiven ? QUESTION.takeBack : QUESTION.cannotTell;
  return (
    <Dashed
      {...(more === undefined ? {} : { more })}
      onClick={() => {
        if (isGiven) withdrawAnswer(row.id);
        goOn(row);
      }}
    >
      {say}
    </Dashed>
  );
}

function Given({ row }: { row: FindingRow }): VNode | null {
  const given = answersOf(row.id);
  if (given.length === 0) return null;
  return (
    <section class="aside" aria-label={QUESTION.given}>
      <Under level={isDesk.value ? 2 : 1} class="minor">
        {QUESTION.given}
      </Under>
      <ul class="given">
        {given.map(({ cylinder, answer }) => (
          <li key={cylinder}>
            <span>
              {LEDGER.cylinder(String(cylinder))}: {sayAnswer(row, answer)}
            </span>
            <button type="button" class="quiet" onClick={() => withdrawAnswer(row.id, cylinder)}>
              {QUESTION.remove}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
