// What is known of the hidden fault: the story, then what each check showed.
import type { Finding } from "@half-order/core";
import type { Practice, PracticeCheck, PracticePeek } from "@half-order/core/instrument";
import type { VNode } from "preact";
import { findingRow } from "../state/catalogue.ts";
// Answers are said in the units that this person likes.
import "../state/unit.ts";
import { sayAnswer, sayAsked } from "../text/answer.ts";
import { list } from "../text/en.ts";
import { CHECK } from "../text/en-check.ts";
import { PRACTICE } from "../text/en-practice.ts";
import { outcomeLines } from "../text/outcome.ts";
import { chanceText } from "../ui/chance.tsx";
import { TakingFocus } from "./taking-focus.tsx";

export function Story({ of }: { of: readonly Finding[] }): VNode {
  return (
    <section class="practice-part">
      <TakingFocus level={2}>{PRACTICE.story}</TakingFocus>
      <p class="help">{PRACTICE.storyHelp}</p>
      <dl class="practice-told">
        {of.map((each) => {
          const row = findingRow(each.finding);
          return (
            <div key={each.finding} class="fact">
              <dt>{sayAsked(row, each)}</dt>
              <dd>{sayAnswer(row, each.answer)}</dd>
            </div>
          );
        })}
      </dl>
    </section>
  );
}

export function Log({ of: { steps, minutes } }: { of: Practice }): VNode {
  return (
    <section class="practice-part">
      <h2>{PRACTICE.log}</h2>
      {steps.length === 0 && <p class="help">{PRACTICE.logNone}</p>}
      <ol class="practice-steps">
        {steps.map((step, i) => (
          // The same check may be made twice.
          <li key={i}>{step.kind === "check" ? <Check of={step} /> : <Peek of={step} />}</li>
        ))}
      </ol>
      {steps.length > 0 && <p>{PRACTICE.total(CHECK.minutes(minutes))}</p>}
    </section>
  );
}

function Check({ of }: { of: PracticeCheck }): VNode {
  const { name, cylinders, minutes, shows, isKnown } = of;
  return (
    <>
      <TakingFocus level={3}>{name}</TakingFocus>
      <p class="facts">{[...sayWhere(cylinders), CHECK.minutes(minutes)].join(" · ")}</p>
      {shows.length === 0 && <p>{PRACTICE.sawNothing}</p>}
      {shows.length > 0 && (
        <ul class="group">
          {outcomeLines(shows, findingRow).map(({ asked, answer }, i, lines) => (
            <li key={`${asked} ${answer}`}>
              {/* Of several cylinders one after the other: asked once. */}
              {asked && asked !== lines[i - 1]?.asked && <small>{asked}</small>} {answer}
            </li>
          ))}
        </ul>
      )}
      {isKnown && <p class="help">{PRACTICE.isKnown}</p>}
    </>
  );
}

function Peek({ of: { leaders } }: { of: PracticePeek }): VNode {
  return (
    <>
      <TakingFocus level={3}>{PRACTICE.peeked}</TakingFocus>
      <ol class="group">
        {leaders.map(({ fault, place, name, probability }) => (
          <li key={`${fault} ${place}`}>
            {name} <b>{chanceText(probability)}</b>
          </li>
        ))}
      </ol>
    </>
  );
}

/** Nothing for the whole engine. */
export function sayWhere(cylinders: readonly (string | number)[]): readonly string[] {
  if (cylinders.length === 0) return [];
  return [PRACTICE.somewhere(list(cylinders), cylinders.length)];
}
