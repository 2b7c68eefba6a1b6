// Where nothing can be offered: which answer on what is at hand shuts out what, and the way to change it.
import type { AtHand, Withheld } from "@half-order/core";
import type { VNode } from "preact";
import { plan } from "../state/advice.ts";
import { atHand } from "../state/case.ts";
import { at, path } from "../state/route.ts";
import { CHECK } from "../text/en-check.ts";
import { STEP } from "../text/en-mend.ts";
import { HAND } from "../text/en-shelf.ts";

/** Nothing where no answer of theirs is to blame. */
export function ShutOut(): VNode | null {
  const [hand, all] = [atHand.value, plan.value?.withheld ?? []];
  const reasons = (["skill", "tool", "place"] as const).flatMap((why) => {
    const said = hand && sayHand(hand, why);
    const of = all.filter((each) => each.why === why);
    return said && of.length > 0 ? [{ why, said, of }] : [];
  });
  if (reasons.length === 0) return null;
  return (
    <section class="aside">
      <p>{STEP.shutOut}</p>
      <ul class="group">
        {reasons.map(({ why, said, of }) => (
          <li key={why}>
            <strong>{STEP.youSaid[why](said)}</strong>
            <small>{of.map(({ name }) => placeless(name)).join(", ")}</small>
          </li>
        ))}
      </ul>
      <a class="option" href={at("hand", ...path.value)}>
        {STEP.changeHand}
      </a>
    </section>
  );
}

/** The answer that rules out for this reason, in its own words. */
function sayHand(hand: AtHand, why: Withheld["why"]): string | undefined {
  switch (why) {
    case "skill":
      return hand.skill === undefined ? undefined : CHECK.skills[hand.skill];
    case "tool":
      if (!hand.tools) return undefined;
      return hand.tools.map((tool) => CHECK.tools[tool] ?? tool).join(", ") || CHECK.tools["none"];
    case "place":
      return hand.where && HAND.places[hand.where];
    default:
      return undefined;
  }
}

/** The name of a step whatever its place. */
export function placeless(name: string): string {
  return name.replace(" of {at}", "").replace("{at}", "");
}
