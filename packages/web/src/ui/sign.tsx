// The sign of a place beside its name. It is fetched and drawn once the list of names is seen; its room is kept.
import { signal } from "@preact/signals";
import type { ComponentType, VNode } from "preact";
import { useEffect } from "preact/hooks";
import type { GlyphProps } from "../diagram/glyph.tsx";
import { useTurn } from "./later.tsx";

const glyph = signal<ComponentType<GlyphProps> | undefined>(undefined);

/** True once a list may draw its signs. */
export function useSigns(): boolean {
  const isTurn = useTurn();
  useEffect(() => {
    if (isTurn && !glyph.peek()) void fetchGlyph();
  }, [isTurn]);
  return isTurn;
}

async function fetchGlyph(): Promise<void> {
  try {
    glyph.value = (await import("../diagram/glyph.tsx")).Glyph;
  } catch {
    // The name beside it says it too; the next list tries again.
  }
}

export function Sign({ isDrawn, ...of }: GlyphProps & { readonly isDrawn: boolean }): VNode {
  const Glyph = glyph.value;
  return isDrawn && Glyph ? <Glyph {...of} /> : <svg class="glyph" aria-hidden="true" />;
}
