// Keeps the open case on the device after each change, and says so when that fails.
import { effect, signal } from "@preact/signals";
import { openCase, resumeCase } from "./case.ts";
import { forgetCase, type KeptCase, keepCase, keptCases } from "./store.ts";

/** What went wrong with the device's store last. */
export const storeTrouble = signal<"failed" | "unreadable" | undefined>(undefined);

/** Cases that the device holds, the last changed first. */
export const shelf = signal<readonly KeptCase[]>([]);

/** Brings back the case that was open last. Never rejects: a page without a store still works. */
export async function resumeLast(): Promise<void> {
  await lookAtShelf();
  const [last] = shelf.value;
  if (last && !openCase.value) resumeCase(last);
}

export async function lookAtShelf(): Promise<void> {
  try {
    shelf.value = await keptCases();
  } catch {
    storeTrouble.value = "unreadable";
  }
}

export async function forget(id: string): Promise<void> {
  if (openCase.value?.id === id) openCase.value = undefined;
  try {
    await forgetCase(id);
  } catch {
    storeTrouble.value = "failed";
  }
  await lookAtShelf();
}

/** Writes the open case whenever it changes. */
export function keepOpenCase(): void {
  let last: KeptCase | undefined;
  effect(() => {
    const kept = openCase.value;
    // The first one came from the store, or is empty.
    if (!kept || kept === last || shelf.peek().includes(kept)) return;
    last = kept;
    keepCase(kept).then(
      () => {
        if (storeTrouble.peek() === "failed") storeTrouble.value = undefined;
      },
      () => {
        storeTrouble.value = "failed";
      },
    );
  });
}
