// What is fetched inside a screen that is fetched itself: apart from the table of screens, which names those screens.
import type { ScreenEntry } from "./screens.ts";

/** Stands where an address leads to nothing. */
export const NOWHERE: ScreenEntry = {
  frame: "outside",
  load: () => import("./screen/nowhere.tsx"),
};

/** Stands below the kinds of ignition when nobody can tell. */
export const IGNITION_GUESS: ScreenEntry = {
  frame: "outside",
  load: () => import("./ui/ignition-guess.tsx"),
};

/** Stands on the first screen where cases are kept. */
export const SHELF: ScreenEntry = {
  frame: "outside",
  load: () => import("./ui/shelf.tsx"),
};

/** Stands above the first question. */
export const PLACE_ASKED: ScreenEntry = {
  frame: "panel",
  load: () => import("./ui/place.tsx"),
};

/** Stands below the first question. */
export const PORT_ASKED: ScreenEntry = {
  frame: "panel",
  load: () => import("./ui/place.tsx").then(({ Port }) => ({ Screen: Port })),
};

/** Stands below it where a distributor tells that the engine may be older. */
export const OLDER_ASKED: ScreenEntry = {
  frame: "panel",
  load: () => import("./ui/older.tsx"),
};

/** Stands in the place of the drive answer once a repair seems to have cured. */
export const REPAIRED: ScreenEntry = {
  frame: "panel",
  load: () => import("./ui/repaired.tsx"),
};

/** Stands in the question screen where it is asked of each part. */
export const PART_QUESTION: ScreenEntry = {
  frame: "panel",
  load: () => import("./ui/part-question.tsx"),
};

/** Stands among the notes of a ranking while the firing order is not known. */
export const ORDERS: ScreenEntry = {
  frame: "panel",
  load: () => import("./ui/orders.tsx"),
};

/** Stands in the place of a ranking that there cannot be. */
export const CASE_PROBLEMS: ScreenEntry = {
  frame: "panel",
  load: () => import("./ui/case-problems.tsx"),
};

/** Stands above every screen once another tab has written the open case, or a new version has come. */
export const NEWS: ScreenEntry = {
  frame: "outside",
  load: () => import("./ui/case-news.tsx"),
};
