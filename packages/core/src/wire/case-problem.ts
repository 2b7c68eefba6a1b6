// Everything that is wrong with a case, told in one go: its shape, and the sense of whatever part of it has
// a shape that can be judged.
import { checkFindings } from "../compile/check-finding.ts";
import { candidateEngines } from "../engine/candidates.ts";
import type { EngineProfile } from "../engine/profile.ts";
import { allProfiles, profileById } from "../engine/profile-library.ts";
import type { Finding } from "../knowledge/answer.ts";
import { KNOWLEDGE } from "../knowledge/knowledge.ts";
import { nearest } from "../units/nearest.ts";
import { InputError, type Problem, pointer } from "../units/problem.ts";
import { profileSchema } from "./profile.ts";
import { readShape } from "./shape.ts";

/**
 * All problems of something that should be a case, those of its engine before those of its findings.
 * Anything that has neither engine nor findings brings only the problems of its shape.
 *
 * @param ofShape problems of its shape, as `readShape` gave them
 */
export function caseProblems(value: unknown, ofShape: readonly Problem[]): readonly Problem[] {
  if (typeof value !== "object" || value === null) return ofShape;
  const { engine, findings } = value as { readonly engine?: unknown; readonly findings?: unknown };
  const { profile, problems } = judgeEngine(engine);
  const known = new Set(ofShape.map(({ path }) => path));
  const ofFindings = (Array.isArray(findings) ? findings : []).flatMap((finding: unknown, i) =>
    judgeFinding(finding, profile).map((problem) => {
      return { ...problem, path: pointer("findings", i) + problem.path };
    }),
  );
  // What an answer should be is told better by its finding than by the shape of all answers.
  const better = new Set(ofFindings.map(({ path }) => path));
  const isTold = ({ code, path }: Problem): boolean => code === "kind-wrong" && better.has(path);
  const told = new Set(ofShape.filter(isTold).map(({ path }) => path));
  return [
    ...ofShape.filter(({ path }) => !told.has(path)).map(withoutExample),
    ...problems.filter(({ path }) => !known.has(path)),
    ...ofFindings.filter(({ path }) => !known.has(path) || told.has(path)),
  ]
    .map((problem) => ({ problem, at: orderOf(problem) }))
    .sort((a, b) => a.at - b.at)
    .map(({ problem }) => problem);
}

/** No example of an answer suits a finding that is not known. */
function withoutExample(problem: Problem): Problem {
  const isAnswer = /^\/findings\/\d+\/answer$/.test(problem.path);
  return isAnswer && problem.code === "kind-wrong" ? { ...problem, hint: ANY_ANSWER } : problem;
}

const ANY_ANSWER =
  "Write what the finding asks for: an option in quotes, a number, a list, or counts by cylinder.";

/** Findings in their order, all else before them. */
function orderOf({ path }: Problem): number {
  const [, number] = /^\/findings\/(\d+)/.exec(path) ?? [];
  return number === undefined ? -1 : Number(number);
}

interface Judged {
  /** The engine, where it is sound. */
  readonly profile?: EngineProfile;
  readonly problems: readonly Problem[];
}

/** An engine of a wrong shape has told its problems already. */
function judgeEngine(engine: unknown): Judged {
  if (typeof engine === "string") {
    const profile = profileById(engine);
    return profile ? { profile, problems: [] } : { problems: [unknownEngine(engine)] };
  }
  const reading = readShape(profileSchema, engine);
  if ("problems" in reading) return { problems: [] };
  const problems = checkEngine(reading.value);
  if (problems.length === 0) return { profile: reading.value, problems };
  return { problems: problems.map((each) => ({ ...each, path: pointer("engine") + each.path })) };
}

/** Sound, and of a kind of which some firing order is known: all that a ranking needs. */
export function checkEngine(profile: EngineProfile): readonly Problem[] {
  try {
    candidateEngines(profile);
    return [];
  } catch (error) {
    if (error instanceof InputError) return error.problems;
    throw error;
  }
}

/** An id that no engine has, and the nearest that some have. */
export function unknownEngine(id: string): Problem {
  const ids = allProfiles().flatMap((profile) => profile.id ?? []);
  const close = nearest(id, ids, Number.POSITIVE_INFINITY).slice(0, 3);
  return {
    code: "engine-unknown",
    path: pointer("engine"),
    message: `No engine has the id ${JSON.stringify(id)}.`,
    hint: `The nearest are ${close.join(", ")}; a profile can be written in its place.`,
  };
}

/** Problems of one finding; without a sound engine only those that no engine could mend. */
function judgeFinding(value: unknown, profile: EngineProfile | undefined): readonly Problem[] {
  if (typeof value !== "object" || value === null) return [];
  const finding = value as Finding;
  if (typeof finding.finding !== "string") return [];
  const kind = KNOWLEDGE.findings.get(finding.finding)?.kind;
  const problems = checkFindings(profile ?? ANY_ENGINE, [finding]).map((problem) => {
    return { ...problem, path: problem.path.replace(/^\/0/, "") };
  });
  if (profile) return problems;
  const isOfEngine = ({ code, path }: Problem): boolean =>
    NEEDS_ENGINE.has(code) || (kind === "counts" && path.startsWith("/answer/"));
  return problems
    .filter((problem) => !isOfEngine(problem))
    .map((problem) =>
      problem.code === "cylinder-missing" ? { ...problem, hint: ANY_NAME } : problem,
    );
}

/** Stands in for an engine that is not known: it has every cylinder that a code can name. */
const ANY_ENGINE: EngineProfile = { cylinders: 12, ignition: "rail" };
const NEEDS_ENGINE: ReadonlySet<string> = new Set(["cylinder-unknown", "finding-not-here"]);
const ANY_NAME = 'Write "cylinder" with its number or name.';
