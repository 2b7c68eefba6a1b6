// A case as a file: saved by the user's own hand, opened again here or by the command.
import { InputError, type Problem } from "@half-order/core";
import { sayCase } from "../text/answer.ts";
import { ANSWERS, FILE } from "../text/en.ts";
import { openCase } from "./case.ts";
import type { CaseDoc, KeptCase } from "./store.ts";

/** A case read from a file, or what is wrong with the file. */
export type FileReading = { readonly doc: CaseDoc } | { readonly problems: readonly Problem[] };

/** Reads a case file. The checks are loaded when they are first needed. */
export async function readCaseFile(file: Blob): Promise<FileReading> {
  let text: string;
  try {
    text = await file.text();
  } catch {
    // Such as a file that was moved away after it was chosen.
    const hint = FILE.notTextHint;
    return { problems: [{ code: "file-unreadable", path: "", message: FILE.notText, hint }] };
  }
  const { parseCase, parseJson } = await import("@half-order/core/wire");
  const { allFindings } = await import("./prose.ts");
  try {
    // Answers and repairs can be checked only against whole tables.
    await allFindings();
  } catch {
    const hint = FILE.noTablesHint;
    return { problems: [{ code: "tables-missing", path: "", message: FILE.noTables, hint }] };
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

/** Hands the open case to the browser as a file to save. */
export function saveCaseFile(): void {
  if (openCase.value) saveAsFile(openCase.value);
}

export function saveAsFile(kept: KeptCase): void {
  const text = `${JSON.stringify(kept.doc, null, 2)}\n`;
  const address = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const link = document.createElement("a");
  link.href = address;
  const plain = sayCase(kept.doc)
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-");
  link.download = ANSWERS.fileName(plain.replace(/^-|-$/g, "") || kept.id);
  link.click();
  URL.revokeObjectURL(address);
}
