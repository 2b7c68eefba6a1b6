// Reads a case file and opens its case; what is wrong with a broken one comes back, to be shown.
import type { VNode } from "preact";
import { takeOnce } from "../hand-over/take-once.ts";
import { isNoCase, readCaseFile } from "../state/file.ts";
import { CASE_FILE } from "../text/en-file.ts";
import { Problems } from "./problems.tsx";

export async function openFile(file: File): Promise<VNode | undefined> {
  const read = await readCaseFile(file);
  if (!("doc" in read)) {
    const title = isNoCase(read.problems) ? CASE_FILE.noCase : CASE_FILE.title;
    return <Problems title={title} todo={CASE_FILE.todo} of={read.problems} />;
  }
  await takeOnce(read.doc);
  return undefined;
}
