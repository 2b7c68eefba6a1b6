// The words of an address that leads to nothing.
import type { Missing } from "../state/missing.ts";

export const NOWHERE = {
  asked: "The address asks for",
  start: "To the start",
  missing: {
    page: ["There is no such page here", "The address may be misspelt, or cut off on its way."],
    case: [
      "No case is open on this device",
      "This page belongs to a case. Open one that is kept here, or begin a new one.",
    ],
    engine: [
      "The engine of this case is not known here",
      "The case names an engine that this page does not hold. All that was entered is kept. Begin another case and describe the engine, or open the case where it was made.",
    ],
    kind: [
      "No engine of this kind is known here",
      "Nothing fits that number of cylinders, that layout and that ignition together. Begin at the start again, or type an engine of your own there.",
    ],
    question: ["There is no such question", "All answers of the case are still there."],
    check: ["There is no such check", "All answers of the case are still there."],
    repair: ["There is no such repair", "All answers of the case are still there."],
  } satisfies Record<Missing, readonly [string, string]>,
};
