// The process of the command `half-order`: streams in, streams and an exit code out.
import { runCommand } from "./command/dispatch.ts";

// A reader such as `head` may close the pipe early: nothing is wrong then.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
  process.exit();
});

process.exitCode = await runCommand(process.argv.slice(2), process);
