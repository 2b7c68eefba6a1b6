// Are the service figures of a profile usable: positive, and the lower limit first?
import { type Problem, pointer } from "../units/problem.ts";
import type { Figures } from "./profile.ts";

/** Every range ascending and positive, every single figure positive. */
export function checkFigures(figures: Figures | undefined): readonly Problem[] {
  return Object.entries(figures ?? {}).flatMap(([key, value]): readonly Problem[] => {
    const path = pointer("figures", key);
    if (typeof value === "number") return isPositive(value) ? [] : [notPositive(path, value)];
    if (!Array.isArray(value)) return [];
    return checkRange(path, value);
  });
}

function checkRange(path: string, range: readonly number[]): readonly Problem[] {
  const [low, high] = range;
  if (low === undefined || high === undefined || range.length !== 2) {
    const message = `${range.length} numbers were given where two limits belong.`;
    const hint = "Write the lowest and the highest value allowed; twice the same if there is one.";
    return [{ code: "figure-range-length", path, message, hint }];
  }
  const problems = range.flatMap((value, i) =>
    isPositive(value) ? [] : [notPositive(`${path}/${i}`, value)],
  );
  if (low > high) {
    problems.push({
      code: "figure-range-reversed",
      path,
      message: `The lower limit ${low} is above the upper limit ${high}.`,
      hint: `Write [${high}, ${low}] if the two were exchanged.`,
    });
  }
  return problems;
}

function isPositive(value: number): boolean {
  return Number.isFinite(value) && value > 0;
}

function notPositive(path: string, value: number): Problem {
  return {
    code: "figure-not-positive",
    path,
    message: `The figure ${value} is not a positive number.`,
    hint: "Copy the figure from the service manual, or leave it out.",
  };
}
