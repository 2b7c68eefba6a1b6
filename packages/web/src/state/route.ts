// Which screen: the part of the address after `#`, so that the device's own back button works.
import { computed, signal } from "@preact/signals";
import { nextFrame } from "./frame.ts";

/** The parts of the address between slashes: `["question", "codes"]`. */
export const path = signal<readonly string[]>(read());

export const screen = computed(() => path.value[0] ?? "");
/** What the screen is about, e.g. the id of a finding. */
export const subject = computed(() => path.value[1]);

/** The address of a screen, for links. */
export function at(...parts: readonly string[]): string {
  return `#/${parts.map(encodeURIComponent).join("/")}`;
}

/** Counts arrivals at the screen that is already shown: its heading takes the focus once more. */
export const arrivals = signal(0);

export function goTo(...parts: readonly string[]): void {
  if (isShown(parts)) {
    arrivals.value += 1;
    scrollTo(0, 0);
    return;
  }
  show(parts);
  // The browser takes its time over a new address, so the screen does not wait for it. It tells nothing of an
  // address that it is handed in this way: a late word of it would undo what was tapped meanwhile.
  const before = location.hash;
  void nextFrame().then(() => {
    const address = at(...parts);
    const isNew = location.hash === before && before !== address;
    if (isNew && isShown(parts)) history.pushState(null, "", address);
  });
}

/** The address where it has gone on by itself, the screen staying as it is. */
let noted: string | undefined;

/** Writes how far the screen that is shown has got: as a new place to come back to, or over the last one. */
export function noteAddress(parts: readonly string[], isNew: boolean): void {
  noted = parts.join("/");
  history[isNew ? "pushState" : "replaceState"](null, "", at(...parts));
}

let onArrival: () => void = () => undefined;

/** Follows the address from now on; `onChange` is called after each change. */
export function followAddress(onChange: () => void): void {
  onArrival = onChange;
  // It may have changed while the scripts were on their way.
  path.value = read();
  addEventListener("hashchange", arrive);
}

function arrive(): void {
  const now = read();
  if (!isShown(now)) show(now);
}

function isShown(parts: readonly string[]): boolean {
  return parts.join("/") === (noted ?? path.peek().join("/"));
}

function show(parts: readonly string[]): void {
  noted = undefined;
  path.value = parts;
  onArrival();
}

function read(): readonly string[] {
  return location.hash
    .replace(/^#?\/?/, "")
    .split("/")
    .filter(Boolean)
    .map(decode);
}

/** A hand-written address may hold a stray `%`. */
function decode(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
