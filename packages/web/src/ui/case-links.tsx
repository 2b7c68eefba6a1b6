// What can be done with the open case as a whole, and what stands beside all cases.
import type { VNode } from "preact";
import { isClosed, profile, repairs } from "../state/case.ts";
import { at } from "../state/route.ts";
import { saveCaseFile } from "../state/save-file.ts";
import { ADD, ANSWERS, START } from "../text/en.ts";
import { MORE } from "../text/en-answers.ts";

export function CaseLinks(): VNode {
  return (
    <ul class="links">
      {!isClosed.value && <Way to={at("add")} say={ADD.title} />}
      {repairs.value.length > 0 && <Way to={at("repairs")} say={MORE.repairs} />}
      <Way to={at("record")} say={MORE.record} />
      <Way to={at("hand-over")} say={MORE.handOver} />
      <Act say={ANSWERS.save} onClick={saveCaseFile} />
      <Act say={MORE.print} onClick={() => print()} />
      <Way to={at("engine", String(profile.value?.cylinders ?? ""))} say={MORE.engine} />
    </ul>
  );
}

export function OtherLinks(): VNode {
  return (
    <ul class="links">
      <Way to={at("hand")} say={MORE.hand} />
      <Way to={at("lesson")} say={MORE.lesson} />
      <Way to={at("practice")} say={MORE.practice} />
      <Way to={at("glossary")} say={MORE.glossary} />
      <Way to={at("cases")} say={START.cases} />
      <Way to={at()} say={MORE.anew} />
    </ul>
  );
}

export function Way({ to, say }: { to: string; say: string }): VNode {
  return (
    <li>
      <a href={to}>{say}</a>
    </li>
  );
}

function Act({ say, onClick }: { say: string; onClick: () => void }): VNode {
  return (
    <li>
      <button type="button" onClick={onClick}>
        {say}
      </button>
    </li>
  );
}
