// Which subcommand is meant, and what becomes of its errors.
import { InputError } from "@half-order/core";
import { version } from "../config.ts";
import { checksCommand, faultsCommand, findingsCommand, repairsCommand } from "./catalogue.ts";
import { driveCommand } from "./drive.ts";
import { engineCommand, enginesCommand } from "./engine.ts";
import { type Input, UsageError } from "./input.ts";
import { knowledgeCommand } from "./knowledge.ts";
import { mendCommand } from "./mend.ts";
import { nextCommand } from "./next.ts";
import { rankCommand } from "./rank.ts";
import { sensitivityCommand } from "./sensitivity.ts";

/** The streams of a process, as far as the command uses them. */
export interface Streams {
  readonly stdin: Input;
  readonly stdout: { write(text: string): unknown };
  readonly stderr: { write(text: string): unknown };
}

/** Yields what goes to standard output. */
type Subcommand = (args: readonly string[], stdin: Input) => Promise<string>;

const SUBCOMMANDS: ReadonlyMap<string, Subcommand> = new Map([
  ["rank", rankCommand],
  ["drive", driveCommand],
  ["next", nextCommand],
  ["mend", mendCommand],
  ["sensitivity", sensitivityCommand],
  ["engine", engineCommand],
  ["engines", enginesCommand],
  ["faults", faultsCommand],
  ["findings", findingsCommand],
  ["checks", checksCommand],
  ["repairs", repairsCommand],
  ["knowledge", knowledgeCommand],
]);

const HELP = `half-order: ranks the likely faults behind an engine misfire

  half-order rank [CASE.json] [--top N] [--why N] [--knowledge OVERLAY.json] [--json]
      Ranks the faults of a case: a file, or standard input when none (or -) is given.
      --top N   how many parts to list (8 unless given)
      --why N   what each finding did to the odds of the fault with number N
      --knowledge OVERLAY.json   your own numbers, laid over the ones it comes with
  half-order next [CASE.json] [--think MS] [--knowledge OVERLAY.json] [--json]
      Tells what pays most to do now: a check, with what each outcome would mean, or a repair.
      --think MS   how long to plan at most (400 unless given); the plan improves with time
      The case may hold "atHand" (tools, where, skill, prices) and "repairs" with their results.
      Each outcome names the finding and the answer to write into the case.
  half-order sensitivity [CASE.json] [--shakes N] [--seed N] [--knowledge OVERLAY.json] [--json]
      Which single numbers would change the first place, and how often it holds when all are off.
      --shakes N   how often all numbers are shaken, at each size (100 unless given)
      --seed N     another series of chance (1 unless given)
  half-order drive [CASE.json] [--json]
      Tells whether one may drive on, by rules and never by a probability.
  half-order mend REPAIR [CASE.json] [--at CYLINDER] [--knowledge OVERLAY.json] [--json]
      Tells what belongs to a repair: what to put right with it, how to put it back, what proves it.
  half-order engine PROFILE.json|ID [--json]
      Works out the firing angles, companions, coils and connectors of an engine.
  half-order engines [--json]
      Lists the engines that come with the program.
  half-order faults|findings|checks|repairs [ID|WORD] [--json]
      Lists what the program knows, or only what goes by that id or word.
      "findings" shows how to write each answer.
  half-order knowledge [OVERLAY.json] [--json]
      Lists the tables in short and what their numbers rest on, with your own numbers if given.
  half-order --help | --version

A case is written like this:
  {
    "engine": "generic.i4.1342.rail",
    "findings": [
      { "finding": "lamp", "answer": "blinking" },
      { "finding": "codes", "answer": ["P0302"] },
      { "finding": "plug.look", "cylinder": 2, "answer": "wet-petrol" }
    ]
  }

Exit code: 0 done, 2 the input or the words of the command cannot be used, 1 anything else.
`;

/** Runs one command line (without the program's name) and yields the exit code. */
export async function runCommand(args: readonly string[], streams: Streams): Promise<number> {
  try {
    streams.stdout.write(await output(args, streams.stdin));
    return 0;
  } catch (error) {
    streams.stderr.write(`${say(error)}\n`);
    return isFromUser(error) ? 2 : 1;
  }
}

async function output(args: readonly string[], stdin: Input): Promise<string> {
  const [name, ...rest] = args;
  if (name === "--version" || name === "-v") return `${version}\n`;
  if (name === undefined) throw new UsageError("A subcommand is missing.");
  if (args.some((word) => word === "--help" || word === "-h") || name === "help") return HELP;
  const run = SUBCOMMANDS.get(name);
  if (!run) throw new UsageError(`There is no subcommand ${JSON.stringify(name)}.`);
  return await run(rest.reduce(withValue, []), stdin);
}

/** A negative number after an option is its value, not another option: whoever reads it says what is wrong. */
function withValue(words: readonly string[], word: string): readonly string[] {
  const last = words.at(-1);
  const isValue = /^-[\d.]/.test(word) && last !== undefined && /^--[^=]+$/.test(last);
  return isValue ? [...words.slice(0, -1), `${last}=${word}`] : [...words, word];
}

function isFromUser(error: unknown): boolean {
  return error instanceof InputError || error instanceof UsageError || isParseArgsError(error);
}

/** What node:util's parseArgs throws about an option that it does not know. */
function isParseArgsError(error: unknown): error is Error {
  return (
    error instanceof Error && "code" in error && String(error.code).startsWith("ERR_PARSE_ARGS")
  );
}

function say(error: unknown): string {
  if (error instanceof InputError) return error.message;
  if (error instanceof UsageError) return `${error.message} See half-order --help.`;
  if (isParseArgsError(error)) return `${error.message.split(". ")[0]}. See half-order --help.`;
  return `half-order broke: ${error instanceof Error ? (error.stack ?? error.message) : error}`;
}
