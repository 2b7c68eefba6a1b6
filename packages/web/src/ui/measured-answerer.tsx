// Answerers that are fetched when one is asked for: a figure that was measured, in the person's own unit, a count of
// each cylinder, a look to know a plug by.
import type { Answer } from "@half-order/core";
import type { VNode } from "preact";
import { useId, useState } from "preact/hooks";
import {
  type Bounds,
  boundsOf,
  readElsewhere,
  readFigure,
  sayBounds,
  unitOf,
} from "../state/bounds.ts";
import { draftOf, setDraft } from "../state/draft.ts";
import { sayFigure, toUnit, units } from "../state/unit.ts";
import { COUNTS, FIGURE } from "../text/en-measured.ts";
import type { AnswererProps } from "./answerer.tsx";
import { LookAnswerer } from "./look-answerer.tsx";
import { Finish } from "./option.tsx";
import { UnitAsked } from "./unit-asked.tsx";

export function FetchedAnswerer(props: AnswererProps): VNode {
  const { kind, reading } = props.row;
  if (reading) return <Figure {...props} bounds={boundsOf(reading)} />;
  return kind === "counts" ? <CountsAnswerer {...props} /> : <LookAnswerer {...props} />;
}

interface FigureProps {
  readonly bounds: Bounds;
  readonly draft: string;
  readonly given: Answer | undefined;
  readonly onAnswer: (answer: number) => void;
}

/** A measured figure in place of an option. */
function Figure({ bounds, draft, given, onAnswer }: FigureProps): VNode {
  const [text = ""] = draftOf(draft) ?? [typeof given === "number" ? sayGiven(given, bounds) : ""];
  const [isWrong, setWrong] = useState(false);
  const id = useId();
  const value = readFigure(text, bounds);
  const elsewhere = readElsewhere(text, bounds);
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    const isMeant = value !== undefined && !elsewhere;
    setWrong(!isMeant);
    if (isMeant) onAnswer(value);
    else (event.currentTarget as HTMLFormElement).querySelector("input")?.focus();
  };
  return (
    <form class="figure" onSubmit={submit} noValidate>
      <label>
        {FIGURE.measured(unitOf(bounds))}
        <input
          inputMode={bounds.within[0] < 0 ? "text" : "decimal"}
          autocomplete="off"
          value={text}
          aria-invalid={isWrong}
          aria-describedby={isWrong ? id : undefined}
          onInput={(event) => {
            setDraft(draft, [event.currentTarget.value]);
            setWrong(false);
          }}
        />
      </label>
      <button type="submit" class="small">
        {FIGURE.use}
      </button>
      {isWrong && !elsewhere && (
        <p id={id} class="wrong" role="alert">
          {sayBounds(bounds)}
        </p>
      )}
      {isWrong && elsewhere && (
        <UnitAsked
          {...{ id, text, bounds }}
          of={elsewhere}
          onTake={onAnswer}
          onKeep={value === undefined ? undefined : () => onAnswer(value)}
        />
      )}
    </form>
  );
}

function sayGiven(given: number, { quantity }: Bounds): string {
  if (!quantity) return String(given);
  const unit = units.value[quantity];
  return sayFigure(toUnit(given, quantity, unit), unit);
}

function CountsAnswerer({ engine, given, draft, onAnswer }: AnswererProps): VNode {
  const before = (typeof given === "object" ? given : {}) as Readonly<Record<string, number>>;
  const texts = draftOf(draft) ?? engine.names.map((name) => String(before[String(name)] ?? ""));
  const counts = (): Record<string, number> =>
    Object.fromEntries(
      engine.names.map((name, c) => [String(name), Number.parseInt(texts[c] ?? "", 10) || 0]),
    );
  return (
    <div class="options">
      <div class="counts">
        {engine.names.map((name, c) => (
          <label key={name} class="field">
            {COUNTS.label(String(name))}
            <input
              inputMode="numeric"
              value={texts[c]}
              onInput={(event) => {
                const typed = event.currentTarget.value.replace(/\D/g, "");
                setDraft(
                  draft,
                  engine.names.map((_, i) => (i === c ? typed : (texts[i] ?? ""))),
                );
              }}
            />
          </label>
        ))}
      </div>
      <p class="help">{COUNTS.empty}</p>
      {/* Before anything is typed there is nothing to note: nobody has read a row of zeros. */}
      {texts.some((text) => text !== "") && (
        <Finish onClick={() => onAnswer(counts())}>{COUNTS.use}</Finish>
      )}
    </div>
  );
}
