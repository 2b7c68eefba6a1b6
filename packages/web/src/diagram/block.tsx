// The engine as it stands in the car, so that a hand finds the right plug: cylinders in their banks,
// numbered, with the gasket land between neighbours and the bank behind them.
import type { Engine } from "@half-order/core";
import type { VNode } from "preact";
import { BLOCK, blockPlan } from "./block-geometry.ts";
import { Disc } from "./disc.tsx";
import { BARE, type Look, Mark, placeId } from "./mark.tsx";

export function Block({ engine, look = BARE }: { engine: Engine; look?: Look }): VNode {
  const { width, height, at, arms } = blockPlan(engine);
  return (
    <svg
      class="block"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      aria-hidden="true"
    >
      <path class="arms" d={arms} />
      {engine.banks.map((bank) => {
        const [first, last] = [at[bank[0] ?? 0], at[bank[bank.length - 1] ?? 0]];
        const reach = BLOCK.disc + 8;
        return (
          <Mark
            key={bank.join()}
            id={placeId(engine, "bank", bank)}
            look={look}
            width={{ thin: 0.75, thick: 7 }}
            draw={(className, stroke) => (
              <rect
                class={`${className} bank`}
                x={(first?.x ?? 0) - reach}
                y={(first?.y ?? 0) - reach}
                width={(last?.x ?? 0) - (first?.x ?? 0) + 2 * reach}
                height={2 * reach}
                rx={reach}
                stroke-width={stroke}
              />
            )}
          />
        );
      })}
      {engine.neighbours.map(([a, b]) => {
        const [from, to] = [at[a], at[b]];
        return (
          <Mark
            key={`${a} ${b}`}
            id={placeId(engine, "neighbours", [a, b])}
            look={look}
            width={{ thin: 1.5, thick: 11 }}
            draw={(className, stroke) => (
              <line
                class={className}
                stroke-width={stroke}
                {...{ x1: from?.x, y1: from?.y, x2: to?.x, y2: to?.y }}
              />
            )}
          />
        );
      })}
      {at.map((point, c) => (
        <Disc
          key={engine.names[c]}
          engine={engine}
          cylinder={c}
          at={point}
          radius={BLOCK.disc}
          look={look}
        />
      ))}
    </svg>
  );
}
