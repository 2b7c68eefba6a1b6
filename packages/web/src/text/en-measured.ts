// The words of questions that are answered by a figure.
import type { Quantity, UnitChoice } from "../state/unit.ts";

export const FIGURE = {
  measured: (unit: string): string => `Or the figure you read, in ${unit}`,
  use: "Use",
  wrong: (low: string, high: string, unit: string): string =>
    `Write a number from ${low} to ${high} ${unit}`,
  /** After it. */
  such: (figure: string): string => `, such as ${figure}`,
  thou: "1 thou is a thousandth of an inch: 0.044 inch is 44 thou.",
  /** Of a figure that is a common one in another unit than the one that is set. */
  elsewhere: (figure: string, set: string): string => `${figure}? You have ${set} set.`,
  take: (figure: string, unit: string): string => `It is ${figure}: show ${unit} from now on`,
  keep: (figure: string): string => `It is ${figure} all the same`,
};

export const UNIT_NAMES: Readonly<Record<UnitChoice[Quantity], string>> = {
  mm: "millimetres",
  thou: "thousandths of an inch",
  N·m: "newton metres",
  lb·ft: "pound-feet",
  km: "kilometres",
  mi: "miles",
  kPa: "kilopascals",
  bar: "bar",
  psi: "pounds per square inch",
  "°C": "degrees Celsius",
  "°F": "degrees Fahrenheit",
};

export const COUNTS = {
  label: (name: string): string => `Cylinder ${name}`,
  use: "Use these counts",
  empty: "What the reader shows. Once a field is filled, one left empty counts as 0.",
};
