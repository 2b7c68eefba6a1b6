// Which strokes are missed when chance has its way? Some cycles in a row as they were driven, one column each.
import type { VNode } from "preact";
import { LESSON } from "../text/en-lesson.ts";
import type { ShakeProps } from "./shake.tsx";

const ROW = 16;
const LEFT = 34;
const WIDTH = 360;

/** Nothing where every cycle is as the one drawn above. */
export function Cycles({ engine, now }: ShakeProps): VNode | null {
  const { cycles, shake, struck } = now;
  if (struck.every((c) => shake.isSteady && shake.missing.includes(c))) return null;
  const step = (WIDTH - LEFT) / cycles.length;
  return (
    <>
      <p class="help">{LESSON.cyclesHelp(cycles.length)}</p>
      <svg
        class="lesson-cycles"
        viewBox={`0 0 ${WIDTH} ${ROW * engine.names.length}`}
        aria-hidden="true"
      >
        {engine.names.map((name, c) => (
          <g key={name} transform={`translate(${LEFT} ${ROW * (c + 0.5)})`}>
            <text x={-10}>{name}</text>
            {cycles.map((missed, i) => {
              const x = step * (i + 0.5);
              return missed.includes(c) ? (
                <path key={`${i} missed`} d={`M${x - 4}-4l8 8m0-8l-8 8`} />
              ) : (
                <circle key={`${i} fired`} cx={x} r={1.5} />
              );
            })}
          </g>
        ))}
      </svg>
    </>
  );
}
