// A case that comes to this device by link or file is taken in, the very same only once.
import { openCase, takeCase } from "../state/case.ts";
import { lookAtShelf, open, shelf } from "../state/keep.ts";
import { goTo } from "../state/route.ts";
import type { CaseDoc } from "../state/store.ts";
import { clearView } from "../state/view.ts";
import { sameCase } from "./same-case.ts";

/** Opens it, and makes no second one of the very same: by what is here by then, since another tab may have changed it. */
export async function takeOnce(doc: CaseDoc): Promise<void> {
  await lookAtShelf();
  const here = sameCase(doc, shelf.value);
  clearView();
  if (!here) takeCase(doc);
  else if (here.id !== openCase.value?.id) open(here);
  goTo("ranking");
}
