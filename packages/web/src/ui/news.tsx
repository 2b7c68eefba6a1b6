// What the page has to say, whatever is on the screen: that it cannot keep the case, that another tab
// wrote it, that a new version has come.
import type { ComponentChildren, VNode } from "preact";
import { openCase } from "../state/case.ts";
import { storeTrouble, tabNews } from "../state/keep.ts";
import { saveCaseFile } from "../state/save-file.ts";
import { reloadToNew, update } from "../state/update.ts";
import { ANSWERS, NEWS, STORE } from "../text/en.ts";

export function PageNews(): VNode {
  return (
    <>
      {storeTrouble.value && (
        <p class="trouble" role="alert">
          {STORE[storeTrouble.value]}{" "}
          {openCase.value && <Act onClick={saveCaseFile}>{ANSWERS.save}</Act>}
        </p>
      )}
      <div role="status">
        {tabNews.value && (
          <p class="trouble">
            {NEWS[tabNews.value.kind]}
            {tabNews.value.clashes.length > 0 && ` ${tabNews.value.clashes.join(", ")}.`}{" "}
            <Act
              onClick={() => {
                tabNews.value = undefined;
              }}
            >
              {NEWS.seen}
            </Act>
          </p>
        )}
        {update.value === "waiting" && (
          <p class="trouble is-quiet">
            {NEWS.version} <Act onClick={reloadToNew}>{NEWS.reload}</Act>
          </p>
        )}
      </div>
    </>
  );
}

function Act({ children, onClick }: { children: ComponentChildren; onClick: () => void }): VNode {
  return (
    <button type="button" class="quiet" onClick={onClick}>
      {children}
    </button>
  );
}
