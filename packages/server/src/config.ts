// What environment and command line say about how to serve, read once; and which version of the program
// this is.
import { readFileSync } from "node:fs";
import { createSecureContext } from "node:tls";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { InputError, type Problem } from "@half-order/core";
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
  /** Certificate and key in PEM form; without them the server speaks plain HTTP. */
  readonly tls?: Tls;
}

export interface Tls {
  readonly cert: string;
  readonly key: string;
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
  TLS_CERT: z.string().optional(),
  TLS_KEY: z.string().optional(),
});

/**
 * The configuration of an environment and of the words after the program's name, such as
 * `--tls-cert cert.pem`, which go before the environment. What is empty counts as not set. Throws an
 * `InputError`, also when a file of the certificate cannot be read.
 */
export function readConfig(
  environment: Readonly<Record<string, string | undefined>>,
  words: readonly string[] = [],
): Config {
  const said = { ...environment, ...readWords(words) };
  const set = Object.entries(said).filter(([, value]) => value?.trim());
  const reading = readShape(environmentSchema, Object.fromEntries(set));
  if ("problems" in reading) throw new InputError(reading.problems);
  const { HOST, PORT, TLS_CERT, TLS_KEY } = reading.value;
  const tls = readTls(TLS_CERT, TLS_KEY);
  return { host: HOST, port: PORT, page: builtPage(), ...(tls ? { tls } : {}) };
}

/** The flags under the names that the environment has for the same. */
function readWords(words: readonly string[]): Record<string, string> {
  const options = { "tls-cert": { type: "string" }, "tls-key": { type: "string" } } as const;
  try {
    const { values } = parseArgs({ args: [...words], options });
    return {
      ...(values["tls-cert"] === undefined ? {} : { TLS_CERT: values["tls-cert"] }),
      ...(values["tls-key"] === undefined ? {} : { TLS_KEY: values["tls-key"] }),
    };
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    const hint = "The flags are --tls-cert FILE and --tls-key FILE.";
    const message = error.message.split(". ")[0] ?? error.message;
    throw new InputError([{ code: "flag-unknown", path: "", message: `${message}.`, hint }]);
  }
}

function readTls(cert: string | undefined, key: string | undefined): Tls | undefined {
  if (cert === undefined && key === undefined) return undefined;
  const problems: Problem[] = [];
  const read = (name: string, file: string | undefined): string => {
    if (file === undefined) {
      problems.push({
        code: "tls-half",
        path: `/${name}`,
        message: "It is missing.",
        hint: "A certificate and its key go together: --tls-cert FILE --tls-key FILE.",
      });
      return "";
    }
    try {
      return readFileSync(file, "utf8");
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      problems.push({
        code: "file-unreadable",
        path: `/${name}`,
        message: `${JSON.stringify(file)} cannot be read (${code}).`,
        hint: "Name a file in PEM form that this user may read.",
      });
      return "";
    }
  };
  const tls = { cert: read("TLS_CERT", cert), key: read("TLS_KEY", key) };
  if (problems.length === 0) problems.push(...checkPair(tls));
  if (problems.length > 0) throw new InputError(problems);
  return tls;
}

function checkPair(tls: Tls): readonly Problem[] {
  try {
    createSecureContext(tls);
    return [];
  } catch (error) {
    const message = `Certificate and key cannot be used: ${(error as Error).message}.`;
    const hint = "Take a certificate in PEM form and the key that belongs to it.";
    return [{ code: "tls-unusable", path: "/TLS_CERT", message, hint }];
  }
}

function builtPage(): string {
  return fileURLToPath(new URL("../../web/dist", import.meta.url));
}
