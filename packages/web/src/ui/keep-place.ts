// The row of a list goes with the button that was pressed in it: where does the focus go on?

/** Takes a row away by `act`; the focus goes to what then stands in its place, to the last row, or to the heading of the screen. */
export function keepPlace(pressed: HTMLElement, act: () => void): void {
  const row = pressed.closest("li");
  const list = row?.parentElement;
  const place = row && list ? [...list.children].indexOf(row) : -1;
  new MutationObserver((_, observer) => {
    if (pressed.isConnected) return;
    observer.disconnect();
    const next = list?.isConnected ? (list.children[place] ?? list.lastElementChild) : undefined;
    const acts = next?.querySelectorAll<HTMLElement>(":scope > .quiet, .acts > .quiet") ?? [];
    ([...acts].at(-1) ?? document.querySelector<HTMLElement>("main [tabindex='-1']"))?.focus();
  }).observe(document.body, { childList: true, subtree: true });
  act();
}
