// The heading of a screen. It takes the focus when the screen comes up, so that a screen reader reads
// on from it and the keyboard starts there; not on the first load, when nobody has asked for anything.
import type { ComponentChildren, VNode } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { arrivals } from "../state/route.ts";
import { headline } from "../state/title.ts";

let isFirst = true;

interface HeadingProps {
  readonly children: ComponentChildren;
  /** Changes when the screen is about something else. */
  readonly of: string;
  /** What the page is called where that is not its heading. */
  readonly title?: string;
  readonly level?: 1 | 2;
  readonly class?: string;
}

export function Heading({
  children,
  of,
  title,
  level = 1,
  class: className = "title",
}: HeadingProps): VNode {
  const ref = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (isFirst) isFirst = false;
    else ref.current?.focus();
  }, [of, arrivals.value]);
  // Its words may change while it stands.
  useEffect(() => {
    headline.value = title ?? ref.current?.textContent ?? "";
  });
  const Tag = level === 1 ? "h1" : "h2";
  return (
    <Tag ref={ref} class={className} tabIndex={-1}>
      {children}
    </Tag>
  );
}

interface UnderProps {
  readonly children: ComponentChildren;
  /** The level of the heading that it stands under. */
  readonly level: number;
  readonly class?: string;
}

/** A heading one level below another; no level is left out, whatever screen it is on. */
export function Under({ children, level, class: className }: UnderProps): VNode {
  const Tag = (["h2", "h3", "h4"] as const)[level - 1] ?? "h4";
  return <Tag class={className}>{children}</Tag>;
}
