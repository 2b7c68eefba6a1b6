// The picture of the case: dial and block, the same in words for who does not see them, and the key.
import type { Engine } from "@half-order/core";
import type { VNode } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { Block } from "../diagram/block.tsx";
import { Dial } from "../diagram/dial.tsx";
import { nameOf } from "../diagram/mark.tsx";
import { ranking } from "../state/thinking.ts";
import { drawn, look, pickAt, pointed } from "../state/view.ts";
import { list, PICTURE } from "../text/en.ts";
import { chanceText } from "./chance.tsx";

/** The firing dial of the open case. */
export function DialPicture(): VNode | null {
  const engine = drawn.value;
  const ref = usePointing();
  if (!engine) return null;
  return (
    <section class="picture" aria-label={PICTURE.dial} ref={ref}>
      <Dial engine={engine} look={look.value} />
      <p class="caption">{PICTURE.dial}</p>
      <InWords engine={engine} />
    </section>
  );
}

/** The same engine as a hand finds it, and how to read both. */
export function BlockPicture(): VNode | null {
  const engine = drawn.value;
  const ref = usePointing();
  if (!engine) return null;
  return (
    <section class="picture" aria-label={PICTURE.block} ref={ref}>
      <Block engine={engine} look={look.value} />
      <p class="caption">{PICTURE.block}</p>
      <Patterns />
      <Key />
    </section>
  );
}

/** Lets the hand point at marks: hovering shows a place, a tap picks what is likely there. */
function usePointing(): { readonly current: HTMLElement | null } {
  const ref = useRef<HTMLElement>(null);
  useEffect(() => {
    const place = (event: Event): string | undefined =>
      (event.target as Element).closest("[data-place]")?.getAttribute("data-place") ?? undefined;
    const point = (event: Event): void => {
      pointed.value = place(event);
    };
    const pick = (event: Event): void => {
      const at = place(event);
      if (at !== undefined) pickAt(at);
    };
    const leave = (): void => {
      pointed.value = undefined;
    };
    const node = ref.current;
    node?.addEventListener("click", pick);
    // A finger that scrolls past is no pointing hand.
    const hasHover = matchMedia("(hover: hover)").matches;
    if (hasHover) node?.addEventListener("pointerover", point);
    if (hasHover) node?.addEventListener("pointerleave", leave);
    return () => {
      node?.removeEventListener("click", pick);
      node?.removeEventListener("pointerover", point);
      node?.removeEventListener("pointerleave", leave);
    };
  }, []);
  return ref;
}

/** The same as the dial says, as a list to walk. */
function InWords({ engine }: { engine: Engine }): VNode {
  return (
    <ul class="vh">
      {engine.order.map((c) => (
        <li key={engine.names[c]}>{cylinderWords(engine, c)}</li>
      ))}
    </ul>
  );
}

/** What no single disc can show. */
function Patterns(): VNode | null {
  const now = ranking.value;
  if (!now) return null;
  return (
    <p class="caption">
      {PICTURE.atRandom(chanceText(now.atRandom))} {PICTURE.noMisfire(chanceText(now.noMisfire))}
    </p>
  );
}

function cylinderWords(engine: Engine, c: number): string {
  const companion = engine.companions[c];
  const group = engine.groups[engine.groupOf[c] ?? -1] ?? [];
  const others = group.filter((other) => other !== c).map((other) => nameOf(engine, other));
  const name = nameOf(engine, c);
  const misses = ranking.value?.cylinders.find(({ cylinder }) => cylinder === name)?.misses;
  return [
    PICTURE.cylinder(String(name), Math.round(engine.angles[c] ?? 0)),
    ...(companion === undefined ? [] : [PICTURE.companion(String(nameOf(engine, companion)))]),
    ...(others.length > 0 ? [PICTURE.sharesCoil(list(others))] : []),
    ...(misses === undefined ? [] : [PICTURE.misses(chanceText(misses))]),
  ].join(", ");
}

function Key(): VNode {
  return (
    <details class="key">
      <summary>{PICTURE.key}</summary>
      <dl>
        {PICTURE.keyLines.map(([term, words]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
