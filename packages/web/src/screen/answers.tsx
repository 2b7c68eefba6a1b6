// All answers, to change or take back, and what can be done with the case as a whole.
import type { VNode } from "preact";
import { canRedo, canUndo, findings, redo, undo } from "../state/case.ts";
import { isDesk } from "../state/view.ts";
import { UNDO } from "../text/en.ts";
import { LISTED } from "../text/en-answers.ts";
import { CaseLinks, OtherLinks } from "../ui/case-links.tsx";
import { GivenAnswer } from "../ui/given-answer.tsx";
import { Heading } from "../ui/heading.tsx";

function Answers(): VNode {
  return (
    <section class="column">
      <Heading of="answers" level={isDesk.value ? 2 : 1}>
        {LISTED.title}
      </Heading>
      {findings.value.length === 0 && <p class="help">{LISTED.none}</p>}
      <p class="acts">
        <button type="button" class="quiet" disabled={!canUndo.value} onClick={undo}>
          {UNDO.undo}
        </button>
        <button type="button" class="quiet" disabled={!canRedo.value} onClick={redo}>
          {UNDO.redo}
        </button>
      </p>
      <ul class="answers">
        {findings.value.map((given) => (
          <GivenAnswer key={`${given.finding} ${given.cylinder}`} given={given} from="answers" />
        ))}
      </ul>
      <CaseLinks />
      <OtherLinks />
    </section>
  );
}

export { Answers as Screen };
