// A link as a square of dots that a phone's camera reads.
import encodeQR from "qr";
import { fitsSquare } from "./square.ts";

/** Dots of quiet around the square that the standard asks for. */
const QUIET = 4;

export interface QrDrawing {
  /** Width and height with the quiet zone, in dots. */
  readonly size: number;
  /** All dark dots, row by row. */
  readonly path: string;
}

/** The square of a text, or `undefined` when it is too long for one. */
export function qrOf(text: string): QrDrawing | undefined {
  if (!fitsSquare(text)) return undefined;
  const rows = encodeQR(text, "raw", { ecc: "low", border: QUIET });
  return {
    size: rows.length,
    path: rows.map((row, y) => rowPath(row, y)).join(""),
  };
}

/** Runs of dark dots as strips. */
function rowPath(row: readonly boolean[], y: number): string {
  let path = "";
  for (let x = 0; x < row.length; x += 1) {
    if (!row[x]) continue;
    const from = x;
    while (row[x + 1]) x += 1;
    path += `M${from} ${y}h${x - from + 1}v1h${from - x - 1}z`;
  }
  return path;
}
