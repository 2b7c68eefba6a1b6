// An address that leads to nothing: what was not found, and where to go from here.
import type { VNode } from "preact";
import { openCase, profile } from "../state/case.ts";
import { type Missing, missingOf } from "../state/missing.ts";
import { at, path } from "../state/route.ts";
import { isDesk } from "../state/view.ts";
import { START } from "../text/en.ts";
import { MORE } from "../text/en-answers.ts";
import { NOWHERE } from "../text/en-nowhere.ts";
import { Way } from "../ui/case-links.tsx";
import { Heading } from "../ui/heading.tsx";

/** What is missing beside picture and ranking of a case, not in its place. */
const BESIDE: readonly Missing[] = ["question", "check", "repair"];

function Nowhere(): VNode {
  const hasCase = profile.value !== undefined;
  const isOpen = openCase.value !== undefined;
  const missing = missingOf(path.value, { isOpen, hasCase });
  const [title, why] = NOWHERE.missing[missing];
  const isBeside = isDesk.value && BESIDE.includes(missing);
  return (
    <section class="column">
      <Heading of={`nowhere ${path.value.join("/")}`} level={isBeside ? 2 : 1}>
        {title}
      </Heading>
      <p class="help">
        {NOWHERE.asked} <b>{at(...path.value)}</b>
      </p>
      <p>{why}</p>
      <ul class="links">
        {hasCase && <Way to={at("ranking")} say={MORE.back} />}
        <Way to={at("cases")} say={START.cases} />
        <Way to={at()} say={NOWHERE.start} />
      </ul>
    </section>
  );
}

export { Nowhere as Screen };
