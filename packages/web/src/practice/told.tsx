// What was answered, each under what was asked: the story, and what a check showed.
import type { Finding } from "@half-order/core";
import type { VNode } from "preact";
import { findingRow } from "../state/catalogue.ts";
// Answers are said in the units that this person likes.
import "../state/unit.ts";
import { sayAnswer, sayAsked } from "../text/asked.ts";
import { STEP } from "../text/en-mend.ts";
import { PRACTICE } from "../text/en-practice.ts";

export function Told({ of }: { of: readonly Finding[] }): VNode {
  const asked = [...new Set(of.map(({ finding }) => finding))];
  return (
    <dl class="practice-told">
      {asked.map((finding) => (
        <Answered key={finding} of={of.filter((each) => each.finding === finding)} />
      ))}
    </dl>
  );
}

/** What a check showed. */
export function Shown({ of }: { of: readonly Finding[] }): VNode {
  return of.length > 0 ? <Told of={of} /> : <p>{PRACTICE.sawNothing}</p>;
}

/** Of several cylinders it is asked once. */
function Answered({ of }: { of: readonly Finding[] }): VNode | null {
  const [first, second] = of;
  if (!first) return null;
  const row = findingRow(first.finding);
  return (
    <div class="fact">
      <dt>{sayAsked(row, second ? { finding: first.finding } : first)}</dt>
      {of.map(({ answer, cylinder }, i) => (
        <dd key={i}>
          {second && cylinder !== undefined && `${STEP.foundAt(1, String(cylinder))}: `}
          {sayAnswer(row, answer)}
        </dd>
      ))}
    </div>
  );
}
