// Does an input have the shape that a schema describes, and if not, what should be written instead?
// zod finds the faults; the sentences are made here, from the schema's own descriptions and examples.
import { z } from "zod";
import { nearest } from "../units/nearest.ts";
import { type Problem, pointer } from "../units/problem.ts";

type Issue = z.core.$ZodIssue;
type RawIssue = z.core.$ZodRawIssue;
type Path = readonly PropertyKey[];

/** What was read, or why it could not be. */
export type Reading<T> = { readonly value: T } | { readonly problems: readonly Problem[] };

/** The value as the schema describes it, or every problem of its shape. */
export function readShape<T>(schema: z.ZodType<T>, value: unknown): Reading<T> {
  // The slot for zod's message carries our hint: only there is the schema at hand that failed.
  const result = schema.safeParse(value, { error: hintsOf, reportInput: true });
  if (result.success) return { value: result.data };
  return { problems: result.error.issues.flatMap((issue) => problemsOf(issue, [])) };
}

function problemsOf(issue: Issue, above: Path): readonly Problem[] {
  const at = [...above, ...issue.path];
  if (issue.code === "unrecognized_keys") {
    const hints = issue.message.split("\n");
    return issue.keys.map((key, i) => ({
      code: "field-unknown",
      path: pathOf([...at, key]),
      message: `There is no field ${JSON.stringify(key)} here.`,
      hint: hints[i] ?? "Take it out.",
    }));
  }
  const meant = issue.code === "invalid_union" ? meantBranch(issue.errors) : undefined;
  if (meant) return meant.flatMap((inner) => problemsOf(inner, at));
  return [{ path: pathOf(at), hint: issue.message, ...got(issue, at) }];
}

/** Of a union, the one form that the input tried to have: the others fail at the first look. */
function meantBranch(branches: readonly (readonly Issue[])[]): readonly Issue[] | undefined {
  const isOther = ({ code, path }: Issue): boolean => code === "invalid_type" && path.length === 0;
  const meant = branches.filter((issues) => !issues.some(isOther));
  return meant.length === 1 ? meant[0] : undefined;
}

function got(issue: Issue, at: Path): Pick<Problem, "code" | "message"> {
  const input = sayValue(issue.input);
  if (issue.input === undefined) {
    const field = at.at(-1);
    const message =
      field === undefined ? "Nothing was given." : `The field ${sayField(field)} is missing.`;
    return { code: "field-missing", message };
  }
  switch (issue.code) {
    case "invalid_type":
    case "invalid_union":
      return { code: "kind-wrong", message: `${input} was not expected here.` };
    case "too_small":
      return { code: "too-small", message: `${input} is too ${sizeWord(issue.origin, "small")}.` };
    case "too_big":
      return { code: "too-big", message: `${input} is too ${sizeWord(issue.origin, "big")}.` };
    default:
      return { code: "value-unknown", message: `${input} cannot be used here.` };
  }
}

function sizeWord(origin: string, size: "small" | "big"): string {
  if (origin === "string" || origin === "array") return size === "small" ? "short" : "long";
  return size;
}

/** One line of what to write; for unknown fields one line each. */
function hintsOf(issue: RawIssue): string {
  const schema = issue.schema ?? issue.inst;
  switch (issue.code) {
    case "unrecognized_keys":
      return issue.keys.map((key) => hintForField(key, fieldsOf(schema))).join("\n");
    case "invalid_value":
      return hintForWord(issue.input, issue.values);
    case "too_small":
      return `Write at least ${sayCount(issue.minimum, issue.origin)}.`;
    case "too_big":
      return `Write at most ${sayCount(issue.maximum, issue.origin)}.`;
    default:
      return hintForKind(schema);
  }
}

/** "16", "1 character", "64 entries": a limit in what it counts. */
function sayCount(limit: number | bigint, origin: string): string {
  const isOne = Number(limit) === 1;
  if (origin === "string") return `${limit} ${isOne ? "character" : "characters"}`;
  return origin === "array" ? `${limit} ${isOne ? "entry" : "entries"}` : `${limit}`;
}

function hintForField(key: string, fields: readonly string[]): string {
  const [close] = nearest(key, fields);
  if (close !== undefined) return `Write ${JSON.stringify(close)} if you meant that.`;
  return `The fields are ${fields.join(", ")}.`;
}

function hintForWord(input: unknown, values: readonly unknown[]): string {
  const words = values.map(sayValue);
  const [close] = typeof input === "string" ? nearest(input, values.map(String)) : [];
  if (close !== undefined) return `Write ${JSON.stringify(close)} if you meant that.`;
  return words.length === 1 ? `Write ${words[0]}.` : `Write one of ${words.join(", ")}.`;
}

function hintForKind(schema: unknown): string {
  if (!(schema instanceof z.core.$ZodType)) return "Correct it.";
  const { description, examples } = metaOf(schema);
  const kind = KIND_WORDS[schema._zod.def.type];
  const [example] = Array.isArray(examples) ? examples : [];
  return [
    `Write ${[kind, description && lowerFirst(description)].filter(Boolean).join(": ")}`,
    ...(example === undefined ? [] : [`, for example ${JSON.stringify(example)}`]),
    ".",
  ].join("");
}

function metaOf(schema: z.core.$ZodType): z.core.GlobalMeta {
  return z.globalRegistry.get(schema) ?? {};
}

const KIND_WORDS: Readonly<Record<string, string>> = {
  string: "text in quotes",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  array: "a list",
  tuple: "a list",
  object: "an object",
  record: "an object",
};

function fieldsOf(schema: unknown): readonly string[] {
  return schema instanceof z.core.$ZodObject ? Object.keys(schema._zod.def.shape) : [];
}

function pathOf(at: Path): string {
  return pointer(...at.map((part) => (typeof part === "symbol" ? String(part) : part)));
}

function sayField(part: PropertyKey): string {
  return typeof part === "string" ? JSON.stringify(part) : String(part);
}

/** A value as a reader finds it in the input, cut short. */
function sayValue(value: unknown): string {
  if (Array.isArray(value)) return "A list";
  if (typeof value === "object" && value !== null) return "An object";
  // A number such as 1e999 is read as infinite, for which JSON has no word.
  const isNumber = typeof value === "number";
  if (isNumber && !Number.isFinite(value)) return "A number too large to be held";
  const text = JSON.stringify(value) ?? String(value);
  return text.length <= 40 ? text : `${text.slice(0, 36)} …`;
}

function lowerFirst(text: string): string {
  return /^[A-Z](?![A-Z0-9])/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
