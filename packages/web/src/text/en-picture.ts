// The words of the drawings beside a ranking.

/** Of a cylinder, for who does not see the dial. */
export const DIAL = {
  cylinder: (name: string, angle: number): string => `Cylinder ${name} fires at ${angle}°`,
  companion: (name: string): string => `opposite ${name}`,
  sharesCoil: (names: string): string => `on one coil with ${names}`,
  throughDistributor: "One coil serves all cylinders in turn, through the distributor.",
  misses: (chance: string): string => `misses: ${chance}`,
  /** While several firing orders may be. */
  vague: "The firing order is not known.",
  drawnAs: (order: string, chance: string | undefined): string =>
    chance === undefined ? `Drawn as ${order}.` : `Drawn as ${order}: ${chance}.`,
};

export const BLOCK = {
  title: "As it stands in the car, front on the left",
  atRandom: (chance: string): string => `All or changing cylinders: ${chance}.`,
  noMisfire: (chance: string): string => `No cylinder really misses: ${chance}.`,
  key: "How to read it",
  keyLines: [
    [
      "A disc is a cylinder",
      "It fills as high as the chance that it misses; its rim is its own parts.",
    ],
    ["A spoke is a leg", "The way to one plug: boot, spring, plug. A jacket round it is a cable."],
    ["A bar or a stroke is a coil", "A bar through the hub fires the two cylinders at its ends."],
    ["The ring of the hub is a connector", "A whole ring feeds every coil."],
    [
      "A tie outside the discs is a gasket land",
      "between two cylinders that are neighbours in the block.",
    ],
    [
      "The circle through the discs is a set",
      "like parts that age together. Arcs outside are a bank, the ring of degrees is the whole engine.",
    ],
    [
      "Thicker and coloured is more suspect",
      "Tap a mark to see the fault, or a fault to see its mark.",
    ],
  ] as readonly (readonly [string, string])[],
};
