// A screen that is loaded when it is first shown, and what stands there until it has come.
import { signal } from "@preact/signals";
import type { ComponentType, VNode } from "preact";
import { useEffect } from "preact/hooks";
import type { ScreenEntry } from "../screens.ts";
import { LAZY } from "../text/en.ts";

const loaded = signal<ReadonlyMap<ScreenEntry, ComponentType>>(new Map());
const failed = signal<ReadonlySet<ScreenEntry>>(new Set());

/** Fetches a screen; a failure is kept and shown where the screen would stand. */
export async function loadScreen(entry: ScreenEntry): Promise<void> {
  if (loaded.peek().has(entry)) return;
  failed.value = new Set([...failed.peek()].filter((other) => other !== entry));
  try {
    const { Screen: screen } = await entry.load();
    loaded.value = new Map(loaded.peek()).set(entry, screen);
  } catch {
    failed.value = new Set(failed.peek()).add(entry);
  }
}

interface LazyProps {
  readonly entry: ScreenEntry;
  /** Keeps its room; words that say so unless given. */
  readonly meanwhile?: VNode;
}

export function Lazy({ entry, meanwhile }: LazyProps): VNode {
  useEffect(() => {
    void loadScreen(entry);
  }, [entry]);
  const Screen = loaded.value.get(entry);
  if (Screen) return <Screen />;
  if (!failed.value.has(entry)) return meanwhile ?? <p class="help lazy">{LAZY.coming}</p>;
  return (
    <section class="caution lazy" role="alert">
      <p>{LAZY.failed}</p>
      <button type="button" class="quiet" onClick={() => location.reload()}>
        {LAZY.again}
      </button>
    </section>
  );
}
