// One answer that was given, with the ways to change it and to take it back.
import type { Finding } from "@half-order/core";
import type { VNode } from "preact";
import { withdrawAnswer } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import "../state/unit.ts";
import { drawn } from "../state/view.ts";
import { askFrom } from "../state/way.ts";
import { sayAnswer, sayAsked } from "../text/asked.ts";
import { LISTED } from "../text/en-answers.ts";
import { keepPlace } from "./keep-place.ts";

interface GivenAnswerProps {
  readonly given: Finding;
  /** The screen to come back to from the question. */
  readonly from: string;
}

export function GivenAnswer({ given, from }: GivenAnswerProps): VNode {
  const row = findingRow(given.finding);
  const asked = sayAsked(row, given, drawn.value);
  return (
    <li>
      <p>
        <small>{asked}</small>
        {sayAnswer(row, given.answer)}
      </p>
      {row && (
        <a class="quiet" href={askFrom(from, given.finding)}>
          {LISTED.change}
          <span class="vh">: {asked}</span>
        </a>
      )}
      <button
        type="button"
        class="quiet"
        onClick={({ currentTarget }) =>
          keepPlace(currentTarget, () => withdrawAnswer(given.finding, given.cylinder))
        }
      >
        {LISTED.remove}
        <span class="vh">: {asked}</span>
      </button>
    </li>
  );
}
