// Tables and figures of the evaluations, for a terminal.

export function heading(title, ...notes) {
  console.log(["", `## ${title}`, ...notes, ""].join("\n"));
}

/** Columns under one another; the first to the left, the others to the right. */
export function table(head, rows) {
  const text = [head, ...rows].map((row) => row.map(String));
  const widths = head.map((_, i) => Math.max(...text.map((row) => row[i].length)));
  for (const row of text) {
    const cells = row.map((cell, i) =>
      i === 0 ? cell.padEnd(widths[i]) : cell.padStart(widths[i]),
    );
    console.log(`  ${cells.join("  ")}`);
  }
}

export function digits(value) {
  return value.toFixed(3);
}

export function signed(value) {
  return `${value < 0 ? "" : "+"}${value.toFixed(2)}`;
}

export function mean(values) {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
}
