// All answers, to change or take back, and what can be done with the case as a whole.
import type { Finding, FindingRow } from "@half-order/core";
import type { VNode } from "preact";
import { firstQuestions } from "../state/asked.ts";
import { canRedo, canUndo, findings, profile, redo, undo } from "../state/case.ts";
import { hasPort } from "../state/port.ts";
import { at } from "../state/route.ts";
import { isDesk } from "../state/view.ts";
import { askFrom } from "../state/way.ts";
import { UNDO } from "../text/en.ts";
import { LISTED } from "../text/en-answers.ts";
import { CaseLinks, OtherLinks } from "../ui/case-links.tsx";
import { GivenAnswer } from "../ui/given-answer.tsx";
import { Heading } from "../ui/heading.tsx";

/** The first questions in their order, those too that nobody could tell; then all else as it was entered. */
function Answers(): VNode {
  const given = findings.value;
  const firsts = firstQuestions(profile.value);
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
        {!hasPort.value && <NoPort />}
        {firsts.map((row) => firstOf(row, given) ?? <NotKnown key={row.id} row={row} />)}
        {given.filter(({ finding }) => !firsts.some(({ id }) => id === finding)).map(line)}
      </ul>
      <CaseLinks />
      <OtherLinks />
    </section>
  );
}

function firstOf({ id }: FindingRow, given: readonly Finding[]): VNode | undefined {
  const found = given.find(({ finding }) => finding === id);
  return found && line(found);
}

function line(given: Finding): VNode {
  return <GivenAnswer key={`${given.finding} ${given.cylinder}`} given={given} from="answers" />;
}

/** Said of the car with the first question; it stands here too, so that it can be taken back. */
function NoPort(): VNode {
  return (
    <li>
      <p>
        <small>{LISTED.port}</small>
        {LISTED.noPort}
      </p>
      <a class="quiet" href={at("hand", "answers")}>
        {LISTED.change}
        <span class="vh">: {LISTED.port}</span>
      </a>
    </li>
  );
}

function NotKnown({ row }: { row: FindingRow }): VNode {
  return (
    <li>
      <p>
        <small>{row.ask}</small>
        {LISTED.notKnown}
      </p>
      <a class="quiet" href={askFrom("answers", row.id)}>
        {LISTED.change}
        <span class="vh">: {row.ask}</span>
      </a>
    </li>
  );
}

export { Answers as Screen };
