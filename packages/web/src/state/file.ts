// A case file: what does it hold, or what is wrong with it? Written by `save-file.ts` or by hand.
import { InputError, type Problem } from "@half-order/core";
import { CASE_FILE } from "../text/en-file.ts";
import type { CaseDoc } from "./store.ts";

/** A case read from a file, or what is wrong with the file. */
export type FileReading = { readonly doc: CaseDoc } | { readonly problems: readonly Problem[] };

/** Reads a case file. The checks are loaded when they are first needed. */
export async function readCaseFile(file: Blob): Promise<FileReading> {
  let text: string;
  try {
    text = await file.text();
  } catch {
    // Such as a file that was moved away after it was chosen.
    const hint = CASE_FILE.notTextHint;
    return { problems: [{ code: "file-unreadable", path: "", message: CASE_FILE.notText, hint }] };
  }
  const { parseCase, parseJson } = await import("@half-order/core/wire");
  const { allFindings } = await import("./prose.ts");
  try {
    // Answers and repairs can be checked only against whole tables.
    await allFindings();
  } catch {
    const hint = CASE_FILE.noTablesHint;
    return { problems: [{ code: "tables-missing", path: "", message: CASE_FILE.noTables, hint }] };
  }
  try {
    const value = parseJson(text);
    const reading = parseCase(value);
    if ("problems" in reading) return reading;
    const { engine, ...rest } = reading.case;
    return { doc: { halfOrderCase: 1, ...rest, engine: shortened(value, engine) } };
  } catch (error) {
    if (error instanceof InputError) return { problems: error.problems };
    throw error;
  }
}

/** A known engine stays the id that it was written as. */
function shortened(value: unknown, engine: Exclude<CaseDoc["engine"], string>): CaseDoc["engine"] {
  const written = (value as { readonly engine?: unknown }).engine;
  return typeof written === "string" ? written : engine;
}

/** True of a file that holds no case at all, as opposed to one with something wrong in it. */
export function isNoCase(problems: readonly Problem[]): boolean {
  return problems.some(
    ({ code, path }) =>
      code.startsWith("json-") ||
      (code === "kind-wrong" && path === "") ||
      (code === "field-missing" && path === "/engine"),
  );
}
