// The dial of the lesson: who misses, what is broken, and a hand at the crank angle that is looked at. Its
// marks can be tapped; the list of places says the same.
import type { VNode } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { Dial } from "../diagram/dial.tsx";
import { DIAL_HALF, pointAt, RADIUS } from "../diagram/geometry.ts";
import type { Look } from "../diagram/mark.tsx";
import { LESSON } from "../text/en-lesson.ts";
import { angleDeg, choice, isWorking, lessonEngine, regime, takeSpot } from "./lesson.ts";
import { sayMisses } from "./words.ts";

export function LessonDial(): VNode | null {
  const engine = lessonEngine.value;
  const ref = useTaps();
  if (!engine) return null;
  // While another engine is being broken the old results would lie.
  const now = isWorking.value ? undefined : regime.value;
  const look: Look = {
    places: new Map(choice.value ? [[choice.value.place.id, 1]] : []),
    misses: now?.share ?? [],
    active: new Set(choice.value ? [choice.value.place.id] : []),
  };
  return (
    <figure class="lesson-dial" ref={ref}>
      <div class="lesson-hand-on">
        <Dial engine={engine} look={look} />
        <Hand />
      </div>
      <figcaption class="caption">
        {now && `${sayMisses(engine, now)} `}
        {LESSON.tapHelp}
      </figcaption>
    </figure>
  );
}

/** Lies over the dial in the same units, and lets every tap through. */
function Hand(): VNode {
  const tip = pointAt(angleDeg.value, RADIUS.scale);
  const box = `${-DIAL_HALF} ${-DIAL_HALF} ${2 * DIAL_HALF} ${2 * DIAL_HALF}`;
  return (
    <svg class="lesson-hand" viewBox={box} aria-hidden="true">
      <path d={`M0 0L${tip.x} ${tip.y}`} />
      <circle r={5} />
    </svg>
  );
}

function useTaps(): { readonly current: HTMLElement | null } {
  const ref = useRef<HTMLElement>(null);
  useEffect(() => {
    const take = (event: Event): void => {
      const mark = (event.target as Element).closest("[data-place]")?.getAttribute("data-place");
      if (mark) takeSpot(mark);
    };
    const node = ref.current;
    node?.addEventListener("click", take);
    return () => node?.removeEventListener("click", take);
  }, []);
  return ref;
}
