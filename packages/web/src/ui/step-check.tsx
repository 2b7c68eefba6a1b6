// A check at its place on this engine: cautions before the steps, what each result would mean before one starts.
import {
  type CheckRow,
  type CylinderName,
  type NextCheck,
  servedBy,
  turnsEngine,
} from "@half-order/core";
import type { VNode } from "preact";
import { plan } from "../state/advice.ts";
import { checkRow, findingRow } from "../state/catalogue.ts";
import { drive } from "../state/drive.ts";
import { stepsOf } from "../state/prose.ts";
import { asAsked, keyAt, keyOfStep, offInShort, toldOutcomes } from "../state/step.ts";
import { drawn, isDesk } from "../state/view.ts";
import { setOpen } from "../state/work.ts";
import { list } from "../text/en.ts";
import { CHECK } from "../text/en-check.ts";
import { STEP, sayMinutes } from "../text/en-mend.ts";
import { outcomeLines } from "../text/outcome.ts";
import { chanceText } from "./chance.tsx";
import { Heading } from "./heading.tsx";
import { Ordered, Part } from "./repair-part.tsx";
import { BackOn, StepCautions } from "./step-caution.tsx";
import { CheckResults } from "./step-results.tsx";
import { sayThen } from "./then.ts";

interface StepCheckProps {
  /** Id of the check. */
  readonly id: string;
  readonly cylinders: readonly CylinderName[];
  /** On a screen of its own it has the heading that takes the focus. */
  readonly isScreen?: boolean;
}

export function StepCheck({ id, cylinders, isScreen = false }: StepCheckProps): VNode | null {
  const check = checkRow(id);
  const engine = drawn.value;
  if (!check || !engine) return null;
  const key = keyAt(id, cylinders);
  const planned = plan.value?.checks.find((each) => keyOfStep(each) === key);
  const depth = isScreen ? 1 : 2;
  return (
    <article class="check">
      <StepFacts
        step={planned ?? { check: id, cylinders, minutes: check.minutes }}
        label={STEP.check}
      />
      {isScreen ? (
        <Heading of={key} level={isDesk.value ? 2 : 1} class="act">
          {check.name}
        </Heading>
      ) : (
        <h3 class="act">{check.name}</h3>
      )}
      <Running check={check} />
      <StepCautions of={check} />
      {planned && planned.opens.length > 0 && <Opens of={planned} depth={depth} />}
      <Part title={STEP.steps} depth={depth}>
        <Ordered of={stepsOf(id)} />
      </Part>
      <BackOn of={check} engine={engine} depth={depth} />
      {planned && <Outcomes of={planned} depth={depth} />}
      <CheckResults key={key} {...{ check, cylinders, engine, planned, isScreen }} />
    </article>
  );
}

/** A check that runs the engine, or ends with a start or a drive, while the answer on driving forbids it. */
function Running({ check }: { check: CheckRow }): VNode | null {
  const level = drive.value?.rests ? "stop-now" : drive.value?.level?.level;
  if (level !== "stop-now" && level !== "do-not-drive") return null;
  const isTrial = check.yields.some((id) => findingRow(id)?.topic === "tried");
  const words = turnsEngine(check) ? STEP.running : isTrial ? STEP.trial : undefined;
  return words ? <p class="wrong">{words[level]}</p> : null;
}

interface StepFactsProps {
  readonly step: Pick<NextCheck, "check" | "cylinders" | "minutes">;
  readonly label: string;
}

/** Where, how long, with what, by whom. */
export function StepFacts({ step, label }: StepFactsProps): VNode {
  const row = checkRow(step.check);
  const facts = [
    ...sayPlace(step),
    sayMinutes(step.minutes),
    ...(row ? [CHECK.tools[row.tool] ?? row.tool, CHECK.skills[row.skill]] : []),
  ];
  return (
    <p class="facts">
      <strong>{label}</strong> {facts.join(" · ")}
    </p>
  );
}

/** At which cylinders; nothing where it concerns the whole engine, as a connector or a coil that serves all does. */
export function sayPlace({
  check,
  cylinders,
}: Pick<NextCheck, "check" | "cylinders">): readonly string[] {
  const engine = drawn.value;
  const [cylinder] = cylinders;
  if (!engine || cylinder === undefined) return [];
  const rows = (checkRow(check)?.yields ?? []).flatMap((id) => findingRow(id) ?? []);
  const placed = rows.filter(({ scope }) => scope !== "engine");
  const [row] = placed;
  const isShared = placed.every(({ scope }) => scope !== "cylinder" && scope === row?.scope);
  const fed = row && isShared ? servedBy(engine, row.scope, cylinder) : undefined;
  const names = fed?.map((c) => engine.names[c] ?? c) ?? cylinders;
  if (names.length === engine.names.length) return [];
  return [STEP.cylinders(names.length, list(names))];
}

/** What must come off first; what is off already is said with a tap, and then costs nothing more. */
function Opens({ of, depth }: { of: NextCheck; depth: 1 | 2 }): VNode {
  return (
    <Part title={STEP.opens} depth={depth}>
      <ul class="given">
        {offInShort(of.opens).map(({ say, ids, minutes }) => (
          <li key={say}>
            <span>
              {STEP.off(say, ids.length)}
              <small>{STEP.openMinutes(sayMinutes(minutes))}</small>
            </span>
            <button type="button" class="quiet" onClick={() => setOpen(ids)}>
              {STEP.isOff}
              <span class="vh">: {say}</span>
            </button>
          </li>
        ))}
      </ul>
    </Part>
  );
}

/** Results that are told at once; the rarer ones behind a tap. */
const SHOWN = 4;

function Outcomes({ of, depth }: { of: NextCheck; depth: 1 | 2 }): VNode | null {
  const told = toldOutcomes(of.outcomes);
  const rarer = told.slice(SHOWN);
  if (told.length === 0) return null;
  const yields = checkRow(of.check)?.yields ?? [];
  const line = ({ answers: given, probability, leader }: NextCheck["outcomes"][number]): VNode => {
    const answers = asAsked(given, yields, of.cylinders);
    const then = sayThen(answers, leader);
    return (
      <div key={JSON.stringify(answers)} class="fact">
        <dt>
          {outcomeLines(answers, findingRow).map(({ asked, answer }) => (
            <span key={`${asked} ${answer}`} class="outcome">
              {asked && <small>{asked}</small>}
              {answer}
            </span>
          ))}
          <b>{chanceText(probability)}</b>
        </dt>
        {then && <dd>{then}</dd>}
      </div>
    );
  };
  return (
    <Part title={STEP.outcomes} depth={depth}>
      <p class="help">{STEP.outcomesHelp}</p>
      <dl class="meaning">{told.slice(0, SHOWN).map(line)}</dl>
      {rarer.length > 0 && (
        <details>
          <summary>{STEP.rarer(rarer.length)}</summary>
          <dl class="meaning">{rarer.map(line)}</dl>
        </details>
      )}
    </Part>
  );
}
