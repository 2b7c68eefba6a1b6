// Asks for trouble codes: tap the cylinders that they name, type the rest.
import { type Answer, type Engine, MISFIRE_CODES } from "@half-order/core";
import type { VNode } from "preact";
import { DialInput } from "../diagram/dial-input.tsx";
import { codeOf, cylinderOf, readTyped } from "../state/code.ts";
import { type Draft, draftOf, setDraft } from "../state/draft.ts";
import { CODES } from "../text/en.ts";
import type { AnswererProps } from "./answerer.tsx";
import { Finish, Option } from "./option.tsx";

export function CodesAnswerer({ engine, given, draft, onAnswer }: AnswererProps): VNode {
  // Read anew at each tap, which may come before the last one is drawn.
  const entered = (): Entered => enteredOf(draftOf(draft), given, engine);
  const { text, tapped, wrong } = entered();
  const codes = codesOf(entered());
  const toggle = (code: string | undefined): void => {
    if (code === undefined) return;
    const now = entered();
    if (!now.tapped.delete(code)) now.tapped.add(code);
    setDraft(draft, [now.text, ...now.tapped]);
  };
  const example = Math.min(1, engine.names.length - 1);
  return (
    <div class="options">
      <p class="help">
        {CODES.tap}. {CODES.tapHelp(codeOf(example) ?? "", String(engine.names[example]))}
      </p>
      <DialInput
        engine={engine}
        label={CODES.tap}
        pressed={new Set(engine.names.flatMap((_, c) => (tapped.has(codeOf(c) ?? "") ? [c] : [])))}
        isOff={(c) => codeOf(c) === undefined}
        onToggle={(c) => toggle(codeOf(c))}
        sayCylinder={(name) => {
          const c = engine.names.findIndex((known) => String(known) === name);
          return CODES.cylinder(name, codeOf(c) ?? "");
        }}
      />
      <Option
        say={CODES.several(MISFIRE_CODES.several)}
        isGiven={tapped.has(MISFIRE_CODES.several)}
        isSeveral
        onClick={() => toggle(MISFIRE_CODES.several)}
      />
      <label class="field">
        {CODES.more}
        <input
          type="text"
          value={text}
          autocapitalize="characters"
          autocomplete="off"
          spellcheck={false}
          aria-invalid={wrong.length > 0}
          aria-describedby="codes-help"
          onInput={(event) => setDraft(draft, [event.currentTarget.value, ...entered().tapped])}
        />
        <small id="codes-help" aria-live="polite">
          {wrong.length > 0 ? CODES.wrong(wrong.join(", ")) : CODES.moreHelp}
        </small>
      </label>
      <Finish onClick={() => entered().wrong.length === 0 && onAnswer(codesOf(entered()))}>
        {codes.length > 0 ? CODES.these(codes.length) : CODES.none}
      </Finish>
    </div>
  );
}

interface Entered {
  readonly text: string;
  readonly tapped: Set<string>;
  /** Of the text: codes, and words that are none. */
  readonly typed: readonly string[];
  readonly wrong: readonly string[];
}

/** What stands in the field and what is tapped: the draft, or the answer of before. */
function enteredOf(draft: Draft | undefined, given: Answer | undefined, engine: Engine): Entered {
  const before = Array.isArray(given) ? (given as readonly string[]) : [];
  const isTapped = (code: string): boolean =>
    code === MISFIRE_CODES.several || cylinderOf(code, engine) !== undefined;
  const [text = "", ...taps] = draft ?? [
    before.filter((code) => !isTapped(code)).join(" "),
    ...before.filter(isTapped),
  ];
  const { codes, wrong } = readTyped(text);
  return { text, tapped: new Set(taps), typed: codes, wrong };
}

function codesOf({ tapped, typed }: Entered): readonly string[] {
  return [...new Set([...[...tapped].sort(), ...typed])];
}
