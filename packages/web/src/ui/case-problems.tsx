// Why the open case cannot be ranked, with the way to each answer that it hangs on.
import type { Finding } from "@half-order/core";
import type { VNode } from "preact";
import { findings, profile, withdrawAnswer } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import { hasAllFindings } from "../state/prose.ts";
import { screen } from "../state/route.ts";
import { problems } from "../state/thinking.ts";
import { drawn } from "../state/view.ts";
import "../state/unit.ts";
import { askFrom } from "../state/way.ts";
import { partedProblems } from "../state/wrong-answer.ts";
import { sayAnswer, sayAsked } from "../text/answer.ts";
import { QUESTION } from "../text/en.ts";
import { LISTED } from "../text/en-answers.ts";
import { PROBLEM } from "../text/en-problem.ts";
import { Problems } from "./problems.tsx";

function CaseProblems(): VNode | null {
  const known = profile.value;
  // A question that has not come yet is no wrong one.
  if (!known || !hasAllFindings()) return null;
  const { answers, others } = partedProblems(problems.value, known, findings.value);
  return (
    <>
      {answers.length > 0 && (
        <section class="caution" role="alert">
          <strong>{PROBLEM.cannotRank}</strong>
          <p>{PROBLEM.wrongAnswers(answers.length)}</p>
          <ul class="answers">
            {answers.map((given) => (
              <WrongAnswer key={`${given.finding} ${given.cylinder}`} given={given} />
            ))}
          </ul>
        </section>
      )}
      {others.length > 0 && <Problems title={PROBLEM.cannotRank} of={others} />}
    </>
  );
}

function WrongAnswer({ given }: { given: Finding }): VNode {
  const row = findingRow(given.finding);
  const asked = sayAsked(row, given, drawn.value);
  return (
    <li>
      <p>
        <small>{asked}</small>
        {sayAnswer(row, given.answer)}
      </p>
      {row && (
        <a class="quiet" href={askFrom(screen.value, given.finding)}>
          {LISTED.change}
          <span class="vh">: {asked}</span>
        </a>
      )}
      <button
        type="button"
        class="quiet"
        onClick={() => withdrawAnswer(given.finding, given.cylinder)}
      >
        {QUESTION.remove}
        <span class="vh">: {asked}</span>
      </button>
    </li>
  );
}

export { CaseProblems as Screen };
