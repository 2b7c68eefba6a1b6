// A case as it is saved, sent or written by hand: an engine and what was found on it.
import { z } from "zod";
import { checkFindings } from "../compile/check-finding.ts";
import { checkRepairs } from "../compile/repair.ts";
import { type CandidateEngine, candidateEngines } from "../engine/candidates.ts";
import type { EngineProfile } from "../engine/profile.ts";
import { profileById } from "../engine/profile-library.ts";
import type { AtHand, Finding, RepairDone } from "../knowledge/answer.ts";
import { KNOWLEDGE } from "../knowledge/knowledge.ts";
import { checkRecord, type PlugRecord } from "../service/record.ts";
import { type Problem, pointer } from "../units/problem.ts";
import { caseProblems, checkEngine, unknownEngine } from "./case-problem.ts";
import { findingSchema } from "./finding.ts";
import { profileSchema } from "./profile.ts";
import { plugRecordSchema } from "./record.ts";
import { readShape } from "./shape.ts";
import { lineSchema, proseSchema } from "./text.ts";
import { atHandSchema, repairDoneSchema, type WorkBook, workBookSchema } from "./work.ts";

export const CASE_VERSION = 1;

/** What a case holds beside engine and findings; all of it may be left out. */
interface Beside {
  readonly title?: string;
  readonly note?: string;
  /** What was mended, in the order in which it was done. */
  readonly repairs?: readonly RepairDone[];
  readonly atHand?: AtHand;
  /** Sets of plugs that were taken out, in the order of time. */
  readonly records?: readonly PlugRecord[];
  /** What is off the engine, what is put back, how it was proven, what it took. */
  readonly work?: WorkBook;
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

/** The fields of a case, for messages that hold one. */
export const caseFields = {
  halfOrderCase: z
    .literal(CASE_VERSION, {
      error: `Write ${CASE_VERSION}, the only version of the format so far, or leave it out; a case from a newer program needs a newer program to read it.`,
    })
    .meta({ description: "Version of this format; 1 unless given" })
    .exactOptional(),
  title: lineSchema(200).exactOptional(),
  note: proseSchema(10_000).exactOptional(),
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
  records: z
    .array(plugRecordSchema)
    .max(200)
    .meta({
      description: "Sets of plugs that were taken out, in the order of time",
      examples: [
        [{ when: "2026-05-01", odometerKm: 120_000, plugs: [{ cylinder: 1, gapMm: 1.15 }] }],
      ],
    })
    .exactOptional(),
  work: workBookSchema.exactOptional(),
  closed: z
    .string()
    .max(40)
    .meta({
      description: "ISO 8601: when the engine was believed to be mended",
      examples: ["2026-05-01T09:30:00Z"],
    })
    .exactOptional(),
};

export const caseSchema: z.ZodType<CaseDocument, CaseDocument> = z.strictObject(caseFields).meta({
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
    ...caseFields,
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
  if ("problems" in reading) return { problems: caseProblems(value, reading.problems) };
  return resolveCase(reading.value);
}

/** Finds the engine of a well-formed case and checks that engine and findings make sense. */
export function resolveCase(document: CaseDocument): CaseReading {
  const { halfOrderCase, engine, ...rest } = document;
  const profile = typeof engine === "string" ? profileById(engine) : engine;
  const problems = profile ? checkCase(profile, rest) : [unknownEngine(String(engine))];
  if (!profile || problems.length > 0) return { problems: caseProblems(document, problems) };
  return { case: { ...rest, engine: profile } };
}

/** Findings, repairs and records are judged against the engine, so only once that is sound. */
function checkCase(
  profile: EngineProfile,
  { findings, repairs = [], records = [] }: Omit<CaseDocument, "engine">,
): readonly Problem[] {
  const ofEngine = checkEngine(profile);
  if (ofEngine.length > 0) return under(["engine"], ofEngine);
  const [{ engine }] = candidateEngines(profile) as [CandidateEngine];
  return [
    ...under(["findings"], checkFindings(profile, findings)),
    ...under(["repairs"], checkRepairs(engine, repairs, KNOWLEDGE)),
    ...records.flatMap((record, i) => under(["records", i], checkRecord(profile, record))),
  ];
}

function under(at: readonly (string | number)[], problems: readonly Problem[]): readonly Problem[] {
  return problems.map((problem) => ({ ...problem, path: pointer(...at) + problem.path }));
}
