// A question of each cylinder, coil or connector, with what was answered so far.
import type { FindingRow } from "@half-order/core";
import type { VNode } from "preact";
import { answersOf, findings, withdrawAnswer } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import { disagreement } from "../state/tried.ts";
import { drawn, isDesk, missing } from "../state/view.ts";
import { openQuestion } from "../state/way.ts";
import { sayAnswer } from "../text/asked.ts";
import { LEDGER, QUESTION } from "../text/en.ts";
import { PART } from "../text/en-part.ts";
import { Asker } from "./asker.tsx";
import { Disagree } from "./disagree.tsx";
import { Under } from "./heading.tsx";

function PartQuestion(): VNode | null {
  const [row, engine] = [openQuestion.value, drawn.value];
  if (!row || !engine) return null;
  return (
    <>
      <Asker
        key={row.id}
        row={row}
        engine={engine}
        suspects={missing.value}
        onAnswered={() => undefined}
      />
      <Disagree of={disagreement(findings.value, findingRow, [row.id])} />
      <Given row={row} />
    </>
  );
}

function Given({ row }: { row: FindingRow }): VNode | null {
  const given = answersOf(row.id);
  if (given.length === 0) return null;
  return (
    <section class="aside" aria-label={PART.given}>
      <Under level={isDesk.value ? 2 : 1} class="minor">
        {PART.given}
      </Under>
      <ul class="given">
        {given.map(({ cylinder, answer }) => (
          <li key={cylinder}>
            <span>
              {LEDGER.cylinder(String(cylinder))}: {sayAnswer(row, answer)}
            </span>
            <button type="button" class="quiet" onClick={() => withdrawAnswer(row.id, cylinder)}>
              {QUESTION.remove}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

export { PartQuestion as Screen };
