// When is what was drawn seen?

/** Settles once the next frame is on the screen, in a task of its own. */
export function nextFrame(): Promise<void> {
  return new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
}
