// Text for a terminal: columns, wrapped lines, percentages.
import type { CylinderName } from "@half-order/core";

const WIDTH = 96;

/** Rows as lines with columns under one another; the last column may be of any length. */
export function table(rows: readonly (readonly string[])[], indent = "  "): string {
  const widths: number[] = [];
  for (const row of rows) {
    row.forEach((cell, i) => {
      widths[i] = Math.max(widths[i] ?? 0, cell.length);
    });
  }
  return rows
    .map((row) => indent + row.map((cell, i) => cell.padEnd(widths[i] ?? 0)).join("  "))
    .map((line) => `${line.trimEnd()}\n`)
    .join("");
}

/** Words broken into lines, each after the indent. */
export function wrapped(text: string, indent = ""): string {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/).filter(Boolean)) {
    if (line && indent.length + line.length + 1 + word.length > WIDTH) {
      lines.push(line);
      line = word;
    } else line = line ? `${line} ${word}` : word;
  }
  return [...lines, line].map((each) => `${indent}${each}\n`).join("");
}

/** "61 %", "4.3 %", "<0.1 %". */
export function percent(probability: number): string {
  const value = probability * 100;
  if (value < 0.1) return "<0.1 %";
  if (value > 99.9) return ">99.9 %";
  return `${value.toFixed(value < 10 || value > 99 ? 1 : 0)} %`;
}

/** To tenths, as figures in dB are printed. */
export function rounded(value: number): number {
  return Math.round(value * 10) / 10;
}

/** "1-3-4-2". */
export function dashed(cylinders: readonly CylinderName[]): string {
  return cylinders.join("-");
}

/** JSON on one line, spaced as people write it. */
export function jsonLine(value: unknown): string {
  return JSON.stringify(value, undefined, 1).replace(/\n */g, " ");
}

/** JSON for programs, readable for people. */
export function json(value: unknown): string {
  return `${JSON.stringify(value, undefined, 2)}\n`;
}
