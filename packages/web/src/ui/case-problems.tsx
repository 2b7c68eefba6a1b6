// Why the open case cannot be ranked, with the way to each answer that it hangs on.
import type { VNode } from "preact";
import { findings, profile } from "../state/case.ts";
import { hasAllFindings } from "../state/prose.ts";
import { screen } from "../state/route.ts";
import { problems } from "../state/thinking.ts";
import { partedProblems } from "../state/wrong-answer.ts";
import { PROBLEM } from "../text/en-problem.ts";
import { GivenAnswer } from "./given-answer.tsx";
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
              <GivenAnswer
                key={`${given.finding} ${given.cylinder}`}
                given={given}
                from={screen.value}
              />
            ))}
          </ul>
        </section>
      )}
      {others.length > 0 && <Problems title={PROBLEM.cannotRank} of={others} />}
    </>
  );
}

export { CaseProblems as Screen };
