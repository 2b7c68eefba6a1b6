// Asks for trouble codes: tap the cylinders that they name, type the rest.
import { MISFIRE_CODES } from "@half-order/core";
import type { VNode } from "preact";
import { DialInput } from "../diagram/dial-input.tsx";
import { codeOf, cylinderOf, readTyped } from "../state/code.ts";
import { draftOf, setDraft } from "../state/draft.ts";
import { CODES } from "../text/en.ts";
import type { AnswererProps } from "./answerer.tsx";
import { Finish, Option } from "./option.tsx";

export function CodesAnswerer({ engine, given, draft, onAnswer }: AnswererProps): VNode {
  const before = Array.isArray(given) ? (given as readonly string[]) : [];
  const isTapped = (code: string): boolean =>
    code === MISFIRE_CODES.several || cylinderOf(code, engine) !== undefined;
  const [text = "", ...taps] = draftOf(draft) ?? [
    before.filter((code) => !isTapped(code)).join(" "),
    ...before.filter(isTapped),
  ];
  const tapped = new Set(taps);
  const typed = readTyped(text);
  const codes = [...new Set([...[...tapped].sort(), ...typed.codes])];
  const toggle = (code: string | undefined): void => {
    if (code === undefined) return;
    if (!tapped.delete(code)) tapped.add(code);
    setDraft(draft, [text, ...tapped]);
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
          aria-invalid={typed.wrong.length > 0}
          aria-describedby="codes-help"
          onInput={(event) => setDraft(draft, [event.currentTarget.value, ...tapped])}
        />
        <small id="codes-help" aria-live="polite">
          {typed.wrong.length > 0 ? CODES.wrong(typed.wrong.join(", ")) : CODES.moreHelp}
        </small>
      </label>
      <Finish onClick={() => typed.wrong.length === 0 && onAnswer(codes)}>
        {codes.length > 0 ? CODES.these(codes.length) : CODES.none}
      </Finish>
    </div>
  );
}
