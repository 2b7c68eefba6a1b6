// The words of questions that are answered by a figure.

export const FIGURE = {
  measured: (unit: string): string => `Or the figure you read, in ${unit}`,
  use: "Use",
  wrong: "Write a number, such as 1.05.",
};

export const COUNTS = {
  label: (name: string): string => `Cylinder ${name}`,
  use: "Use these counts",
  empty: "A field left empty counts as 0.",
};
