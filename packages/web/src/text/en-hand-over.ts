// The words of the page that is handed on, and of the link that carries a case.
import type { RepairResult } from "@half-order/core";
import type { PackTrouble } from "../hand-over/pack.ts";

export const SHEET = {
  title: "Handing over",
  about: "A misfire or rough idle, as it stands",
  aboutMended: "A misfire or rough idle, and what mended it",
  on: (date: string): string => `as of ${date}`,
  noPort: "The car has no port for a code reader.",
  does: "What it does",
  checked: "What was checked",
  mended: "What was mended",
  plugs: "Plugs taken out",
  remains: "What remains likely",
  drives: "Proving drives:",
  before: "What such engines come in with: nothing was found yet",
  cautions: "Before a hand goes in",
  nothing: "Nothing yet.",
  notTried: "not tried yet",
  results: {
    cured: "then it ran well",
    better: "then it ran better",
    same: "it changed nothing",
    worse: "then it ran worse",
    "came-back": "it came back",
  } satisfies Record<RepairResult, string>,
  disagree:
    "Some of these findings contradict each other. Look at them again before any part is bought.",
  weighing: "Weighing …",
  note: "Note",
  closed: (date: string): string => `Believed mended on ${date}`,
  more: (n: number): string => `and ${n} more in the link`,
  dial: "The firing dial: once round is two turns of the crank, each cylinder where it fires. What is suspect is thick.",
  likeliestOrder: (order: string, words: string, percent: string): string =>
    `The likeliest is ${order}: ${words}, ${percent}.`,
  next: "Next plugs:",
  overrule:
    "The weights are estimates, not measurements. The vehicle maker's service manual, local rules and licensed technicians overrule this page.",
  scan: "The same case on a phone: point its camera here.",
  print: "Print this page",
  ways: "Ways to hand it on",
};

export const LINK = {
  title: "As a link",
  help: "The link holds the whole case in itself. It reaches nobody but those to whom you give it, and no server ever sees what is in it.",
  copy: "Copy the link",
  copied: "Copied.",
  notCopied: "This browser did not let the page copy. Mark the link and copy it by hand:",
  share: "Send it",
  shareTitle: "A case of Half-Order",
  notShared: "It was not sent.",
  size: (letters: string): string => `${letters} letters long`,
  packing: "Packing …",
  qr: "Point the camera of another phone here.",
  lean: "To stay readable it leaves out ticks, minutes and proving drives; the link and a case file hold them.",
  qrWords: "The link as a square of dots for the camera of a phone",
  tooLong: (bytes: string, most: string): string =>
    `This case is too long for a square of dots that a phone could read: ${bytes} bytes, and ${most} would go in. Send the link, or save the case as a file.`,
  failed: "The link could not be made.",
  noTables: [
    "The link is whole, but the page could not load what it needs to check the case.",
    "Go online, load the page again and open the link once more.",
  ] as const,
  trouble: {
    cut: [
      "The end of this link is missing.",
      "Ask for it once more; some programs cut long links. A case file is never cut.",
    ],
    damaged: [
      "This link was changed on its way.",
      "Ask for it once more, or for the case as a file.",
    ],
    newer: [
      "This link was made by a newer version of the page.",
      "Load the page again while you are online; then open the link.",
    ],
    browser: [
      "This browser is too old to unpack the link.",
      "Open it in another browser, or ask for the case as a file.",
    ],
    large: ["This link unpacks to more than any case holds.", "Do not trust it."],
  } satisfies Record<PackTrouble, readonly [string, string]>,
};
