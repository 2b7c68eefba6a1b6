// Where a subcommand reads from, and what it says when its words make no sense.
import { readFile } from "node:fs/promises";
import { parseArgs } from "node:util";
import { parseJson } from "@half-order/core/wire";

/** Standard input, or something like it in tests. */
export interface Input extends AsyncIterable<string | Uint8Array> {
  readonly isTTY?: boolean;
}

/** The words of the command cannot be used. */
export class UsageError extends Error {}

/** The value in a JSON file; `-` or no name stands for standard input. */
export async function readJson(file: string | undefined, stdin: Input): Promise<unknown> {
  return parseJson(await readText(file, stdin));
}

async function readText(file: string | undefined, stdin: Input): Promise<string> {
  if (file !== undefined && file !== "-") {
    return await readFile(file, "utf8").catch((error: NodeJS.ErrnoException) => {
      throw new UsageError(`The file ${file} cannot be read: ${reason(error)}.`);
    });
  }
  if (file === undefined && stdin.isTTY) {
    throw new UsageError("Name a file, or pipe one in.");
  }
  const pieces: Uint8Array[] = [];
  for await (const piece of stdin) pieces.push(Buffer.from(piece));
  return Buffer.concat(pieces).toString("utf8");
}

function reason({ code, message }: NodeJS.ErrnoException): string {
  if (code === "ENOENT") return "there is none of that name";
  if (code === "EISDIR") return "it is a folder";
  return code === "EACCES" ? "you may not read it" : message;
}

/** A whole number of at least 1 given to an option; undefined when the option was not. */
export function countOf(option: string, value: string | undefined): number | undefined {
  if (value === undefined) return undefined;
  if (/^[1-9]\d{0,8}$/.test(value)) return Number(value);
  throw new UsageError(`--${option} needs a whole number from 1 up, not ${JSON.stringify(value)}.`);
}

/** The words of a subcommand that takes `--json` and at most `most` names. */
export function plainWords(
  args: readonly string[],
  most: number,
): { readonly isJson: boolean; readonly names: readonly string[] } {
  const options = { json: { type: "boolean", default: false } } as const;
  const { values, positionals } = parseArgs({ args: [...args], options, allowPositionals: true });
  refuseExtra(positionals, most);
  return { isJson: values.json, names: positionals };
}

/** Throws when there are more names than the subcommand takes. */
export function refuseExtra(names: readonly string[], most: number): void {
  const extra = names[most];
  if (extra !== undefined) throw new UsageError(`${JSON.stringify(extra)} is one name too many.`);
}

/** Throws when a case and the numbers to weigh it with would both be read from standard input. */
export function refuseTwoPipes(file: string | undefined, knowledge: string | undefined): void {
  if (knowledge === "-" && (file === undefined || file === "-")) {
    throw new UsageError("Case and knowledge cannot both come from standard input.");
  }
}
