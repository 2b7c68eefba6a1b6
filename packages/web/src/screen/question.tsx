// One question. The first ones lead on to the next; one that was reached from a list leads back to it.
import type { FindingRow } from "@half-order/core";
import type { VNode } from "preact";
import { NOWHERE, OLDER_ASKED, PART_QUESTION, PLACE_ASKED, PORT_ASKED } from "../parts.ts";
import { firstQuestions } from "../state/asked.ts";
import {
  answerOf,
  answersOf,
  atHand,
  findings,
  giveAnswer,
  profile,
  withdrawAnswer,
} from "../state/case.ts";
import { cautionsOf, targetKind } from "../state/catalogue.ts";
import { draftKey, draftOf } from "../state/draft.ts";
import { inUnits } from "../state/figure.ts";
import { drawn, isDesk } from "../state/view.ts";
import { goOn, openQuestion } from "../state/way.ts";
import { CODES, QUESTION } from "../text/en.ts";
import { Answerer } from "../ui/answerer.tsx";
import { Cautions, SafeFirst } from "../ui/caution.tsx";
import { Heading } from "../ui/heading.tsx";
import { Lazy } from "../ui/lazy.tsx";
import { Dashed } from "../ui/option.tsx";

function Question(): VNode {
  const row = openQuestion.value;
  return row ? <Of key={row.id} row={row} /> : <Lazy entry={NOWHERE} />;
}

function Of({ row }: { row: FindingRow }): VNode | null {
  const engine = drawn.value;
  if (!engine) return null;
  const steps = firstQuestions(profile.value);
  const step = steps.findIndex(({ id }) => id === row.id);
  const isOfPart = targetKind(row) !== undefined;
  return (
    <section class="question">
      {step === 0 && (
        <>
          <SafeFirst />
          <Lazy
            entry={PLACE_ASKED}
            meanwhile={<p class={atHand.value?.where ? "lazy is-long" : "lazy"} />}
          />
        </>
      )}
      {!isDesk.value && <Cautions ids={cautionsOf(findings.value)} isShort />}
      <p class="facts">{step < 0 ? QUESTION.own : QUESTION.step(step + 1, steps.length)}</p>
      <Heading of={row.id} level={isDesk.value ? 2 : 1}>
        {row.ask}
      </Heading>
      {row.help && <p class="help">{inUnits.value(row.help)}</p>}
      {isOfPart ? (
        <Lazy entry={PART_QUESTION} />
      ) : (
        <Answerer
          row={row}
          engine={engine}
          given={answerOf(row.id)}
          draft={draftKey(row.id)}
          onAnswer={(answer) => {
            giveAnswer(row.id, answer);
            goOn(row);
          }}
        />
      )}
      <Leave row={row} />
      {step === 0 && <Lazy entry={PORT_ASKED} />}
      {step === 0 && engine.ignition === "distributor" && <Lazy entry={OLDER_ASKED} />}
    </section>
  );
}

/** "Can't tell", always there; it says so when it takes something back. Ticks are kept for later. */
function Leave({ row }: { row: FindingRow }): VNode {
  const isGiven = answersOf(row.id).length > 0;
  if (targetKind(row) !== undefined) {
    return (
      <Dashed onClick={() => goOn(row)}>{isGiven ? QUESTION.done : QUESTION.cannotTell}</Dashed>
    );
  }
  const isTicked = draftOf(row.id) !== undefined;
  const more = row.kind === "codes" && !isGiven && !isTicked ? CODES.cannotTellMore : undefined;
  const say = isTicked ? QUESTION.keepTicks : isGiven ? QUESTION.remove : QUESTION.cannotTell;
  return (
    <Dashed
      {...(more === undefined ? {} : { more })}
      onClick={() => {
        if (isGiven && !isTicked) withdrawAnswer(row.id);
        goOn(row);
      }}
    >
      {say}
    </Dashed>
  );
}

export { Question as Screen };
