// All answers, to change or take back, and what can be done with the case as a whole.
import type { VNode } from "preact";
import { canRedo, canUndo, findings, redo, undo, withdrawAnswer } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import { drawn, isDesk } from "../state/view.ts";
import "../state/unit.ts";
import { askFrom } from "../state/way.ts";
import { sayAnswer, sayAsked } from "../text/answer.ts";
import { UNDO } from "../text/en.ts";
import { LISTED } from "../text/en-answers.ts";
import { CaseLinks, OtherLinks } from "../ui/case-links.tsx";
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
        {findings.value.map((given) => {
          const row = findingRow(given.finding);
          const asked = sayAsked(row, given, drawn.value);
          return (
            <li key={asked}>
              <p>
                <small>{asked}</small>
                {sayAnswer(row, given.answer)}
              </p>
              <a class="quiet" href={askFrom("answers", given.finding)}>
                {LISTED.change}
                <span class="vh">: {asked}</span>
              </a>
              <button
                type="button"
                class="quiet"
                onClick={() => withdrawAnswer(given.finding, given.cylinder)}
              >
                {LISTED.remove}
                <span class="vh">: {asked}</span>
              </button>
            </li>
          );
        })}
      </ul>
      <CaseLinks />
      <OtherLinks />
    </section>
  );
}

export { Answers as Screen };
