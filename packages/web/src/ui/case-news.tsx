// What has happened meanwhile: another tab wrote this case, or a new version of the page has come.
import type { ComponentChildren, VNode } from "preact";
import { tabNews } from "../state/keep.ts";
import { reloadToNew, update } from "../state/update.ts";
import { NEWS } from "../text/en-news.ts";

function CaseNews(): VNode {
  const told = tabNews.value;
  return (
    <>
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
