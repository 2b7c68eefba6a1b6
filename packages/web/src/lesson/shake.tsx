// In what rhythm does it shake? The speed of the crankshaft over one cycle, drawn from left to right as the
// dial goes round, with the hand of the dial on it; the same in words and by orders.
import type { Engine } from "@half-order/core";
import type { WatchedRegime } from "@half-order/core/physics";
import type { VNode } from "preact";
import { LESSON } from "../text/en-lesson.ts";
import { Cycles } from "./cycles.tsx";
import { Hearing } from "./hearing.tsx";
import { angleDeg } from "./lesson.ts";
import { TRACE, tracePlan } from "./trace-geometry.ts";
import { Turning } from "./turning.tsx";
import { hundredth, sayBeat, sayDrawn } from "./words.ts";

export interface ShakeProps {
  readonly engine: Engine;
  readonly now: WatchedRegime;
}

export function Shake({ engine, now }: ShakeProps): VNode {
  return (
    <section class="lesson-part">
      <h2>{LESSON.shake}</h2>
      <p class="help">
        {LESSON.traceHelp} {LESSON.inRegime(LESSON.regimes[now.regime])}
      </p>
      <Trace engine={engine} now={now} />
      <Turning engine={engine} now={now} />
      <Cycles engine={engine} now={now} />
      <Hearing engine={engine} now={now} />
      <InWords engine={engine} now={now} />
      <Orders now={now} />
    </section>
  );
}

function Trace({ engine, now }: ShakeProps): VNode {
  const { missing, rhythm } = now.shake;
  const plan = tracePlan(rhythm);
  const foot = TRACE.height - TRACE.bottom;
  return (
    <svg class="lesson-trace" viewBox={`0 0 ${TRACE.width} ${TRACE.height}`} aria-hidden="true">
      {plan.ticks.map((speed) => (
        <g key={speed} class="level">
          <path d={`M${TRACE.left} ${plan.y(speed)}H${TRACE.width - TRACE.right}`} />
          <text class="at-side" x={TRACE.left - 4} y={plan.y(speed)}>
            {Math.round(speed)}
          </text>
        </g>
      ))}
      {[0, 180, 360, 540, 720].map((angle) => (
        <text key={angle} class="below" x={Math.min(plan.x(angle), TRACE.width - 14)} y={foot + 14}>
          {angle}°
        </text>
      ))}
      {engine.order.map((c, i) => {
        const at = plan.x(engine.angles[c] ?? 0);
        const isMissing = missing.includes(c);
        return (
          <g key={engine.names[c]} class={isMissing ? "firing is-missing" : "firing"}>
            <path d={`M${at} ${TRACE.top - 4}V${foot}`} />
            {/* Names of many cylinders stand in two rows. */}
            <text x={at} y={engine.order.length > 8 && i % 2 === 1 ? 7 : 18}>
              {isMissing ? `${engine.names[c]}×` : engine.names[c]}
            </text>
          </g>
        );
      })}
      <path class="sound" d={plan.sound} />
      <path class="broken" d={plan.broken} />
      <path class="hand" d={`M${plan.x(angleDeg.value)} ${TRACE.top - 8}V${foot}`} />
    </svg>
  );
}

/** What is said with one decimal. */
const LEAST_RPM = 0.05;

function InWords({ engine, now }: ShakeProps): VNode {
  const { shake, blackout } = now;
  const { missing, rhythm } = shake;
  const beat = sayBeat(shake);
  const hz = rhythm.orders.find(({ order }) => order === rhythm.shakes)?.hz;
  // Of many cylinders the one before still pushes, and a gap may only slow the gain.
  const lost = rhythm.strokes.filter(
    ({ cylinder, gainRpm }) => missing.includes(cylinder) && gainRpm < -LEAST_RPM,
  );
  return (
    <div class="lesson-words" role="status">
      <p>
        {sayDrawn(engine, now) ?? LESSON.trace.none} {beat}{" "}
        {beat !== undefined && hz !== undefined && LESSON.hertz(hz, rhythm.meanRpm)}
      </p>
      {lost.length > 0 && (
        <ul class="lesson-says">
          {lost.map(({ cylinder, gainRpm }) => (
            <li key={cylinder}>{LESSON.trace.lost(String(engine.names[cylinder]), -gainRpm)}</li>
          ))}
        </ul>
      )}
      {hundredth(blackout) > 0 && <p>{LESSON.trace.blackout(hundredth(blackout))}</p>}
    </div>
  );
}

function Orders({ now }: Pick<ShakeProps, "now">): VNode {
  const [often, second, sound, broken] = LESSON.orderHead;
  return (
    <details>
      <summary>{LESSON.orders}</summary>
      <p class="help">{LESSON.ordersHelp}</p>
      <table class="lesson-table">
        <thead>
          <tr>
            <th scope="col">{often}</th>
            <th scope="col">{second}</th>
            <th scope="col">{sound}</th>
            <th scope="col">{broken}</th>
          </tr>
        </thead>
        <tbody>
          {now.shake.rhythm.orders.map(({ order, hz, soundRpm, rpm }) => (
            <tr key={order}>
              <th scope="row">{LESSON.times(order)}</th>
              <td>{hz.toFixed(1)}</td>
              <td>{soundRpm.toFixed(1)}</td>
              <td class={order === now.shake.rhythm.shakes ? "is-dead" : undefined}>
                {rpm.toFixed(1)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
