// A check for the hand: what to do in the largest type, cautions above the steps, results to tap.
import type { CheckRow, CylinderName, FindingRow, RankedFault } from "@half-order/core";
import type { VNode } from "preact";
import { answersOf } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import { isDone, offers, putOffCheck } from "../state/next-check.ts";
import { stepsOf } from "../state/prose.ts";
import { at, goTo } from "../state/route.ts";
import { ranking } from "../state/thinking.ts";
import { drawn, isDesk } from "../state/view.ts";
import { CHECK, QUESTION } from "../text/en.ts";
import { Asker } from "./asker.tsx";
import { Cautions } from "./caution.tsx";
import { Heading, Under } from "./heading.tsx";
import { Dashed } from "./option.tsx";

/** The next move; nothing while nothing is ranked. */
export function NextCheck(): VNode | null {
  const [first, ...others] = offers.value;
  if (!ranking.value) return null;
  if (!first) return <p class="help">{CHECK.none}</p>;
  if (!isDesk.value) return <NextInShort {...first} />;
  return (
    <section class="next" aria-label={CHECK.next}>
      <CheckPanel check={first.check} fault={first.fault} label={CHECK.next} />
      {others.length > 0 && (
        <>
          <h3 class="minor">{CHECK.others}</h3>
          <OtherChecks />
        </>
      )}
    </section>
  );
}

/** On a phone: what the hand does next, and the way to how it is done. */
function NextInShort({ check, fault }: { check: CheckRow; fault: RankedFault }): VNode {
  return (
    <section class="next" aria-label={CHECK.next}>
      <CheckFacts check={check} label={CHECK.next} />
      <h2 class="act">{check.name}</h2>
      <p class="help">{CHECK.looksAt(fault.name)}</p>
      <Cautions ids={check.cautions} />
      <a class="option is-finish" href={at("check", check.id)}>
        {CHECK.how}
      </a>
      <a class="act-link" href={at("checks")}>
        {CHECK.others}
      </a>
    </section>
  );
}

function CheckFacts({ check, label }: { check: CheckRow; label: string }): VNode {
  const facts = [
    CHECK.minutes(check.minutes),
    CHECK.tools[check.tool] ?? check.tool,
    CHECK.skills[check.skill],
  ];
  return (
    <p class="facts">
      <strong>{label}</strong> {facts.join(" · ")}
    </p>
  );
}

/** Other checks than the one that is offered first. */
export function OtherChecks(): VNode {
  return (
    <ul class="links">
      {offers.value.slice(1).map(({ check, fault }) => (
        <li key={check.id}>
          <a href={at("check", check.id)}>
            {check.name}
            <small>
              {CHECK.minutes(check.minutes)}, {CHECK.looksAt(fault.name)}
            </small>
          </a>
        </li>
      ))}
    </ul>
  );
}

interface CheckPanelProps {
  readonly check: CheckRow;
  readonly fault: RankedFault | undefined;
  readonly label: string;
  /** On a screen of its own it has the heading that takes the focus. */
  readonly isScreen?: boolean;
}

export function CheckPanel({ check, fault, label, isScreen }: CheckPanelProps): VNode {
  return (
    <article class="check">
      <CheckFacts check={check} label={label} />
      {isScreen || isDesk.value ? (
        <Heading of={isScreen ? check.id : label} level={isDesk.value ? 2 : 1} class="act">
          {check.name}
        </Heading>
      ) : (
        <h2 class="act">{check.name}</h2>
      )}
      {fault && <p class="help">{CHECK.looksAt(fault.name)}</p>}
      <Cautions ids={check.cautions} />
      <ol class="steps">
        {stepsOf(check.id).map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <Results
        key={check.id}
        check={check}
        suspects={fault?.cylinders ?? []}
        level={isScreen && !isDesk.value ? 1 : 2}
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
          {row.help && <p class="help">{row.help}</p>}
          <Asker row={row} engine={engine} suspects={suspects} hasMeaning onAnswered={onAnswered} />
        </section>
      ))}
      <Dashed
        onClick={() => {
          putOffCheck(check.id);
          goTo("ranking");
        }}
      >
        {isBegun ? QUESTION.done : QUESTION.notNow}
      </Dashed>
    </div>
  );
}
