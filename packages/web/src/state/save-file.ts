// A case as a file, saved by the user's own hand; opened again here or by the command. Part of the first load,
// so that it can be done when nothing else can.
import { sayCase } from "../text/answer.ts";
import { openCase } from "./case.ts";
import type { KeptCase } from "./store.ts";

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
  link.download = fileName(plain.replace(/^-|-$/g, "") || kept.id);
  link.click();
  URL.revokeObjectURL(address);
}

function fileName(name: string): string {
  return `half-order-${name}.json`;
}
