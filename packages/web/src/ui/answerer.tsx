// Asks for the answer to a finding, by the finding's kind. What takes several taps is kept as a draft until
// it is confirmed.
import { type Answer, type Engine, type FindingRow, findingFor } from "@half-order/core";
import { signal } from "@preact/signals";
import type { VNode } from "preact";
import { useEffect } from "preact/hooks";
import { draftOf, setDraft } from "../state/draft.ts";
import { inUnits } from "../state/figure.ts";
import { LAZY, QUESTION } from "../text/en.ts";
import { CodesAnswerer } from "./codes-answerer.tsx";
import { Finish, Option } from "./option.tsx";

export interface AnswererProps {
  readonly row: FindingRow;
  readonly engine: Engine;
  /** The answer given before. */
  readonly given: Answer | undefined;
  /** By which ticks are kept until they are confirmed, see `draftKey`. */
  readonly draft: string;
  readonly onAnswer: (answer: Answer) => void;
}

export function Answerer({ onAnswer, ...rest }: AnswererProps): VNode {
  const props: AnswererProps = {
    ...rest,
    row: findingFor(rest.engine.profile, rest.row),
    onAnswer(answer) {
      setDraft(rest.draft, undefined);
      onAnswer(answer);
    },
  };
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
      return <Fetched {...props} />;
  }
}

function ChoiceAnswerer(props: AnswererProps): VNode {
  const { row, given, onAnswer } = props;
  if (row.id === DRAWN) return <Fetched {...props} />;
  return (
    <div class="options">
      {Object.entries(row.options).map(([option, { say, more }]) => (
        <Option
          key={option}
          say={inUnits.value(say)}
          more={more && inUnits.value(more)}
          isGiven={given === option}
          onClick={() => onAnswer(option)}
        />
      ))}
      {row.reading && <Fetched {...props} />}
    </div>
  );
}

/** Its options are drawings. */
const DRAWN = "plug.look";

/** Answerers that take a figure, or show drawings, are fetched when one is asked for. */
const fetched = signal<typeof import("./measured-answerer.tsx") | "failed" | undefined>(undefined);

function Fetched(props: AnswererProps): VNode {
  useEffect(() => {
    import("./measured-answerer.tsx").then(
      (come) => {
        fetched.value = come;
      },
      () => {
        fetched.value = "failed";
      },
    );
  }, []);
  const come = fetched.value;
  if (!come) return <p class="help">{LAZY.coming}</p>;
  if (come === "failed") return <p role="alert">{LAZY.failed}</p>;
  return <come.FetchedAnswerer {...props} />;
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

function SeveralAnswerer({ row, given, draft, onAnswer }: AnswererProps): VNode {
  const all = Object.keys(row.options);
  const before = Array.isArray(given) ? (given as readonly string[]) : [];
  const seen = new Set(all.filter((option) => (draftOf(draft) ?? before).includes(option)));
  const toggle = (option: string): void => {
    if (!seen.delete(option)) seen.add(option);
    setDraft(draft, [...seen]);
  };
  return (
    <div class="options">
      {Object.entries(row.options).map(([option, { say, more }]) => (
        <Option
          key={option}
          say={inUnits.value(say)}
          more={more && inUnits.value(more)}
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
