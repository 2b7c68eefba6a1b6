// How does the hand point at marks of a drawing?
import { useEffect, useRef } from "preact/hooks";
import { tapAt } from "../state/tap.ts";
import { pointed } from "../state/view.ts";

/** Lets the hand point at marks: hovering shows a place, a tap picks what is likely there. */
export function usePointing(): { readonly current: HTMLElement | null } {
  const ref = useRef<HTMLElement>(null);
  useEffect(() => {
    const place = (event: Event): string | undefined =>
      (event.target as Element).closest("[data-place]")?.getAttribute("data-place") ?? undefined;
    const point = (event: Event): void => {
      pointed.value = place(event);
    };
    const pick = ({ clientX, clientY }: MouseEvent): void => {
      const under = document.elementsFromPoint(clientX, clientY).flatMap((node) => {
        const at = node.closest("[data-place]")?.getAttribute("data-place");
        return at ? [at] : [];
      });
      tapAt([...new Set(under)]);
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
