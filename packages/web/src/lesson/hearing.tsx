// The rhythm to be heard, on request alone.
import type { VNode } from "preact";
import { useEffect, useState } from "preact/hooks";
import { LESSON } from "../text/en-lesson.ts";
import { playBeats } from "./beats.ts";
import type { ShakeProps } from "./shake.tsx";

export function Hearing({ engine, now }: ShakeProps): VNode | null {
  const [stop, setStop] = useState<(() => void) | undefined>(undefined);
  // Another engine, another way of driving: the old sound is over.
  useEffect(() => stop, [stop, now]);
  if (typeof AudioContext === "undefined") return null;
  const toggle = (): void => {
    if (stop) stop();
    else {
      const end = playBeats(engine, now, () => setStop(undefined));
      setStop(() => end);
    }
  };
  return (
    <>
      <p>
        <button type="button" class="quiet" onClick={toggle}>
          {stop ? LESSON.stopHear : LESSON.hear}
        </button>
      </p>
      <p class="fine">{LESSON.hearHelp}</p>
    </>
  );
}
