// The noise experiment of M. Henrion et al., "Why is diagnosis using belief networks insensitive to
// imprecision in probabilities?", UAI 1996 (arXiv 1302.3582), done over on networks of our own: their
// networks and tables were not at hand. One cause of 24, 40 yes/no findings by noisy-OR with six causes
// each, cases drawn from the clean network and answered by noisy copies of it.
//
// Ours to choose, as the abstract does not tell: causes drawn evenly between 1 and 5 in weight, links
// from five steps, leaks of .005 to .05, 35 of 100 findings looked at.
import {
  logLoss,
  meanProbabilityOfTruth,
  randomOf,
  topK,
} from "../../packages/core/dist/instrument/index.js";

const CAUSES = 24;
const FINDINGS = 40;
const CAUSES_OF_EACH = 6;
const LINKS = [0.1, 0.3, 0.5, 0.8, 0.95];
const LEAKS = [0.005, 0.05];
const LOOKED_AT = 0.35;
const NETWORKS = 4;
const CASES = 1500;
const COPIES = 10;
const LEAST = 1e-9;

/** By sigma (natural log-odds, on all numbers): P(true), top-1, top-3, nats. */
export function replicate(sigmas, seed) {
  const random = randomOf(seed);
  const networks = Array.from({ length: NETWORKS }, () => {
    const network = drawNetwork(random);
    return { network, cases: Array.from({ length: CASES }, () => drawCase(network, random)) };
  });
  return sigmas.map((sigma) => {
    const forecasts = networks.flatMap(({ network, cases }) =>
      Array.from({ length: sigma === 0 ? 1 : COPIES }, () => {
        const copy = noisy(network, sigma, random);
        return cases.map(({ truth, seen }) => ({ truth, probabilities: answer(copy, seen) }));
      }).flat(),
    );
    return {
      sigma,
      measured: [
        meanProbabilityOfTruth(forecasts),
        topK(forecasts, 1),
        topK(forecasts, 3),
        logLoss(forecasts).nats,
      ],
    };
  });
}

function drawNetwork(random) {
  const weights = Array.from({ length: CAUSES }, () => 1 + 4 * random.uniform());
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const links = Array.from({ length: FINDINGS }, () => {
    const row = new Float64Array(CAUSES);
    for (let left = CAUSES_OF_EACH; left > 0; ) {
      const cause = Math.floor(random.uniform() * CAUSES);
      if (row[cause] > 0) continue;
      row[cause] = LINKS[Math.floor(random.uniform() * LINKS.length)];
      left--;
    }
    return row;
  });
  const [low, high] = LEAKS;
  const leaks = links.map(() => low + (high - low) * random.uniform());
  return { priors: weights.map((weight) => weight / sum), links, leaks };
}

/** What is seen of the findings that were looked at: by finding true, false or not looked at. */
function drawCase({ priors, links, leaks }, random) {
  const truth = random.choice(priors);
  const seen = links.map((row, f) => {
    if (random.uniform() >= LOOKED_AT) return undefined;
    return random.uniform() < chanceOf(row[truth], leaks[f]);
  });
  return { truth, seen };
}

function chanceOf(link, leak) {
  return 1 - (1 - leak) * (1 - link);
}

/** Posterior of the causes, exactly one of which is true. */
function answer({ priors, links, leaks }, seen) {
  const weights = priors.map((prior, cause) =>
    links.reduce((product, row, f) => {
      if (seen[f] === undefined) return product;
      const chance = chanceOf(row[cause], leaks[f]);
      return product * (seen[f] ? chance : 1 - chance);
    }, prior),
  );
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return weights.map((weight) => weight / sum);
}

/** Every number moved in its log-odds; no link stays no link. */
function noisy({ priors, links, leaks }, sigma, random) {
  const move = (p) => {
    if (p === 0 || sigma === 0) return p;
    const odds = (p / (1 - p)) * Math.exp(sigma * random.normal());
    return Math.min(1 - LEAST, Math.max(LEAST, odds / (1 + odds)));
  };
  return {
    priors: priors.map(move),
    links: links.map((row) => row.map(move)),
    leaks: leaks.map(move),
  };
}
