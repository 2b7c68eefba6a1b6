// The calm way from every screen to everything else: what belongs to the open case, and what stands beside it.
import type { VNode } from "preact";
import { openCase } from "../state/case.ts";
import { at } from "../state/route.ts";
import { sayCase } from "../text/answer.ts";
import { MORE } from "../text/en-answers.ts";
import { CaseLinks, OtherLinks, Way } from "../ui/case-links.tsx";
import { Heading } from "../ui/heading.tsx";
import { UnitPanel } from "../ui/unit-panel.tsx";

function More(): VNode {
  const kept = openCase.value;
  return (
    <section class="column">
      <Heading of="more">{MORE.title}</Heading>
      {kept && (
        <>
          <p class="help">{sayCase(kept.doc)}</p>
          <ul class="links">
            <Way to={at("ranking")} say={MORE.back} />
            <Way to={at("answers")} say={MORE.answers} />
          </ul>
          <CaseLinks />
        </>
      )}
      <OtherLinks />
      <UnitPanel />
    </section>
  );
}

export { More as Screen };
