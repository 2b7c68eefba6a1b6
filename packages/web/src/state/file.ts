// A case as a file: saved by the user's own hand, opened again here or by the command.
import type { Problem } from "@half-order/core";
import { ANSWERS, FILE } from "../text/en.ts";
import { openCase, profile } from "./case.ts";
import type { CaseDoc } from "./store.ts";

/** A case read from a file, or what is wrong with the file. */
export type FileReading = { readonly doc: CaseDoc } | { readonly problems: readonly Problem[] };

/** Reads a case file. The checks are loaded when they are first needed. */
export async function readCaseFile(file: Blob): Promise<FileReading> {
  let value: unknown;
  try {
    value = JSON.parse(await file.text());
  } catch (error) {
    const message = error instanceof SyntaxError ? FILE.notJson : FILE.notText;
    return { problems: [{ code: "file-unreadable", path: "", message, hint: "" }] };
  }
  const { parseCase } = await import("@half-order/core/wire");
  const reading = parseCase(value);
  if ("problems" in reading) return reading;
  const { engine, ...rest } = reading.case;
  return { doc: { halfOrderCase: 1, ...rest, engine: shortened(value, engine) } };
}

/** A known engine stays the id that it was written as. */
function shortened(value: unknown, engine: Exclude<CaseDoc["engine"], string>): CaseDoc["engine"] {
  const written = (value as { readonly engine?: unknown }).engine;
  return typeof written === "string" ? written : engine;
}

/** Hands the open case to the browser as a file to save. */
export function saveCaseFile(): void {
  const kept = openCase.value;
  if (!kept) return;
  const text = `${JSON.stringify(kept.doc, null, 2)}\n`;
  const address = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const link = document.createElement("a");
  link.href = address;
  const name = profile.value?.name ?? profile.value?.id ?? kept.id;
  link.download = ANSWERS.fileName(name.toLowerCase().replace(/[^a-z0-9]+/g, "-"));
  link.click();
  URL.revokeObjectURL(address);
}
