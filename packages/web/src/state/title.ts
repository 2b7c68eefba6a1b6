// What is the page called in the list of tabs, in the history, and by who reads it aloud? As the heading of its
// screen, with the case where the screen is about one.
import { signal } from "@preact/signals";
import { sayCase } from "../text/answer.ts";
import { NAME } from "../text/en.ts";
import { openCase } from "./case.ts";
import { nextFrame } from "./frame.ts";

/** The words of the heading that stands. */
export const headline = signal("");

/** Names the page from now on; `isOfCase`: whether the screen that stands is about the open case. */
export function followTitle(isOfCase: () => boolean): void {
  headline.subscribe((said) => {
    const kept = isOfCase() ? openCase.peek() : undefined;
    const title = [said, kept && sayCase(kept.doc), NAME].filter(Boolean).join(" – ");
    // By then the address is that of this screen: the history keeps the title with it.
    void nextFrame().then(() => {
      document.title = title;
    });
  });
}
