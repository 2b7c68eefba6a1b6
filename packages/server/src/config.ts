// What the environment says about how to serve, read once; and which version of the program this is.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { InputError } from "@half-order/core";
import { readShape } from "@half-order/core/wire";
import { z } from "zod";

/** The version of this package. */
export const version: string = z
  .object({ version: z.string() })
  .parse(JSON.parse(readFileSync(new URL("../package.json", import.meta.url), "utf8"))).version;

export interface Config {
  /** Address to listen on. */
  readonly host: string;
  /** 0 lets the system choose. */
  readonly port: number;
  /** Folder of the built page; need not exist. */
  readonly page: string;
}

const environmentSchema = z.object({
  HOST: z.string().default("127.0.0.1"),
  PORT: z
    .string()
    .transform((text) => (/^\d+$/.test(text) ? Number(text) : text))
    .pipe(
      z
        .int()
        .min(0)
        .max(65_535)
        .meta({ description: "The port", examples: [7205] }),
    )
    .default(7205),
});

/** The configuration of an environment; what is empty counts as not set. Throws an `InputError`. */
export function readConfig(environment: Readonly<Record<string, string | undefined>>): Config {
  const set = Object.entries(environment).filter(([, value]) => value?.trim());
  const reading = readShape(environmentSchema, Object.fromEntries(set));
  if ("problems" in reading) throw new InputError(reading.problems);
  const { HOST, PORT } = reading.value;
  return { host: HOST, port: PORT, page: builtPage() };
}

function builtPage(): string {
  return fileURLToPath(new URL("../../web/dist", import.meta.url));
}
