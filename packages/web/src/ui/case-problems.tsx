// Why the open case cannot be ranked.
import type { VNode } from "preact";
import { problems } from "../state/thinking.ts";
import { PROBLEM } from "../text/en-problem.ts";
import { Problems } from "./problems.tsx";

function CaseProblems(): VNode {
  return <Problems title={PROBLEM.cannotRank} of={problems.value} />;
}

export { CaseProblems as Screen };
