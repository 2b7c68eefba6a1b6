// What else could be done: the hand may always pick something other than what is offered.
import type { VNode } from "preact";
import { useEffect } from "preact/hooks";
import { followPlan, plan } from "../state/advice.ts";
import { isDesk } from "../state/view.ts";
import { LAZY } from "../text/en.ts";
import { STEP } from "../text/en-mend.ts";
import { Heading } from "../ui/heading.tsx";
import { OtherSteps } from "../ui/step-others.tsx";
import "../style/mend.css";

function Checks(): VNode {
  useEffect(followPlan, []);
  return (
    <section class="column">
      <Heading of="checks" level={isDesk.value ? 2 : 1}>
        {STEP.others}
      </Heading>
      {!plan.value && <p class="help">{LAZY.coming}</p>}
      <OtherSteps depth={1} />
    </section>
  );
}

export { Checks as Screen };
