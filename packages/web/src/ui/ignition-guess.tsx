// What to do when nobody can tell how the plugs get their spark: where to look, and what to take until then.
import type { IgnitionKind } from "@half-order/core";
import type { VNode } from "preact";
import { at, path } from "../state/route.ts";
import { IGNITION } from "../text/en-ignition.ts";

/** What most engines of today have. */
const GUESS: IgnitionKind = "coil-per-plug";

/** Stands below the kinds of ignition; the guess comes next in the address. */
function IgnitionGuess(): VNode {
  return (
    <section class="aside" role="status">
      <p>{IGNITION.help}</p>
      <a class="option is-dashed" href={at(...path.value, GUESS)}>
        {IGNITION.guess}
      </a>
    </section>
  );
}

export { IgnitionGuess as Screen };
