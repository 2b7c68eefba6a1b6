// Is broken JSON found where it breaks?
import { InputError } from "@half-order/core";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseJson } from "../../packages/core/src/wire/json.ts";

function complaint(text: string): string {
  try {
    parseJson(text);
    return "none";
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
}

describe("broken JSON", () => {
  it.each([
    ["", "(input): The input is empty. Write a JSON object, starting with {."],
    ['{"a": 1,}', 'line 1, column 9, "}" stands where it cannot. Take away the comma before it.'],
    [
      "[1, 2",
      "line 1, column 6, the text ends where it cannot. Close what was opened with [: write ].",
    ],
    ['{"a" 1}', 'line 1, column 6, "1" stands where it cannot. Write a colon here.'],
    [
      '{"a": 1\n "b": 2}',
      'line 2, column 2, "\\"" stands where it cannot. Write a comma before it, or } to close.',
    ],
    [
      "{a: 1}",
      'line 1, column 2, "a" stands where it cannot. Write the name of a field in double quotes.',
    ],
    ["{'a': 1}", 'line 1, column 2, "\'" stands where it cannot. Write text in double quotes.'],
    ['{"a": yes}', 'line 1, column 7, "y" stands where it cannot. Write a value'],
    [
      '["a\nb"]',
      'line 1, column 2, "\\"" stands where it cannot. Close the quotes on the same line',
    ],
    ["{} x", 'line 1, column 4, "x" stands where it cannot. Take away what follows the value.'],
    ["// hi\n{}", 'line 1, column 1, "/" stands where it cannot. Take away the comment.'],
    ['{"a": 01}', 'line 1, column 8, "1" stands where it cannot. Write a comma before it'],
  ])("%j", (text, words) => {
    expect(complaint(text)).toContain(words);
  });

  it("is never found in JSON, and always where there is some", () => {
    const mutated = fc
      .tuple(fc.json(), fc.nat(), fc.constantFrom("", ",", '"', "}", "]", ":", "\\", "x", "\n"))
      .map(([text, at, mark]) => {
        const cut = at % (text.length + 1);
        return text.slice(0, cut) + mark + text.slice(cut + 1);
      });
    fc.assert(
      fc.property(mutated, (text) => {
        let isJson = true;
        try {
          JSON.parse(text);
        } catch {
          isJson = false;
        }
        const said = complaint(text);
        expect(said === "none").toBe(isJson);
        const [, line, column] = /line (\d+), column (\d+)/.exec(said) ?? [];
        if (!line) return;
        // The place is the first that is wrong: what stands before it only lacks an end.
        const lines = text.split("\n").slice(0, Number(line));
        const before = [...lines.slice(0, -1), (lines.at(-1) ?? "").slice(0, Number(column) - 1)];
        expect(complaint(before.join("\n"))).toMatch(/^none$|the text ends|The input is empty/);
      }),
      { seed: 20_260, numRuns: 2000 },
    );
  });

  it("deeply nested does not exhaust the stack", () => {
    expect(complaint("[".repeat(200_000))).toContain("column 200001, the text ends");
  });
});

it("a byte order mark is no fault", () => {
  expect(parseJson('\uFEFF{"a":1}')).toEqual({ a: 1 });
});
