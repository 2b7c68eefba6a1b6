// Where the cylinders stand in the block, seen from above with the front of the engine on the left.
import type { Engine } from "@half-order/core";
import type { Point } from "./geometry.ts";

export const BLOCK = { disc: 19, step: 62, row: 78, flatRow: 104, margin: 34, front: 26 } as const;

export interface BlockPlan {
  readonly width: number;
  readonly height: number;
  /** By cylinder. */
  readonly at: readonly Point[];
  /** Of a V, the two arms in front that hold its banks together, as a path. */
  readonly arms: string;
}

/**
 * One row a bank. The second bank of a V stands half a step further back, as its connecting rods
 * share crank pins with the first; the banks of a flat engine face one another across the crank, far apart.
 */
export function blockPlan(engine: Engine): BlockPlan {
  const at = new Array<Point>(engine.names.length).fill({ x: 0, y: 0 });
  const longest = Math.max(...engine.banks.map((bank) => bank.length));
  const { layout } = engine.profile;
  const shift = engine.banks.length > 1 ? BLOCK.step / 3 : 0;
  const row = layout === "flat" ? BLOCK.flatRow : BLOCK.row;
  const left = BLOCK.margin + (layout === "v" ? BLOCK.front : 0);
  engine.banks.forEach((bank, b) => {
    bank.forEach((cylinder, place) => {
      at[cylinder] = {
        x: left + place * BLOCK.step + (b % 2) * shift,
        y: BLOCK.margin + b * row,
      };
    });
  });
  const width = left + BLOCK.margin + (longest - 1) * BLOCK.step + shift;
  const height = 2 * BLOCK.margin + (engine.banks.length - 1) * row;
  const arms =
    layout === "v"
      ? `M${left} ${BLOCK.margin}L9 ${height / 2}L${left + shift} ${height - BLOCK.margin}`
      : "";
  return { width, height, at, arms };
}
