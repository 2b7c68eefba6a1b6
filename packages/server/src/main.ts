// The process: reads environment and command line, listens, and closes when it is told to.
import { InputError } from "@half-order/core";
import { buildApp } from "./app.ts";
import { readConfig } from "./config.ts";

try {
  await serve();
} catch (error) {
  console.error(error instanceof Error ? say(error) : error);
  process.exitCode = error instanceof InputError ? 2 : 1;
}

async function serve(): Promise<void> {
  const { host, port, ...config } = readConfig(process.env, process.argv.slice(2));
  // Standard output is for the one line below.
  const app = await buildApp(config, { level: "warn", stream: process.stderr });
  for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => void app.close());
  const address = await app.listen({ host, port });
  console.log(`Half-Order is at ${address}`);
}

function say(error: NodeJS.ErrnoException & { port?: number }): string {
  if (error instanceof InputError) {
    return error.problems
      .map(({ path, message, hint }) => `${path ? `${path.slice(1)}: ` : ""}${message} ${hint}`)
      .join("\n");
  }
  const { code, port = 0 } = error;
  switch (code) {
    case "EADDRINUSE":
      return `Port ${port} is taken by another program. Stop that one, or choose: PORT=${port + 1} npm start`;
    case "EACCES":
      return `Port ${port} needs rights that this process has not: choose one above 1023.`;
    case "EADDRNOTAVAIL":
      return "HOST is no address of this computer: leave it out for 127.0.0.1.";
    default:
      return error.stack ?? error.message;
  }
}
