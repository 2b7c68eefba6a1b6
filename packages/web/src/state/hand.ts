// What does this person have at hand? Kept on the device, and copied into each case that is begun here.
import type { AtHand } from "@half-order/core";
import { signal } from "@preact/signals";
import { openCase, setAtHand } from "./case.ts";

const KEY = "half-order.at-hand";

/** Nothing is limited while nobody has said. */
export const hand = signal<AtHand | undefined>(kept());
/** False once the device has refused to keep it. */
export const isHandKept = signal(true);

/** For this person from now on, and for the case that is open. */
export function chooseHand(next: AtHand): void {
  hand.value = next;
  if (openCase.value) setAtHand(next);
  try {
    localStorage.setItem(KEY, JSON.stringify(next));
    isHandKept.value = true;
  } catch {
    // Said on the screen: it holds until the page is closed.
    isHandKept.value = false;
  }
}

function kept(): AtHand | undefined {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(KEY) ?? "null");
    return typeof value === "object" && value !== null ? (value as AtHand) : undefined;
  } catch {
    // A device that keeps nothing, or something else's text.
    return undefined;
  }
}
