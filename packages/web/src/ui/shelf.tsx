// The cases kept on this device that were changed last, on the first screen, and the way to all of them.
import type { VNode } from "preact";
import { open, shelf } from "../state/keep.ts";
import { at, goTo } from "../state/route.ts";
import { clearView } from "../state/view.ts";
import { sayCase } from "../text/answer.ts";
import { START } from "../text/en.ts";
import { KEPT } from "../text/en-kept.ts";
import { sayKept } from "../text/kept.ts";

/** Cases shown here; the others are on their own screen. */
const SHOWN = 3;

function Shelf(): VNode {
  return (
    <>
      <h2 class="minor">{KEPT.title}</h2>
      <ul class="links">
        {shelf.value.slice(0, SHOWN).map((kept) => (
          <li key={kept.id}>
            <button
              type="button"
              onClick={() => {
                clearView();
                open(kept);
                goTo("ranking");
              }}
            >
              {sayCase(kept.doc)}
              <small>{sayKept(kept)}</small>
            </button>
          </li>
        ))}
        <li>
          <a id="/cases" href={at("cases")}>
            {START.cases}
            <small>{KEPT.casesMore}</small>
          </a>
        </li>
      </ul>
    </>
  );
}

export { Shelf as Screen };
