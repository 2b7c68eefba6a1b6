// The words of the screens that stand beside a case: all cases, what is at hand, an engine of one's own.

export const CASES = {
  title: "Cases",
  help: "They are kept on this device alone.",
  none: "No case is kept on this device.",
  anew: "Begin another case",
  isOpen: "open now",
  rename: "Rename",
  name: "Name of the case",
  use: "Use this name",
  copy: "Copy",
  copyName: (name: string): string => `${name}, copy`,
  save: "Save as a file",
  remove: "Delete",
  removed: (name: string): string => `Deleted: ${name}.`,
  putBack: "Put it back",
  photosLeft: "Its photos could not be deleted from this device.",
  photosLost: "The case is back, but the device did not keep its photos once more.",
  pick: "Compare",
  picked: "Picked to compare",
  pickTwo: (n: number): string =>
    n === 0
      ? "To see two cases side by side, pick “Compare” at both."
      : "Pick one more to compare.",
  sideBySide: "See the two side by side",
};

export const DEMO = {
  title: "Invented engines",
  help: "None of them exists. Their names and figures are made up: never work on a real engine with them.",
  invented: "invented",
};

export const HAND = {
  title: "What you have at hand",
  help: "Checks and repairs are then chosen to suit. While nothing is ticked under a question, nothing is ruled out by it, but a spare rail or pack to try.",
  where: "Where is the car?",
  places: {
    roadside: "At the roadside",
    driveway: "At home, in a yard or drive",
    workshop: "In a workshop",
  } as Readonly<Record<string, string>>,
  tools: "What lies ready?",
  bareHands: "Nothing: bare hands only",
  car: "The car of this case",
  noPort: "It has no port for a code reader: lamp, codes and live data are then not asked for.",
  skill: "Who does it?",
  prices: "What does it cost you?",
  pricesHelp: "In your own money, roughly. Empty fields take usual proportions.",
  hourRate: "An hour of your own time",
  small: "Small parts, such as one plug",
  medium: "Middling parts, such as a set of plugs or one coil",
  large: "Large parts, such as a coil rail",
  callPrice: "Handing it to a professional",
  wrong: "Write a number, such as 25, or leave it empty.",
  kept: "Kept on this device, and with the open case.",
  notKept: "This device does not keep it: it holds until the page is closed.",
  done: "Done",
};

export const SKETCH = {
  title: "Your engine",
  name: "Name, if you like",
  cylinders: "Cylinders",
  layout: "Layout",
  layoutUnknown: "not known",
  ignition: "Spark from",
  order: "Firing order",
  orderHelp:
    "As in the manual, such as 1-3-4-2 or R1-L2-R2. Leave it empty when you don't know it.",
  intervals: "Crank degrees between firings",
  intervalsHelp: "Only when it fires unevenly, such as 90-150-90-150-90-150.",
  banks: "Banks, front to back",
  banksHelp: "Such as 1-3-5 / 2-4-6. Leave it empty for the usual ones.",
  use: "Use this engine",
  wrong: "This engine cannot be used yet",
  notPairable: (each: string, cap: string): string =>
    `Such coils fire two cylinders at once, and these need to fire a full turn apart, which not all of this engine do. Choose “${each}” or “${cap}”, or put the order and the number of cylinders right.`,
};

export const LINKED = {
  title: "A case from a link",
  help: "It becomes a case of its own on this device; the cases that are here stay as they are.",
  isHere:
    "This case is on this device already, just as the link holds it: that one is opened, and no second one is made.",
  open: "Open it",
  broken: "This link cannot be opened",
};
