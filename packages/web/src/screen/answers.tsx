// All answers, to change or take back, and what can be done with the case as a whole.
import type { VNode } from "preact";
import { canRedo, canUndo, findings, profile, redo, undo, withdrawAnswer } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import { saveCaseFile } from "../state/file.ts";
import { at } from "../state/route.ts";
import { isDesk } from "../state/view.ts";
import { askFrom } from "../state/way.ts";
import { sayAnswer, sayAsked } from "../text/answer.ts";
import { ADD, ANSWERS, START, UNDO } from "../text/en.ts";
import { Heading } from "../ui/heading.tsx";

export function Answers(): VNode {
  return (
    <section class="column">
      <Heading of="answers" level={isDesk.value ? 2 : 1}>
        {ANSWERS.title}
      </Heading>
      {findings.value.length === 0 && <p class="help">{ANSWERS.none}</p>}
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
          const asked = sayAsked(row, given);
          return (
            <li key={asked}>
              <p>
                <small>{asked}</small>
                {sayAnswer(row, given.answer)}
              </p>
              <a class="quiet" href={askFrom("answers", given.finding)}>
                {ANSWERS.change}
                <span class="vh">: {asked}</span>
              </a>
              <button
                type="button"
                class="quiet"
                onClick={() => withdrawAnswer(given.finding, given.cylinder)}
              >
                {ANSWERS.remove}
                <span class="vh">: {asked}</span>
              </button>
            </li>
          );
        })}
      </ul>
      <ul class="links">
        <li>
          <a href={at("add")}>{ADD.title}</a>
        </li>
        <li>
          <button type="button" onClick={saveCaseFile}>
            {ANSWERS.save}
          </button>
        </li>
        <li>
          <button type="button" onClick={() => print()}>
            {ANSWERS.print}
          </button>
        </li>
        <li>
          <a href={at("record")}>{ANSWERS.record}</a>
        </li>
        <li>
          <a href={at("hand-over")}>{ANSWERS.handOver}</a>
        </li>
        <li>
          <a href={at("glossary")}>{ANSWERS.glossary}</a>
        </li>
        <li>
          <a href={at("engine", String(profile.value?.cylinders ?? ""))}>{ANSWERS.engine}</a>
        </li>
        <li>
          <a href={at("hand")}>{ANSWERS.hand}</a>
        </li>
        <li>
          <a href={at("cases")}>{START.cases}</a>
        </li>
        <li>
          <a href={at()}>{ANSWERS.anew}</a>
        </li>
      </ul>
    </section>
  );
}
