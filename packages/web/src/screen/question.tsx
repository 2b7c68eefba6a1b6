// One question. The first ones lead on to the next; any other leads back to the ranking.
import type { FindingRow } from "@half-order/core";
import type { VNode } from "preact";
import { answersOf, profile, withdrawAnswer } from "../state/case.ts";
import { firstQuestions, questionAfter, questionBefore, targetKind } from "../state/catalogue.ts";
import { at, goTo } from "../state/route.ts";
import { ranking } from "../state/thinking.ts";
import { drawn, isDesk, missing } from "../state/view.ts";
import { sayAnswer } from "../text/answer.ts";
import { CODES, LEDGER, QUESTION } from "../text/en.ts";
import { Asker } from "../ui/asker.tsx";
import { Cautions, SafeFirst } from "../ui/caution.tsx";
import { Heading, Under } from "../ui/heading.tsx";
import { Dashed } from "../ui/option.tsx";

export function Question({ row }: { row: FindingRow }): VNode | null {
  const engine = drawn.value;
  if (!engine) return null;
  const ignition = profile.value?.ignition;
  const steps = firstQuestions(ignition);
  const step = steps.findIndex(({ id }) => id === row.id);
  const isOfPart = targetKind(row) !== undefined;
  const goOn = (): void => {
    const next = questionAfter(row.id, ignition);
    if (next) goTo("question", next.id);
    else goTo("ranking");
  };
  return (
    <section class="question">
      {step === 0 && <SafeFirst />}
      {!isDesk.value && <Cautions ids={ranking.value?.cautions ?? []} />}
      <p class="facts">{step < 0 ? QUESTION.own : QUESTION.step(step + 1, steps.length)}</p>
      <Heading of={row.id} level={isDesk.value ? 2 : 1}>
        {row.ask}
      </Heading>
      {row.help && <p class="help">{row.help}</p>}
      <Asker
        key={row.id}
        row={row}
        engine={engine}
        suspects={missing.value}
        onAnswered={isOfPart ? () => undefined : goOn}
      />
      {isOfPart && <Given row={row} />}
      <Leave row={row} isOfPart={isOfPart} onLeave={goOn} />
    </section>
  );
}

/** Where the question before this one, or the screen it was reached from, is. */
export function backFrom(row: FindingRow): string {
  const before = questionBefore(row.id, profile.value?.ignition);
  if (before) return at("question", before.id);
  return row.first === undefined ? at("ranking") : at();
}

interface LeaveProps {
  readonly row: FindingRow;
  readonly isOfPart: boolean;
  readonly onLeave: () => void;
}

function Leave({ row, isOfPart, onLeave }: LeaveProps): VNode {
  const isGiven = answersOf(row.id).length > 0;
  if (isOfPart) {
    return <Dashed onClick={onLeave}>{isGiven ? QUESTION.done : QUESTION.cannotTell}</Dashed>;
  }
  const more = row.kind === "codes" ? CODES.cannotTellMore : undefined;
  return (
    <Dashed
      {...(more === undefined ? {} : { more })}
      onClick={() => {
        // Who cannot tell takes an earlier answer back.
        withdrawAnswer(row.id);
        onLeave();
      }}
    >
      {QUESTION.cannotTell}
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
