// A case as it is saved, sent or written by hand: an engine and what was found on it.
import { z } from "zod";
import { checkFindings } from "../compile/check-finding.ts";
import { candidateEngines } from "../engine/candidates.ts";
import type { EngineProfile } from "../engine/profile.ts";
import { allProfiles, profileById } from "../engine/profile-library.ts";
import type { AtHand, Finding, RepairDone } from "../knowledge/answer.ts";
import { nearest } from "../units/nearest.ts";
import { InputError, type Problem, pointer } from "../units/problem.ts";
import { findingSchema } from "./finding.ts";
import { profileSchema } from "./profile.ts";
import { readShape } from "./shape.ts";
import { atHandSchema, repairDoneSchema } from "./work.ts";

export const CASE_VERSION = 1;

/** What a case holds beside engine and findings; all of it may be left out. */
interface Beside {
  readonly title?: string;
  readonly note?: string;
  /** What was mended, in the order in which it was done. */
  readonly repairs?: readonly RepairDone[];
  readonly atHand?: AtHand;
  /** ISO 8601: when the engine was believed to be mended. */
  readonly closed?: string;
}

/** A case in the form in which it is written: the engine may be the id of a known one. */
export interface CaseDocument extends Beside {
  readonly halfOrderCase?: typeof CASE_VERSION;
  readonly engine: string | EngineProfile;
  readonly findings: readonly Finding[];
}

/** A case that can be ranked: its engine is known and its findings make sense on it. */
export interface Case extends Beside {
  readonly engine: EngineProfile;
  readonly findings: readonly Finding[];
}

const fields = {
  halfOrderCase: z
    .literal(CASE_VERSION, {
      error: `Write ${CASE_VERSION}, the only version of the format so far, or leave it out; a case from a newer program needs a newer program to read it.`,
    })
    .meta({ description: "Version of this format; 1 unless given" })
    .exactOptional(),
  title: z.string().max(200).exactOptional(),
  note: z.string().max(10_000).exactOptional(),
  engine: z.union([z.string().max(80), profileSchema]).meta({
    description: "The id of an engine that comes with the library, or a profile",
    examples: ["generic.i4.1342.rail", { cylinders: 4, ignition: "rail" }],
  }),
  findings: z
    .array(findingSchema)
    .max(1000)
    .meta({
      description: "What was found; an empty list when nothing is known yet",
      examples: [[{ finding: "lamp", answer: "steady" }]],
    }),
  repairs: z
    .array(repairDoneSchema)
    .max(200)
    .meta({
      description: "What was mended, in the order in which it was done",
      examples: [[{ repair: "repair.plug-set", result: "same" }]],
    })
    .exactOptional(),
  atHand: atHandSchema.exactOptional(),
  closed: z
    .string()
    .max(40)
    .meta({
      description: "ISO 8601: when the engine was believed to be mended",
      examples: ["2026-05-01T09:30:00Z"],
    })
    .exactOptional(),
};

export const caseSchema: z.ZodType<CaseDocument, CaseDocument> = z.strictObject(fields).meta({
  id: "Case",
  description: "An engine and what was found on it",
  examples: [
    {
      halfOrderCase: CASE_VERSION,
      engine: "generic.i4.1342.rail",
      findings: [{ finding: "codes", answer: ["P0302"] }],
    },
  ],
});

/** A case and the fault whose ledger is wanted. */
export interface WhyDocument extends CaseDocument {
  readonly fault: string;
  readonly place: string;
}

export const whySchema: z.ZodType<WhyDocument, WhyDocument> = z
  .strictObject({
    ...fields,
    fault: z
      .string()
      .max(80)
      .meta({
        description: "Id of the fault, as a ranking gives it",
        examples: ["coil.half-dead"],
      }),
    place: z
      .string()
      .max(80)
      .meta({
        description: "Place of the fault, as a ranking gives it",
        examples: ["coil 2+5"],
      }),
  })
  .meta({ id: "WhyRequest", description: "A case and the fault whose ledger is wanted" });

/** What became of a case: it can be ranked, or these things are wrong with it. */
export type CaseReading = { readonly case: Case } | { readonly problems: readonly Problem[] };

/** Reads a saved case, e.g. parsed JSON. Problems point into the value by JSON Pointer. */
export function parseCase(value: unknown): CaseReading {
  const reading = readShape(caseSchema, value);
  return "problems" in reading ? reading : resolveCase(reading.value);
}

/** Finds the engine of a well-formed case and checks that engine and findings make sense. */
export function resolveCase({ halfOrderCase, engine, ...rest }: CaseDocument): CaseReading {
  const profile = typeof engine === "string" ? profileById(engine) : engine;
  if (!profile) return { problems: [unknownEngine(String(engine))] };
  const problems = checkCase(profile, rest.findings);
  if (problems.length > 0) return { problems };
  return { case: { ...rest, engine: profile } };
}

/** The findings are judged against the engine, so only once that is sound. */
function checkCase(profile: EngineProfile, findings: readonly Finding[]): readonly Problem[] {
  const ofEngine = checkEngine(profile);
  if (ofEngine.length > 0) return under("engine", ofEngine);
  return under("findings", checkFindings(profile, findings));
}

/** Sound, and of a kind of which some firing order is known: all that a ranking needs. */
function checkEngine(profile: EngineProfile): readonly Problem[] {
  try {
    candidateEngines(profile);
    return [];
  } catch (error) {
    if (error instanceof InputError) return error.problems;
    throw error;
  }
}

function under(field: string, problems: readonly Problem[]): readonly Problem[] {
  return problems.map((problem) => ({ ...problem, path: pointer(field) + problem.path }));
}

function unknownEngine(id: string): Problem {
  const ids = allProfiles().flatMap((profile) => profile.id ?? []);
  const close = nearest(id, ids, Number.POSITIVE_INFINITY).slice(0, 3);
  return {
    code: "engine-unknown",
    path: pointer("engine"),
    message: `No engine has the id ${JSON.stringify(id)}.`,
    hint: `The nearest are ${close.join(", ")}; a profile can be written in its place.`,
  };
}
