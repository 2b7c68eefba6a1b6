// A check for the hand: what to do in the largest type, cautions above the steps, results to tap.
import type { CheckRow, CylinderName, FindingRow, RankedFault } from "@half-order/core";
import type { VNode } from "preact";
import { answersOf } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import { inUnits } from "../state/figure.ts";
import { isDone, putOffCheck } from "../state/next-check.ts";
import { stepsOf } from "../state/prose.ts";
import { goTo } from "../state/route.ts";
import { drawn, isDesk } from "../state/view.ts";
import { QUESTION } from "../text/en.ts";
import { CHECK } from "../text/en-check.ts";
import { Asker } from "./asker.tsx";
import { Heading, Under } from "./heading.tsx";
import { Meaning } from "./meaning.tsx";
import { Dashed } from "./option.tsx";
import { BackOn, StepCautions } from "./step-caution.tsx";
// Steps and answers hold figures.
import "../state/unit.ts";

function CheckFacts({ check }: { check: CheckRow }): VNode {
  const facts = [
    CHECK.minutes(check.minutes),
    CHECK.tools[check.tool] ?? check.tool,
    CHECK.skills[check.skill],
  ];
  return (
    <p class="facts">
      <strong>{CHECK.check}</strong> {facts.join(" · ")}
    </p>
  );
}

interface CheckPanelProps {
  readonly check: CheckRow;
  readonly fault: RankedFault | undefined;
}

export function CheckPanel({ check, fault }: CheckPanelProps): VNode {
  return (
    <article class="check">
      <CheckFacts check={check} />
      <Heading of={check.id} level={isDesk.value ? 2 : 1} class="act">
        {check.name}
      </Heading>
      {fault && <p class="help">{CHECK.looksAt(fault.name)}</p>}
      <StepCautions of={check} />
      <ol class="steps">
        {stepsOf(check.id).map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      {drawn.value && <BackOn of={check} engine={drawn.value} depth={1} />}
      <Results
        key={check.id}
        check={check}
        suspects={fault?.cylinders ?? []}
        level={isDesk.value ? 2 : 1}
      />
    </article>
  );
}

interface ResultsProps {
  readonly check: CheckRow;
  readonly suspects: readonly CylinderName[];
  /** Level of the heading that it stands under. */
  readonly level: number;
}

function Results({ check, suspects, level }: ResultsProps): VNode | null {
  const engine = drawn.value;
  const rows = check.yields.map(findingRow).filter((row): row is FindingRow => row !== undefined);
  if (!engine || rows.length === 0) return null;
  // With more than one result to note the check keeps the screen until all are noted.
  const onAnswered = (): void => {
    if (isDone(check)) goTo("ranking");
    else goTo("check", check.id);
  };
  const isBegun = rows.some((row) => answersOf(row.id).length > 0);
  return (
    <div class="results">
      <Under level={level} class="minor">
        {CHECK.found}
      </Under>
      {rows.map((row) => (
        <section key={row.id} class="result" aria-label={row.ask}>
          <Under level={level + 1} class="ask">
            {row.ask}
          </Under>
          {row.help && <p class="help">{inUnits.value(row.help)}</p>}
          <Asker
            row={row}
            engine={engine}
            suspects={suspects}
            meaning={Meaning}
            onAnswered={onAnswered}
          />
        </section>
      ))}
      <Dashed
        onClick={() => {
          putOffCheck(check.id);
          goTo("ranking");
        }}
      >
        {isBegun ? QUESTION.done : CHECK.notNow}
      </Dashed>
    </div>
  );
}
