// When is what can wait drawn? After the ranking that is on its way is seen, one piece a frame, so that no
// finger waits for all of them.
import { effect } from "@preact/signals";
import type { VNode } from "preact";
import { useEffect, useState } from "preact/hooks";
import { nextFrame } from "../state/frame.ts";
import { isWeighing } from "../state/thinking.ts";

/** Nobody waits longer than this for the rest of a screen, however long the weighing takes. */
const PATIENCE_MS = 600;

let turn: Promise<void> = Promise.resolve();

/** True from when it is this piece's turn. */
export function useTurn(): boolean {
  const [isTurn, setTurn] = useState(false);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const queue = (): void => {
      stop();
      turn = turn.then(nextFrame).then(() => setTurn(true));
    };
    const stop = effect(() => {
      clearTimeout(timer);
      timer = setTimeout(queue, isWeighing.value ? PATIENCE_MS : 0);
    });
    return () => {
      clearTimeout(timer);
      stop();
    };
  }, []);
  return isTurn;
}

interface LaterProps {
  readonly children: VNode;
  /** Keeps its room. */
  readonly meanwhile?: VNode;
}

export function Later({ children, meanwhile }: LaterProps): VNode | null {
  return useTurn() ? children : (meanwhile ?? null);
}
