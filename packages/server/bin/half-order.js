#!/usr/bin/env node
// What npm links as the command: unlike the program it starts, this file is there before the first build.
import { existsSync } from "node:fs";

const program = new URL("../dist/command.js", import.meta.url);
if (existsSync(program)) await import(program.href);
else {
  console.error("half-order is not built yet: run `npm run build` first.");
  process.exitCode = 1;
}
