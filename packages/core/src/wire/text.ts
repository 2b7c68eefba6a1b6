// What may stand in text that people write and terminals and pages show again?
import { z } from "zod";

/** One line: control characters could move the cursor of a terminal or colour what follows. */
export function lineSchema(most: number) {
  return z
    .string()
    .max(most)
    .regex(/^\P{Cc}*$/u, {
      error: "Write it on one line, without tabs and other control characters.",
    });
}

/** Several lines; tabs and line ends are the only control characters. */
export function proseSchema(most: number) {
  return z
    .string()
    .max(most)
    .regex(/^(?:\P{Cc}|[\t\n\r])*$/u, {
      error: "Write plain text; of control characters only tabs and line ends.",
    });
}
