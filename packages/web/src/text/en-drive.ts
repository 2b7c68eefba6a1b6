// The words of the drive answer, which stands on every screen of a case and so comes before all advice.

export const DRIVE = {
  title: "May it be driven?",
  ask: {
    lamp: "May it be driven? Look at the warning lamp first.",
    alarm: "May it be driven? Look round the car first.",
  },
  askLink: { lamp: "What does the lamp do?", alarm: "Petrol, smoke, heat, a bad noise?" },
  more: "Why, and what to do",
  unknown:
    "The page cannot work out whether it may be driven. Take that for a no until somebody has looked at it.",
  nothing: "Nothing answered so far speaks against driving with care.",
};
