// Asks for the answer to a finding, by the finding's kind. It hands the answer on and keeps nothing.
import type { Answer, Engine, FindingRow } from "@half-order/core";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { QUESTION } from "../text/en.ts";
import { CodesAnswerer } from "./codes-answerer.tsx";
import { CountsAnswerer } from "./counts-answerer.tsx";
import { Finish, Option } from "./option.tsx";

export interface AnswererProps {
  readonly row: FindingRow;
  readonly engine: Engine;
  /** The answer given before. */
  readonly given: Answer | undefined;
  readonly onAnswer: (answer: Answer) => void;
  /** Hears how many options are ticked and not confirmed. */
  readonly onTicks?: (ticks: number) => void;
}

export function Answerer(props: AnswererProps): VNode {
  switch (props.row.kind) {
    case "choice":
      return <ChoiceAnswerer {...props} />;
    case "presence":
      return <PresenceAnswerer {...props} />;
    case "several":
      return <SeveralAnswerer {...props} />;
    case "codes":
      return <CodesAnswerer {...props} />;
    case "counts":
      return <CountsAnswerer {...props} />;
  }
}

function ChoiceAnswerer({ row, given, onAnswer }: AnswererProps): VNode {
  return (
    <div class="options">
      {Object.entries(row.options).map(([option, { say, more }]) => (
        <Option
          key={option}
          say={say}
          more={more}
          isGiven={given === option}
          onClick={() => onAnswer(option)}
        />
      ))}
      {row.reading && <Figure unit={row.reading.unit} given={given} onAnswer={onAnswer} />}
    </div>
  );
}

interface FigureProps {
  readonly unit: string;
  readonly given: Answer | undefined;
  readonly onAnswer: (answer: number) => void;
}

/** A measured figure in place of an option. */
function Figure({ unit, given, onAnswer }: FigureProps): VNode {
  const [text, setText] = useState(typeof given === "number" ? String(given) : "");
  const [isWrong, setWrong] = useState(false);
  const submit = (event: Event): void => {
    event.preventDefault();
    const value = Number(text.trim().replace(",", ".").replace("−", "-"));
    if (text.trim() === "" || !Number.isFinite(value)) setWrong(true);
    else onAnswer(value);
  };
  return (
    <form class="figure" onSubmit={submit} noValidate>
      <label>
        {QUESTION.measured(unit)}
        <input
          inputMode="decimal"
          value={text}
          aria-invalid={isWrong}
          onInput={(event) => {
            setText(event.currentTarget.value);
            setWrong(false);
          }}
        />
      </label>
      <button type="submit" class="small">
        {QUESTION.use}
      </button>
      {isWrong && <p role="alert">{QUESTION.wrongNumber}</p>}
    </form>
  );
}

function PresenceAnswerer({ row, given, onAnswer }: AnswererProps): VNode {
  const [option] = Object.values(row.options);
  return (
    <div class="options">
      <Option
        say={option?.say ?? QUESTION.yes}
        more={option?.more}
        isGiven={given === "yes"}
        onClick={() => onAnswer("yes")}
      />
      <Option say={QUESTION.no} isGiven={given === "no"} onClick={() => onAnswer("no")} />
    </div>
  );
}

function SeveralAnswerer({ row, given, onAnswer, onTicks }: AnswererProps): VNode {
  const [seen, setSeen] = useState<ReadonlySet<string>>(
    () => new Set(Array.isArray(given) ? (given as readonly string[]) : []),
  );
  const toggle = (option: string): void => {
    const next = new Set(seen);
    if (!next.delete(option)) next.add(option);
    setSeen(next);
    onTicks?.(next.size);
  };
  const all = Object.keys(row.options);
  return (
    <div class="options">
      {Object.entries(row.options).map(([option, { say, more }]) => (
        <Option
          key={option}
          say={say}
          more={more}
          isGiven={seen.has(option)}
          isSeveral
          onClick={() => toggle(option)}
        />
      ))}
      <Finish onClick={() => onAnswer(all.filter((option) => seen.has(option)))}>
        {seen.size > 0 ? QUESTION.these(seen.size) : QUESTION.none}
      </Finish>
    </div>
  );
}
