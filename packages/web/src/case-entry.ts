// The screen of a case, apart from the table of screens, which it shows beside itself.
import type { ScreenEntry } from "./screens.ts";

/** Picture, ranking and next step: what a case shows when no screen of its own is asked for. */
export const CASE: ScreenEntry = {
  frame: "wide",
  load: () => import("./screen/case.tsx"),
};
