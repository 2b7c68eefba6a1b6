// What a source file imports, read from its text: enough for the walls, since the house style allows
// only plain import and export lines.
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, posix, relative, sep } from "node:path";

const root = join(import.meta.dirname, "../..");

export interface Import {
  /** As written: `../engine/place.ts`, `zod`. */
  readonly of: string;
  readonly isType: boolean;
  /** Path from the root of the repository; undefined for a package. */
  readonly file: string | undefined;
}

export interface Source {
  /** Path from the root of the repository, with slashes. */
  readonly file: string;
  readonly text: string;
  readonly imports: readonly Import[];
}

/** All .ts and .tsx files of the packages, without what is built or installed. */
export function packageSources(): readonly Source[] {
  const folder = join(root, "packages");
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((file) => /\.tsx?$/.test(file))
    .filter((file) => !/(^|[\\/])(node_modules|dist)[\\/]/.test(file))
    .map((file) => relative(root, join(folder, file)).split(sep).join("/"))
    .sort()
    .map((file) => {
      const text = readFileSync(join(root, file), "utf8");
      return { file, text, imports: importsOf(file, text) };
    });
}

const STATEMENT =
  /^[ \t]*(?:import|export)\s+(type\s+)?(?:[\w*{][^;"']*?\sfrom\s+)?["']([^"']+)["']/gm;
const DYNAMIC = /\bimport\(\s*["']([^"']+)["']/g;

export function importsOf(file: string, text: string): readonly Import[] {
  const code = withoutComments(text);
  const make = (of: string, isType: boolean): Import => ({
    of,
    isType,
    file: of.startsWith(".") ? posix.join(dirname(file), of) : undefined,
  });
  return [
    ...[...code.matchAll(STATEMENT)].map(([, type, of = ""]) => make(of, type !== undefined)),
    ...[...code.matchAll(DYNAMIC)].map(([, of = ""]) => make(of, false)),
  ];
}

export function withoutComments(text: string): string {
  return text.replace(
    /("(?:\\.|[^"\\\n])*")|\/\*[\s\S]*?\*\/|\/\/[^\n]*/g,
    (_, quoted) => quoted ?? "",
  );
}

/** Code alone: neither comments nor quoted text. */
export function codeOf(text: string): string {
  return withoutComments(text).replace(/"(?:\\.|[^"\\\n])*"/g, '""');
}
