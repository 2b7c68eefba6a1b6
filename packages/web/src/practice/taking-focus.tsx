// A heading that takes the focus when what it stands over has come of something that was done here.
import type { ComponentChildren, VNode } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { hasActed } from "./practice.ts";

interface TakingProps {
  readonly level: 2 | 3;
  readonly children: ComponentChildren;
}

export function TakingFocus({ level, children }: TakingProps): VNode {
  const ref = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (hasActed.peek()) ref.current?.focus();
  }, []);
  const Tag = level === 2 ? "h2" : "h3";
  return (
    <Tag ref={ref} tabIndex={-1}>
      {children}
    </Tag>
  );
}
