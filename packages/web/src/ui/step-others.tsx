// Everything else that could be done: other checks and what they are worth, repairs without further checks, and
// what is not offered and why.
import type { NextCheck, NextRepair, Withheld } from "@half-order/core";
import type { VNode } from "preact";
import { plan, putOff } from "../state/advice.ts";
import { at } from "../state/route.ts";
import { checkAddress, keyOfStep, offered, otherChecks, wantedOf } from "../state/step.ts";
import { closeUp, work } from "../state/work.ts";
import { STEP, sayMinutes } from "../text/en-mend.ts";
import { chanceText } from "./chance.tsx";
import { Part } from "./repair-part.tsx";
import { placeless } from "./shut-out.tsx";
import { sayPlace } from "./step-check.tsx";

/** `depth`: see `Part`. */
export function OtherSteps({ depth }: { depth: 1 | 2 }): VNode | null {
  const now = plan.value;
  if (!now) return null;
  const checks = otherChecks(now, offered(now, putOff.value));
  return (
    <>
      {checks.length > 0 && (
        <Part title={STEP.checks} depth={depth}>
          <ul class="links">
            {checks.map((check) => (
              <Check key={keyOfStep(check)} of={check} />
            ))}
          </ul>
        </Part>
      )}
      {now.repairs.length > 0 && <Repairs of={now.repairs} />}
      {now.withheld.length > 0 && <NotOffered of={now.withheld} />}
      <OffNow />
    </>
  );
}

function Check({ of }: { of: NextCheck }): VNode {
  const { check, name, cylinders, minutes, worthMinutes } = of;
  const worth = worthMinutes >= 1 ? STEP.saves(sayMinutes(worthMinutes)) : STEP.savesNothing;
  return (
    <li>
      <a href={at(...checkAddress(check, cylinders))}>
        {name}
        <small>{[...sayPlace(of), sayMinutes(minutes), worth].join(", ")}</small>
      </a>
    </li>
  );
}

function Repairs({ of }: { of: readonly NextRepair[] }): VNode {
  return (
    <details class="topic">
      <summary>{STEP.repairs}</summary>
      <p class="help">{STEP.repairsHelp}</p>
      <ol class="links">
        {of.map((repair) => (
          <li key={keyOfStep(repair)}>
            <a href={at("mend", ...wantedOf(repair))}>
              {repair.name}
              <small>
                {chanceText(repair.cures)}, {sayMinutes(repair.minutes)}
              </small>
            </a>
          </li>
        ))}
      </ol>
    </details>
  );
}

function NotOffered({ of }: { of: readonly Withheld[] }): VNode {
  return (
    <details class="topic">
      <summary>{STEP.withheld}</summary>
      <ul class="group">
        {of.map(({ id, name, why }) => (
          <li key={id}>
            {placeless(name)}
            <small>{STEP.why[why]}</small>
          </li>
        ))}
      </ul>
      <a class="act-link" href={at("hand")}>
        {STEP.hand}
      </a>
    </details>
  );
}

/** What is off the engine counts as no work any more, until it is back on. */
function OffNow(): VNode | null {
  const { open } = work.value;
  if (open.length === 0) return null;
  return (
    <p class="fine">
      {STEP.openNow(open.length)}{" "}
      <button type="button" class="quiet" onClick={closeUp}>
        {STEP.allOn}
      </button>
    </p>
  );
}
