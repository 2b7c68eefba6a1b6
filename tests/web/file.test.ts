// Is a file that holds no case at all told from a case with something wrong in it?
import { InputError, type Problem } from "@half-order/core";
import { parseCase, parseJson } from "@half-order/core/wire";
import { describe, expect, it } from "vitest";
import { isNoCase } from "../../packages/web/src/state/file.ts";

function problemsOf(text: string): readonly Problem[] {
  try {
    const reading = parseCase(parseJson(text));
    return "problems" in reading ? reading.problems : [];
  } catch (error) {
    if (error instanceof InputError) return error.problems;
    throw error;
  }
}

describe("a file", () => {
  it.each(["hello", "", "[1, 2]", "7", "{}", '{"name": "a shopping list"}', "{ engine: 4 }"])(
    "is no case: %s",
    (text) => {
      const problems = problemsOf(text);
      expect(problems).not.toEqual([]);
      expect(isNoCase(problems)).toBe(true);
    },
  );

  it.each([
    '{"engine": "demo.tern", "findings": [{"finding": "plug.gap", "answer": 110, "cylinder": 2}]}',
    '{"engine": "no.such", "findings": []}',
  ])("is a case with something wrong in it: %s", (text) => {
    const problems = problemsOf(text);
    expect(problems).not.toEqual([]);
    expect(isNoCase(problems)).toBe(false);
  });
});
