// The words of two cases side by side.

export const COMPARE = {
  title: "Two cases side by side",
  gone: "One of these cases is no longer on this device.",
  all: "All cases",
  first: "What it probably is",
  before: "Before any answer",
  repairs: "What was mended",
  noRepairs: "Nothing yet.",
  differ: "Answers that differ",
  none: "They answer every question alike.",
  alike: (n: number): string => (n === 1 ? "1 answer is the same." : `${n} answers are the same.`),
  notAnswered: "not answered",
  open: "Open this case",
  closed: "believed to be mended",
  broken: "This case could not be weighed.",
};
