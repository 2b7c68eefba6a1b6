// Reads JSON that a person may have written, and says where it breaks.
import { InputError, type Problem } from "../units/problem.ts";

/** A place in a text that is not JSON, counted from 0, and what to do about it. */
interface Break {
  readonly at: number;
  readonly hint: string;
}

/** The value that a JSON text stands for. Throws an `InputError` that names line and column. */
export function parseJson(text: string): unknown {
  // Some editors begin a file with an invisible byte order mark.
  const json = text.replace(/^\uFEFF/, "");
  try {
    return JSON.parse(json);
  } catch {
    throw new InputError([brokenJson(json)]);
  }
}

function brokenJson(json: string): Problem {
  if (json.trim() === "") {
    const hint = "Write a JSON object, starting with {.";
    return { code: "json-empty", path: "", message: "The input is empty.", hint };
  }
  const { at, hint } = findBreak(json);
  const before = json.slice(0, at).split("\n");
  const line = before.length;
  const column = (before.at(-1) ?? "").length + 1;
  const found = at >= json.length ? "the text ends" : `${sayCharacter(json, at)} stands`;
  const message = `This is not JSON: at line ${line}, column ${column}, ${found} where it cannot.`;
  return { code: "json-broken", path: "", message, hint };
}

function sayCharacter(json: string, at: number): string {
  return JSON.stringify(String.fromCodePoint(json.codePointAt(at) ?? 0));
}

const SPACE = /[ \t\r\n]*/y;
const SCALAR =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: JSON forbids them in strings
  /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;

/** What may come next: a value, the name of a field, a colon, or a comma or the end. */
type Turn = "value" | "first value" | "name" | "first name" | "colon" | "after";

/** The first character at which a text stops being JSON (RFC 8259). */
function findBreak(json: string): Break {
  const open: ("{" | "[")[] = [];
  let turn: Turn = "value";
  let at = skip(SPACE, json, 0);
  for (;;) {
    const next = step(json, at, turn, open);
    if ("hint" in next) return next;
    turn = next.turn;
    at = skip(SPACE, json, next.at);
  }
}

function step(
  json: string,
  at: number,
  turn: Turn,
  open: ("{" | "[")[],
): Break | { readonly at: number; readonly turn: Turn } {
  const character = json[at];
  const inside = open.at(-1);
  const closes = inside === "{" ? "}" : "]";
  const mayClose = turn === "after" || turn === "first value" || turn === "first name";
  if (inside && mayClose && character === closes) {
    open.pop();
    return { at: at + 1, turn: "after" };
  }
  if (turn === "colon") {
    return character === ":" ? { at: at + 1, turn: "value" } : { at, hint: "Write a colon here." };
  }
  if (turn === "after") {
    if (inside && character === ",") return { at: at + 1, turn: inside === "{" ? "name" : "value" };
    return { at, hint: hintAfter(character, inside, closes) };
  }
  const isName = turn === "name" || turn === "first name";
  if (!isName && (character === "{" || character === "[")) {
    open.push(character);
    return { at: at + 1, turn: character === "{" ? "first name" : "first value" };
  }
  const end = isName && character !== '"' ? at : skip(SCALAR, json, at);
  if (end > at) return { at: end, turn: isName ? "colon" : "after" };
  return { at, hint: hintForValue(character, isName) };
}

function skip(pattern: RegExp, json: string, at: number): number {
  pattern.lastIndex = at;
  return at + (pattern.exec(json)?.[0].length ?? 0);
}

function hintAfter(character: string | undefined, inside: string | undefined, closes: string) {
  if (!inside) return "Take away what follows the value.";
  if (character === undefined) return `Close what was opened with ${inside}: write ${closes}.`;
  return `Write a comma before it, or ${closes} to close.`;
}

function hintForValue(character: string | undefined, isName: boolean): string {
  if (character === "}" || character === "]") return "Take away the comma before it.";
  if (character === "'") return "Write text in double quotes.";
  if (character === '"') return "Close the quotes on the same line; write \\n for a new line.";
  if (character === "/" || character === "#") return "Take away the comment.";
  if (isName) return "Write the name of a field in double quotes.";
  return 'Write a value: {, [, a number, true, false, null, or text in "double quotes".';
}
