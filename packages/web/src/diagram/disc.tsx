// A cylinder on a drawing: filled as high as it is likely to miss, its rim as thick as its own parts
// are suspect.
import type { Engine } from "@half-order/core";
import type { VNode } from "preact";
import { filled, type Point } from "./geometry.ts";
import { type Look, Mark, nameOf, placeId } from "./mark.tsx";

interface DiscProps {
  readonly engine: Engine;
  readonly cylinder: number;
  readonly at: Point;
  readonly radius: number;
  readonly look: Look;
}

const RIM = { thin: 1.5, thick: 6 };

export function Disc({ engine, cylinder, at, radius, look }: DiscProps): VNode {
  const name = String(nameOf(engine, cylinder));
  return (
    <Mark
      id={placeId(engine, "cylinder", [cylinder])}
      look={look}
      width={RIM}
      draw={(className, width) => {
        const rim = (
          <circle class={className} cx={at.x} cy={at.y} r={radius} stroke-width={width} />
        );
        if (!className.startsWith("mark")) return rim;
        return (
          <>
            <circle class="ground" cx={at.x} cy={at.y} r={radius} />
            <path class="fill" d={filled(at, radius, look.misses[cylinder] ?? 0)} />
            {rim}
            <text class="name" x={at.x} y={at.y} font-size={name.length > 2 ? 14 : 18}>
              {name}
            </text>
          </>
        );
      }}
    />
  );
}
