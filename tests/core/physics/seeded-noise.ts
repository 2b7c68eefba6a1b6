// Draws for tests that need chance: the same for the same seed.

/** Numbers with mean 0 and spread 1: sums of twelve steps of Lehmer's generator (Park & Miller, 1988). */
export function seededNoise(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  return () => Array.from({ length: 12 }, uniform).reduce((sum, u) => sum + u, -6);
}
