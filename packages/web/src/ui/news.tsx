// What the page has to say, whatever is on the screen: that it cannot keep the case, and what has happened meanwhile.
import type { VNode } from "preact";
import { NEWS } from "../parts.ts";
import { openCase } from "../state/case.ts";
import { storeTrouble, tabNews } from "../state/keep.ts";
import { saveCaseFile } from "../state/save-file.ts";
import { update } from "../state/update.ts";
import { ANSWERS, STORE } from "../text/en.ts";
import { Lazy } from "./lazy.tsx";

export function PageNews(): VNode {
  return (
    <>
      {storeTrouble.value && (
        <p class="trouble" role="alert">
          {STORE[storeTrouble.value]}{" "}
          {openCase.value && (
            <button type="button" class="quiet" onClick={saveCaseFile}>
              {ANSWERS.save}
            </button>
          )}
        </p>
      )}
      <div role="status">
        {(tabNews.value || update.value === "waiting") && <Lazy entry={NEWS} />}
      </div>
    </>
  );
}
