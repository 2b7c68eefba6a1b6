// Runs the command in this process, with streams of text in place of the terminal's.
import { runCommand } from "../../packages/server/src/command/dispatch.ts";

export interface Run {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** What a command line prints. Without piped text, standard input is a terminal. */
export async function commandLine(args: readonly string[], piped?: string): Promise<Run> {
  const run = { out: "", err: "" };
  const code = await runCommand(args, {
    stdin: {
      isTTY: piped === undefined,
      async *[Symbol.asyncIterator]() {
        // In two pieces, as a pipe may deliver them, cut in the middle of a character.
        const bytes = Buffer.from(piped ?? "");
        yield bytes.subarray(0, bytes.indexOf("é") + 1);
        yield bytes.subarray(bytes.indexOf("é") + 1);
      },
    },
    stdout: { write: (text: string) => (run.out += text) },
    stderr: { write: (text: string) => (run.err += text) },
  });
  return { code, ...run };
}
