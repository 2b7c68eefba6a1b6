// Asks for a count of each cylinder.
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { COUNTS } from "../text/en.ts";
import type { AnswererProps } from "./answerer.tsx";
import { Finish } from "./option.tsx";

export function CountsAnswerer({ engine, given, onAnswer }: AnswererProps): VNode {
  const before = (typeof given === "object" ? given : {}) as Readonly<Record<string, number>>;
  const [texts, setTexts] = useState<readonly string[]>(() =>
    engine.names.map((name) =>
      before[String(name)] === undefined ? "" : String(before[String(name)]),
    ),
  );
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
                const { value } = event.currentTarget;
                setTexts(texts.map((text, i) => (i === c ? value.replace(/\D/g, "") : text)));
              }}
            />
          </label>
        ))}
      </div>
      <p class="help">{COUNTS.empty}</p>
      <Finish onClick={() => onAnswer(counts())}>{COUNTS.use}</Finish>
    </div>
  );
}
