// The words of the drive answer, which stands on every screen of a case and so comes before all advice.

export const DRIVE = {
  title: "May it be driven?",
  ask: "May it be driven? Look at the warning lamp first.",
  askLink: "What does the lamp do?",
  more: "Why, and what to do",
  unknown:
    "The page cannot work out whether it may be driven. Take that for a no until somebody has looked at it.",
  nothing: "Nothing answered so far speaks against driving with care.",
};
