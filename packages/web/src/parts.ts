// What is fetched inside a screen that is fetched itself: apart from the table of screens, which names those screens.
import type { ScreenEntry } from "./screens.ts";

/** Stands where an address leads to nothing. */
export const NOWHERE: ScreenEntry = {
  frame: "outside",
  load: async () => (await import("./screen/nowhere.tsx")).Nowhere,
};

/** Stands below the kinds of ignition when nobody can tell. */
export const IGNITION_GUESS: ScreenEntry = {
  frame: "outside",
  load: async () => (await import("./ui/ignition-guess.tsx")).IgnitionGuess,
};

/** Stands above the first question. */
export const PLACE_ASKED: ScreenEntry = {
  frame: "panel",
  load: async () => (await import("./ui/place.tsx")).Place,
};

/** Stands in the question screen where it is asked of each part. */
export const PART_QUESTION: ScreenEntry = {
  frame: "panel",
  load: async () => (await import("./ui/part-question.tsx")).PartQuestion,
};

/** Stands among the notes of a ranking while the firing order is not known. */
export const ORDERS: ScreenEntry = {
  frame: "panel",
  load: async () => (await import("./ui/orders.tsx")).OrdersOfRanking,
};
