// Asks a finding of the whole engine, or of one cylinder or coil after the other.
import type { Answer, CylinderName, Engine, FindingRow } from "@half-order/core";
import type { ComponentType, VNode } from "preact";
import { useState } from "preact/hooks";
import { answerOf, answersOf, engines, giveAnswer } from "../state/case.ts";
import { type Target, type TargetKind, targetKind, targetsOf } from "../state/catalogue.ts";
import { draftKey } from "../state/draft.ts";
import { PART } from "../text/en-part.ts";
import { Answerer } from "./answerer.tsx";
import type { MeaningProps } from "./meaning.tsx";

interface AskerProps {
  readonly row: FindingRow;
  readonly engine: Engine;
  /** Cylinders under suspicion: asked of first. */
  readonly suspects?: readonly CylinderName[];
  /** Given where it is told what each result would mean. */
  readonly meaning?: ComponentType<MeaningProps>;
  readonly onAnswered: () => void;
}

export function Asker(props: AskerProps): VNode {
  const { row, engine, suspects = [], onAnswered } = props;
  const targets = askable(row, engine);
  const [chosen, setChosen] = useState(() => firstAsked(targets, engine, suspects));
  const target = targets.length > 0 ? (targets[chosen] ?? targets[0]) : undefined;
  const cylinder = target && engine.names[target.cylinder];
  const answer = (given: Answer): void => {
    giveAnswer(row.id, given, cylinder);
    onAnswered();
  };
  return (
    <>
      {targets.length > 1 && <Targets {...{ row, engine, targets, chosen, onChoose: setChosen }} />}
      <Answerer
        key={`${row.id} ${cylinder}`}
        row={row}
        engine={engine}
        given={answerOf(row.id, cylinder)}
        draft={draftKey(row.id, cylinder)}
        onAnswer={answer}
      />
      {props.meaning && (
        <props.meaning
          key={cylinder}
          row={row}
          cylinder={cylinder}
          where={target?.cylinders.map((c) => engine.names[c] ?? c).join("+")}
        />
      )}
    </>
  );
}

/** While the firing order is not known, nobody can say which cylinders a coil fires. */
function askable(row: FindingRow, engine: Engine): readonly Target[] {
  const isVague = engines.value.length > 1 && targetKind(row) === "coil";
  return isVague
    ? engine.names.map((_, c) => ({ cylinder: c, cylinders: [c] }))
    : targetsOf(row, engine);
}

function firstAsked(
  targets: readonly Target[],
  engine: Engine,
  suspects: readonly CylinderName[],
): number {
  const index = targets.findIndex(({ cylinders }) =>
    cylinders.some((c) => suspects.includes(engine.names[c] ?? c)),
  );
  return Math.max(0, index);
}

interface TargetsProps {
  readonly row: FindingRow;
  readonly engine: Engine;
  readonly targets: readonly Target[];
  readonly chosen: number;
  readonly onChoose: (index: number) => void;
}

const ASK: Readonly<Record<TargetKind, string>> = {
  cylinder: PART.whichCylinder,
  coil: PART.whichCoil,
  connector: PART.whichConnector,
};

function Targets({ row, engine, targets, chosen, onChoose }: TargetsProps): VNode {
  const given = new Set(answersOf(row.id).map(({ cylinder }) => cylinder));
  const label = ASK[targetKind(row) ?? "cylinder"];
  return (
    <fieldset class="targets">
      <legend>{label}</legend>
      {targets.map(({ cylinders }, index) => {
        const names = cylinders.map((c) => engine.names[c] ?? c);
        const isGiven = names.some((name) => given.has(name));
        return (
          <button
            key={names.join()}
            type="button"
            class={isGiven ? "target is-given" : "target"}
            aria-pressed={index === chosen}
            onClick={() => onChoose(index)}
          >
            {names.join("+")}
            {isGiven && <span class="vh"> {PART.given}</span>}
          </button>
        );
      })}
    </fieldset>
  );
}
