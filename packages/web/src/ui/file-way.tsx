// Opens a case file of the device, and says where a broken one breaks.
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { takeCase } from "../state/case.ts";
import type { FileReading } from "../state/file.ts";
import { goTo } from "../state/route.ts";
import { clearView } from "../state/view.ts";
import { FILE, START } from "../text/en.ts";
import { Problems } from "./problems.tsx";

/** What reads a file is fetched when there is one. */
async function readCase(file: File): Promise<FileReading> {
  let reader: typeof import("../state/file.ts");
  try {
    reader = await import("../state/file.ts");
  } catch {
    return { problems: [{ code: "reader-missing", path: "", message: FILE.unread, hint: "" }] };
  }
  return reader.readCaseFile(file);
}

export function FileWay(): VNode {
  const [reading, setReading] = useState<FileReading | undefined>();
  const open = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setReading(undefined);
    const read = await readCase(file);
    setReading(read);
    if (!("doc" in read)) return;
    clearView();
    takeCase(read.doc);
    goTo("ranking");
  };
  return (
    <>
      <label class="file">
        <span>
          {START.file}
          <small>{START.fileMore}</small>
        </span>
        <input
          type="file"
          class="vh"
          accept=".json,application/json"
          onChange={(event) => {
            const input = event.currentTarget;
            // The same file may be chosen again after it was mended.
            void open(input.files?.[0]).finally(() => {
              input.value = "";
            });
          }}
        />
      </label>
      {reading && "problems" in reading && (
        <Problems title={FILE.title} todo={FILE.todo} of={reading.problems} />
      )}
    </>
  );
}
