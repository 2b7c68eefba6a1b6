// How often each cylinder misses in each way of driving: a table whose rows can be chosen.
import type { Engine } from "@half-order/core";
import type { Watched } from "@half-order/core/physics";
import type { VNode } from "preact";
import { LESSON } from "../text/en-lesson.ts";
import { chosenRegime, regime } from "./lesson.ts";
import { hundredth, sayMisses, saySparks } from "./words.ts";

interface RegimesProps {
  readonly engine: Engine;
  readonly seen: Watched;
}

export function Regimes({ engine, seen }: RegimesProps): VNode {
  const now = regime.value;
  return (
    <section class="lesson-part">
      <h2>{LESSON.misses}</h2>
      <p class="help">{LESSON.missesHelp}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: twelve cylinders are wider than a phone, and keys scroll them. */}
      <section class="lesson-scroll" tabIndex={0} aria-label={LESSON.misses}>
        <table class="lesson-table">
          <thead>
            <tr>
              <th scope="col">{LESSON.driving}</th>
              {engine.names.map((name) => (
                <th key={name} scope="col">
                  <span class="vh">{LESSON.counter("")}</span>
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {seen.regimes.map((row) => (
              <tr key={row.regime} class={row === now ? "is-here" : undefined}>
                <th scope="row">
                  <button
                    type="button"
                    aria-pressed={row === now}
                    onClick={() => {
                      chosenRegime.value = row.regime;
                    }}
                  >
                    {LESSON.regimes[row.regime]}
                    {row.regime === seen.worst && <small>{LESSON.mostLost}</small>}
                  </button>
                </th>
                {row.share.map((share, c) => (
                  <td key={engine.names[c]} class={share > 0.5 ? "is-dead" : undefined}>
                    {hundredth(share)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {now && (
        <div role="status">
          <p>{sayMisses(engine, now)}</p>
          {saySparks(engine, now).map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      )}
    </section>
  );
}
