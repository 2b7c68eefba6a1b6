// What a code reader and the dashboard show of the broken engine, and how far makers differ in it.
import type { Engine } from "@half-order/core";
import type { Watched } from "@half-order/core/physics";
import type { VNode } from "preact";
import { LESSON } from "../text/en-lesson.ts";
import { sayCode, sayUnnamed } from "./words.ts";

interface CodesProps {
  readonly engine: Engine;
  readonly seen: Watched;
}

export function Codes({ engine, seen }: CodesProps): VNode {
  const of = (share: number): string => LESSON.units(Math.round(share * seen.units), seen.units);
  return (
    <section class="lesson-part">
      <h2>{LESSON.codes}</h2>
      <p class="help">{LESSON.codesHelp(seen.units)}</p>
      {seen.codes.length === 0 && <p>{LESSON.noCodes}</p>}
      <dl class="lesson-list">
        {seen.codes.map(({ what, share }) => (
          <div key={what}>
            <dt>
              <b>{what}</b>
              <small>{sayCode(engine, what)}</small>
            </dt>
            <dd>{of(share)}</dd>
          </div>
        ))}
        {seen.lamps.map(({ what, share }) => (
          <div key={what}>
            <dt>
              {LESSON.lamp} <b>{LESSON.lamps[what]}</b>
            </dt>
            <dd>{of(share)}</dd>
          </div>
        ))}
      </dl>
      {sayUnnamed(engine, seen).map((line) => (
        <p key={line}>{line}</p>
      ))}
      <h3 class="minor">{LESSON.counters}</h3>
      <ul class="lesson-counters">
        {seen.counts.map((count, c) => (
          <li key={engine.names[c]}>
            <span>{LESSON.counter(String(engine.names[c]))}</span> <b>{count}</b>
          </li>
        ))}
      </ul>
    </section>
  );
}
