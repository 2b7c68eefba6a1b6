// The crank angle that is looked at: set by hand, stepped from firing to firing, or turned slowly on request.
import type { VNode } from "preact";
import { useEffect, useState } from "preact/hooks";
import { LESSON } from "../text/en-lesson.ts";
import { angleDeg } from "./lesson.ts";
import type { ShakeProps } from "./shake.tsx";
import { Slider } from "./slider.tsx";
import { speedAt } from "./trace-geometry.ts";

const CYCLE_DEG = 720;
/** One cycle takes eight seconds. */
const DEG_PER_MS = CYCLE_DEG / 8000;

export function Turning({ engine, now }: ShakeProps): VNode {
  const [isTurning, setTurning] = useState(false);
  useTurn(isTurning);
  const { missing, rhythm } = now.shake;
  const angle = angleDeg.value;
  const byAngle = [...engine.order].sort(
    (a, b) => (engine.angles[a] ?? 0) - (engine.angles[b] ?? 0),
  );
  const last = byAngle.findLast((c) => (engine.angles[c] ?? 0) <= angle) ?? byAngle.at(-1) ?? 0;
  const name = String(engine.names[last]);
  const who = missing.includes(last) ? LESSON.shouldFire(name) : LESSON.fires(name);
  const says = LESSON.atAngle(Math.round(angle), speedAt(rhythm, angle), who);
  const step = (): void => {
    const next = byAngle.map((c) => engine.angles[c] ?? 0).find((each) => each > angle);
    angleDeg.value = next ?? engine.angles[byAngle[0] ?? 0] ?? 0;
  };
  return (
    <div class="lesson-turning">
      <Slider
        label={LESSON.angle}
        range={[0, CYCLE_DEG - rhythm.stepDeg]}
        step={rhythm.stepDeg}
        value={angle}
        says={says}
        onMove={(to) => {
          setTurning(false);
          angleDeg.value = to;
        }}
      />
      <p class="acts">
        <button type="button" class="quiet" onClick={step}>
          {LESSON.nextFiring}
        </button>
        {!isMotionUnwanted() && (
          <button type="button" class="quiet" onClick={() => setTurning(!isTurning)}>
            {isTurning ? LESSON.stopTurn : LESSON.turn}
          </button>
        )}
      </p>
    </div>
  );
}

function isMotionUnwanted(): boolean {
  return matchMedia("(prefers-reduced-motion: reduce)").matches;
}

function useTurn(isTurning: boolean): void {
  useEffect(() => {
    if (!isTurning) return;
    let before: number | undefined;
    let frame = requestAnimationFrame(function turn(time) {
      angleDeg.value = (angleDeg.peek() + DEG_PER_MS * (time - (before ?? time))) % CYCLE_DEG;
      before = time;
      frame = requestAnimationFrame(turn);
    });
    return () => cancelAnimationFrame(frame);
  }, [isTurning]);
}
