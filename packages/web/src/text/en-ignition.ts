// The words for who cannot tell how the plugs get their spark.

export const IGNITION = {
  help: "Then look for two things. Cables: is there one to each plug, to every other plug, or none? And what do they come from, or what sits on the plugs? If the cover must stay on, take a coil on each plug: most engines of today have that. It can be changed later, under Answers, and no answer is lost.",
  guess: "Go on with a coil on each plug",
};
