// Figures of a column, rounded so that the rounded column still adds up.

/**
 * Rounds to one decimal by rounding the running sum: each figure is at most 0.1 off, and the sum of
 * the rounded figures is the rounded sum.
 */
export function column(values: readonly number[]): readonly number[] {
  let exact = 0;
  let shown = 0;
  return values.map((value) => {
    exact += value;
    const next = Math.round(exact * 10);
    const step = next - shown;
    shown = next;
    return step / 10;
  });
}

/** "+4.6", "−13.1", "0.0", with a true minus sign. */
export function sayDb(value: number): string {
  const figure = Math.abs(value).toFixed(1);
  if (Number(figure) === 0) return figure;
  return `${value < 0 ? "−" : "+"}${figure}`;
}
