// Random planning problems for the bench: causes, tests and repairs of many kinds, from a stream of chance.

/** Costs spread as in the published comparisons: many small ones, a few large. */
const COSTS = [1, 2, 3, 5, 8, 13];

/**
 * A problem with one repair of its own for each cause and some that mend several; half of the tests are
 * sharp, half now and then give the wrong answer. `random` gives numbers in 0..1.
 */
export function planProblem(random, { causes, tests, repairs, outcomes = 3, canCall = true }) {
  const pick = (list) => list[Math.floor(random() * list.length)];
  const weight = Array.from({ length: causes }, () => random() ** 2 + 0.02);
  const total = weight.reduce((sum, w) => sum + w, 0);
  return {
    chance: Float64Array.from(weight, (w) => w / total),
    tests: Array.from({ length: tests }, () => ({
      cost: pick(COSTS) / 2,
      outcomes: outcomeRows(random, causes, 2 + Math.floor(random() * (outcomes - 1))),
    })),
    repairs: Array.from({ length: repairs }, (_, r) => ({
      cost: 2 * pick(COSTS),
      cures: curesOf(random, causes, (s) => s % repairs === r % causes),
    })),
    ...(canCall ? { callCost: 40 + 40 * random() } : {}),
  };
}

function outcomeRows(random, causes, outcomes) {
  const rows = Array.from({ length: outcomes }, () => new Float64Array(causes));
  const isNoisy = random() < 0.5;
  const alike = isNoisy ? 0.02 + 0.2 * random() : 0;
  for (let s = 0; s < causes; s++) {
    const usual = Math.floor(random() * outcomes);
    for (const [o, row] of rows.entries()) {
      row[s] = alike / outcomes + (o === usual ? 1 - alike : 0);
    }
  }
  return rows;
}

/** Its own causes nearly always, a few others often. */
function curesOf(random, causes, isOwn) {
  return Float64Array.from({ length: causes }, (_, s) => {
    if (isOwn(s)) return random() < 0.5 ? 1 : 0.9;
    return random() < 1.5 / causes ? 0.6 + 0.4 * random() : 0;
  });
}
