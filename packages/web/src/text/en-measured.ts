// The words of questions that are answered by a figure.

export const FIGURE = {
  measured: (unit: string): string => `Or the figure you read, in ${unit}`,
  use: "Use",
  wrong: (low: string, high: string, unit: string): string =>
    `Write a number from ${low} to ${high} ${unit}`,
  /** After it. */
  such: (figure: string): string => `, such as ${figure}`,
  thou: "1 thou is a thousandth of an inch: 0.044 inch is 44 thou.",
};

export const COUNTS = {
  label: (name: string): string => `Cylinder ${name}`,
  use: "Use these counts",
  empty: "What the reader shows. Once a field is filled, one left empty counts as 0.",
};
