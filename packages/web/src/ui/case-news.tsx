// What the page has to say: that it cannot keep the case, that another tab wrote it, that a new version has come.
import type { ComponentChildren, VNode } from "preact";
import { openCase } from "../state/case.ts";
import { storeTrouble, tabNews } from "../state/keep.ts";
import { saveCaseFile } from "../state/save-file.ts";
import { reloadToNew, update } from "../state/update.ts";
import { ANSWERS } from "../text/en.ts";
import { NEWS, STORE } from "../text/en-news.ts";

function CaseNews(): VNode {
  const [trouble, told] = [storeTrouble.value, tabNews.value];
  return (
    <>
      {trouble && (
        <p class="trouble">
          {STORE[trouble]} {openCase.value && <Act onClick={saveCaseFile}>{ANSWERS.save}</Act>}
        </p>
      )}
      {told && (
        <p class="trouble">
          {NEWS[told.kind]}
          {told.clashes.length > 0 && ` ${told.clashes.join(", ")}.`}{" "}
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

export { CaseNews as Screen };
