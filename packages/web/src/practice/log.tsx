// What is known of the hidden fault: the story, then what each check showed.
import type { Finding } from "@half-order/core";
import type { Practice, PracticeCheck, PracticePeek } from "@half-order/core/instrument";
import type { VNode } from "preact";
import { PRACTICE, sayCost, sayStep } from "../text/en-practice.ts";
import { chanceText } from "../ui/chance.tsx";
import { TakingFocus } from "./taking-focus.tsx";
import { Shown, Told } from "./told.tsx";

export function Story({ of }: { of: readonly Finding[] }): VNode {
  return (
    <section class="practice-part">
      <TakingFocus level={2}>{PRACTICE.story}</TakingFocus>
      <p class="help">{PRACTICE.storyHelp}</p>
      <Told of={of} />
    </section>
  );
}

export function Log({ of: { steps, minutes } }: { of: Practice }): VNode {
  return (
    <section class="practice-part">
      <h2>{PRACTICE.log}</h2>
      {steps.length === 0 ? (
        <p class="help">{PRACTICE.logNone}</p>
      ) : (
        <>
          <ol class="practice-steps">
            {steps.map((step, i) => (
              // The same check may be made twice.
              <li key={i}>{step.kind === "check" ? <Check of={step} /> : <Peek of={step} />}</li>
            ))}
          </ol>
          <p>{PRACTICE.total(sayCost(minutes))}</p>
        </>
      )}
    </section>
  );
}

function Check({ of }: { of: PracticeCheck }): VNode {
  const { minutes, shows, isKnown } = of;
  return (
    <>
      <TakingFocus level={3}>{sayStep(of)}</TakingFocus>
      <p class="facts">{sayCost(minutes)}</p>
      <Shown of={shows} />
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
