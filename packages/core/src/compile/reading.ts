// A measured number becomes an option of its finding, held against the engine's own figures.
import type { EngineProfile, Figures, Range } from "../engine/profile.ts";
import type { FindingRow } from "../knowledge/schema.ts";

/**
 * The option that a reading falls into, or undefined when the finding cannot be measured.
 * With a figure (the profile's, else the handbook range) the value is first divided by the range.
 */
export function optionOfReading(
  profile: EngineProfile,
  finding: FindingRow,
  value: number,
): string | undefined {
  const rule = finding.reading;
  if (!rule) return undefined;
  const range = rule.figure
    ? (figureRange(profile.figures, rule.figure) ?? rule.otherwise)
    : undefined;
  const held = range ? againstRange(value, range) : value;
  return rule.steps.find((step) => step.under === undefined || held < step.under)?.option;
}

function figureRange(figures: Figures | undefined, name: string): Range | undefined {
  const value = figures?.[name as keyof Figures];
  return Array.isArray(value) ? (value as unknown as Range) : undefined;
}

function againstRange(value: number, [low, high]: Range): number {
  if (value > high) return value / high;
  if (value < low) return value / low;
  return 1;
}
