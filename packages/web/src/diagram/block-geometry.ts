// Where the cylinders stand in the block, seen from above with the front of the engine on the left.
import type { Engine } from "@half-order/core";
import type { Point } from "./geometry.ts";

export const BLOCK = { disc: 19, step: 62, row: 78, margin: 34 } as const;

export interface BlockPlan {
  readonly width: number;
  readonly height: number;
  /** By cylinder. */
  readonly at: readonly Point[];
}

/**
 * One row a bank. The second bank of a V stands half a step further back, as its connecting rods
 * share crank pins with the first; the banks of a flat engine face one another across the crank.
 */
export function blockPlan(engine: Engine): BlockPlan {
  const at = new Array<Point>(engine.names.length).fill({ x: 0, y: 0 });
  const longest = Math.max(...engine.banks.map((bank) => bank.length));
  const shift = engine.banks.length > 1 ? BLOCK.step / 3 : 0;
  engine.banks.forEach((bank, row) => {
    bank.forEach((cylinder, place) => {
      at[cylinder] = {
        x: BLOCK.margin + place * BLOCK.step + (row % 2) * shift,
        y: BLOCK.margin + row * BLOCK.row,
      };
    });
  });
  return {
    width: 2 * BLOCK.margin + (longest - 1) * BLOCK.step + shift,
    height: 2 * BLOCK.margin + (engine.banks.length - 1) * BLOCK.row,
    at,
  };
}
