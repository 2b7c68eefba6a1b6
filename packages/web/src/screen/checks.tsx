// Other checks than the one that is offered: the hand may always pick another.
import type { VNode } from "preact";
import { isDesk } from "../state/view.ts";
import { CHECK } from "../text/en.ts";
import { OtherChecks } from "../ui/check-panel.tsx";
import { Heading } from "../ui/heading.tsx";

export function Checks(): VNode {
  return (
    <section class="column">
      <Heading of="checks" level={isDesk.value ? 2 : 1}>
        {CHECK.others}
      </Heading>
      <OtherChecks />
    </section>
  );
}
