// The words of the screens that list what was answered and what can be: the answers, all findings, the way to
// everything else.

export const LISTED = {
  title: "Answers",
  none: "No answer yet.",
  /** Of a first question without an answer: nobody could tell, or it was passed over. */
  notKnown: "Can't tell, or not asked yet",
  change: "Change",
  remove: "Remove",
  port: "Port for a code reader",
  noPort: "The car has none",
};

export const TOPICS = {
  help: "In any order, at any time.",
  topics: {
    complaint: "Complaint",
    "lamp and codes": "Lamp and codes",
    "when it happens": "When it happens",
    "sound, smell, smoke": "Sound, smell, smoke",
    history: "History",
    "plugs and wells": "Plugs and wells",
    "live data": "Live data",
    measured: "Measured",
    tried: "Tried",
  } as Readonly<Record<string, string>>,
  given: "answered",
};

export const MORE = {
  title: "More",
  back: "Back to the case",
  answers: "All answers",
  repairs: "Repairs done",
  record: "Plugs that came out",
  handOver: "Hand the case over",
  print: "Print",
  engine: "Change the engine",
  hand: "What you have at hand",
  lesson: "Break a part and watch",
  practice: "Look for a hidden fault",
  glossary: "Words of the trade",
  anew: "Another case",
};
