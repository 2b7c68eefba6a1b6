// Opens a case file of the device, and says where a broken one breaks.
import type { VNode } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { LAZY, START } from "../text/en.ts";

export function FileWay(): VNode {
  const [told, setTold] = useState<VNode | undefined>();
  const open = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setTold(undefined);
    try {
      // What reads a file is fetched when there is one.
      const { openFile } = await import("./open-file.tsx");
      setTold(await openFile(file));
    } catch {
      setTold(
        <p class="caution" role="alert">
          {LAZY.failed} {LAZY.again}.
        </p>,
      );
    }
  };
  const ref = useRef<HTMLInputElement>(null);
  const take = (): void => {
    const input = ref.current;
    void open(input?.files?.[0]).finally(() => {
      // The same file may be chosen again after it was mended.
      if (input) input.value = "";
    });
  };
  // One may have been chosen while the scripts were still on their way.
  useEffect(take, []);
  return (
    <>
      <label class="file">
        <span>
          {START.file}
          <small>{START.fileMore}</small>
        </span>
        <input type="file" class="vh" accept=".json,application/json" ref={ref} onChange={take} />
      </label>
      {told}
    </>
  );
}
