// Which answers of a case keep it from being ranked, and what else is wrong with it?
import { checkFindings, type EngineProfile, type Finding, type Problem } from "@half-order/core";

export interface Parted {
  /** The answers that cannot be used on this engine, each once. */
  readonly answers: readonly Finding[];
  /** What is wrong with the engine, or with what was mended. */
  readonly others: readonly Problem[];
}

/** Parts what is wrong with a case into answers to look at again and all else. */
export function partedProblems(
  of: readonly Problem[],
  profile: EngineProfile,
  findings: readonly Finding[],
): Parted {
  const wrong = checkFindings(profile, findings).filter(({ path }) => /^\/\d+\//.test(path));
  const places = new Set(wrong.map(({ path }) => Number(path.split("/")[1])));
  const told = new Set(wrong.map(({ path, message }) => `${path} ${message}`));
  return {
    answers: findings.filter((_, place) => places.has(place)),
    others: of.filter(({ path, message }) => !told.has(`${path} ${message}`)),
  };
}
