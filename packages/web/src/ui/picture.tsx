// The picture of the case: its dial, and the same in words for who does not see it.
import type { Engine } from "@half-order/core";
import type { VNode } from "preact";
import { Dial } from "../diagram/dial.tsx";
import { nameOf } from "../diagram/mark.tsx";
import { engines } from "../state/case.ts";
import { drawnOrder, orderOf } from "../state/order.ts";
import { drawn, drawnRanking, look } from "../state/view.ts";
import { sayOrder } from "../text/answer.ts";
import { list, PICTURE } from "../text/en.ts";
import { DIAL } from "../text/en-picture.ts";
import { AtMark } from "./at-mark.tsx";
import { chanceText } from "./chance.tsx";
import { Invented } from "./invented.tsx";
import { usePointing } from "./pointing.ts";

/** The firing dial of the open case, and what sits at a mark of it that was tapped. */
function DialPicture(): VNode | null {
  const engine = drawn.value;
  const ref = usePointing();
  if (!engine) return null;
  return (
    <>
      <section class="picture" aria-label={PICTURE.dial} ref={ref}>
        <Dial engine={engine} look={look.value} />
        <p class="caption">{PICTURE.dial}</p>
        {engines.value.length > 1 && <Vague engine={engine} />}
        <InWords engine={engine} />
        <Invented of={engine.profile} isCaption />
      </section>
      <AtMark />
    </>
  );
}

/** What is drawn is one of several orders that may be. */
function Vague({ engine }: { engine: Engine }): VNode {
  const order = drawnOrder(drawnRanking.value, engine);
  const chance = order && chanceText(order.probability);
  return (
    <p class="caption">
      <strong>{DIAL.vague}</strong> {DIAL.drawnAs(sayOrder(orderOf(engine)), chance)}
    </p>
  );
}

/** The same as the dial says, as a list to walk. */
function InWords({ engine }: { engine: Engine }): VNode {
  return (
    <ul class="vh">
      {engine.ignition === "distributor" && <li>{DIAL.throughDistributor}</li>}
      {engine.order.map((c) => (
        <li key={engine.names[c]}>{cylinderWords(engine, c)}</li>
      ))}
    </ul>
  );
}

function cylinderWords(engine: Engine, c: number): string {
  const companion = engine.companions[c];
  const isShared = engine.ignition !== "distributor";
  const group = engine.groups[engine.groupOf[c] ?? -1] ?? [];
  const others = group.filter((other) => other !== c).map((other) => nameOf(engine, other));
  const name = nameOf(engine, c);
  const misses = drawnRanking.value?.cylinders.find(({ cylinder }) => cylinder === name)?.misses;
  return [
    DIAL.cylinder(String(name), Math.round(engine.angles[c] ?? 0)),
    ...(companion === undefined ? [] : [DIAL.companion(String(nameOf(engine, companion)))]),
    ...(isShared && others.length > 0 ? [DIAL.sharesCoil(list(others))] : []),
    ...(misses === undefined ? [] : [DIAL.misses(chanceText(misses))]),
  ].join(", ");
}

export { DialPicture as Screen };
