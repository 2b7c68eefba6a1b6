// The words of where the car stands, and with what.

export const PLACE = {
  where: "Where is the car?",
  places: { roadside: "Roadside", driveway: "At home", workshop: "Workshop" },
  alarm: "Petrol, smoke, heat or a bad noise? Say so first",
  tools: "What is with you?",
  bare: "Bare hands",
  all: "More tools",
  car: "An older car?",
  noPort: "No port for a code reader",
  few: { light: "Light", "hand tools": "Tools", "code reader": "Code reader" },
};
