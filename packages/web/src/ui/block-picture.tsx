// The engine of the case as a hand finds it, what no single mark can show, and how to read the drawings. It
// stands below the ranking and is fetched after it.
import type { VNode } from "preact";
import { Block } from "../diagram/block.tsx";
import { drawn, drawnRanking, look } from "../state/view.ts";
import { BLOCK } from "../text/en-picture.ts";
import { chanceText } from "./chance.tsx";
import { usePointing } from "./pointing.ts";

function BlockPicture(): VNode | null {
  const engine = drawn.value;
  const ref = usePointing();
  if (!engine) return null;
  return (
    <section class="picture" aria-label={BLOCK.title} ref={ref}>
      <Block engine={engine} look={look.value} />
      <p class="caption">{BLOCK.title}</p>
      <Patterns />
      <Key />
    </section>
  );
}

/** What no single disc can show. */
function Patterns(): VNode | null {
  const now = drawnRanking.value;
  if (!now) return null;
  return (
    <p class="caption">
      {BLOCK.atRandom(chanceText(now.atRandom))} {BLOCK.noMisfire(chanceText(now.noMisfire))}
    </p>
  );
}

function Key(): VNode {
  return (
    <details class="key">
      <summary>{BLOCK.key}</summary>
      <dl>
        {BLOCK.keyLines.map(([term, words]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}

export { BlockPicture as Screen };
