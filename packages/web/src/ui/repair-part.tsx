// A part of a long screen under its own heading, and the two kinds of lists that such screens are made of.
import type { ComponentChildren, VNode } from "preact";
import { inUnits } from "../state/figure.ts";
import { isDesk } from "../state/view.ts";
import { Under } from "./heading.tsx";

interface PartProps {
  readonly title: string;
  /** `caution`: marked as such. */
  readonly kind?: "caution";
  /** How many headings it stands under on its screen; the title of the screen alone unless given. */
  readonly depth?: 1 | 2;
  readonly children: ComponentChildren;
}

/** On a desk the screen's own title is a second heading already. */
export function Part({ title, kind, depth = 1, children }: PartProps): VNode {
  return (
    <section class={kind ?? "aside"}>
      <Under level={depth + (isDesk.value ? 1 : 0)} class="part">
        {title}
      </Under>
      {children}
    </section>
  );
}

export function Ordered({ of }: { of: readonly string[] }): VNode {
  return (
    <ol class="steps">
      {of.map((say) => (
        <li key={say}>{inUnits.value(say)}</li>
      ))}
    </ol>
  );
}

export function Plain({ of }: { of: readonly string[] }): VNode {
  return (
    <ul class="group">
      {of.map((say) => (
        <li key={say}>{inUnits.value(say)}</li>
      ))}
    </ul>
  );
}
