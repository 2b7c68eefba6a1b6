// A workshop's own numbers as they are saved: an overlay over the tables that come with the library.
import { z } from "zod";
import { checkOverlay } from "../knowledge/check-overlay.ts";
import { KNOWLEDGE, type Knowledge } from "../knowledge/knowledge.ts";
import type { CheckChange, FaultChange, Overlay, RepairChange } from "../knowledge/schema.ts";
import type { Problem } from "../units/problem.ts";
import {
  faultSchema,
  groundsSchema,
  reachSchema,
  repairSchema,
  riskSchema,
  sharesSchema,
  signSchema,
  wearSchema,
} from "./catalogue.ts";
import { readShape } from "./shape.ts";
import { lineSchema } from "./text.ts";

const grounds = groundsSchema.exactOptional();
const words = lineSchema(1000).min(1).exactOptional();
const chance = z.number().exactOptional();
const id = z.string().max(80);

const faultChangeSchema: z.ZodType<FaultChange, FaultChange> = z
  .strictObject({
    grounds,
    name: words,
    about: words,
    shares: sharesSchema.exactOptional(),
    reach: reachSchema.exactOptional(),
    shows: z.number().exactOptional(),
    regimes: z
      .strictObject({
        coldStart: chance,
        coldIdle: chance,
        hotIdle: chance,
        cruise: chance,
        pull: chance,
        wet: chance,
        bumps: chance,
      })
      .exactOptional(),
    risks: z.array(riskSchema).exactOptional(),
    signs: z.array(signSchema).exactOptional(),
    wears: z.array(wearSchema).exactOptional(),
    firstCheck: words,
    mend: words,
  })
  .meta({ description: "What changes in a fault", examples: [{ shares: { rail: 120 } }] });

const checkChangeSchema: z.ZodType<CheckChange, CheckChange> = z
  .strictObject({ grounds, minutes: z.number().exactOptional() })
  .meta({ description: "What changes in a check", examples: [{ minutes: 8 }] });

const repairChangeSchema: z.ZodType<RepairChange, RepairChange> = z
  .strictObject({
    grounds,
    minutes: z.number().exactOptional(),
    parts: z.enum(["none", "small", "medium", "large"]).exactOptional(),
    works: z
      .record(id, z.number())
      .meta({ description: "Chance of cure by fault that it mends already" })
      .exactOptional(),
  })
  .meta({ description: "What changes in a repair", examples: [{ minutes: 40, parts: "medium" }] });

export const overlaySchema: z.ZodType<Overlay, Overlay> = z
  .strictObject({
    title: lineSchema(200).meta({ description: "Whose numbers these are" }).exactOptional(),
    grounds,
    twoFaultsShare: z
      .number()
      .meta({ description: "Part of all complaints that has exactly two unrelated faults" })
      .exactOptional(),
    faults: z
      .record(id, faultChangeSchema)
      .meta({
        description: "Changes by id of a known fault",
        examples: [{ "coil.half-dead": { shares: { rail: 120 } } }],
      })
      .exactOptional(),
    newFaults: z
      .array(faultSchema)
      .max(200)
      .meta({ description: "Whole rows of new faults" })
      .exactOptional(),
    checks: z
      .record(id, checkChangeSchema)
      .meta({
        description: "Changes by id of a known check",
        examples: [{ "check.codes": { minutes: 8 } }],
      })
      .exactOptional(),
    repairs: z
      .record(id, repairChangeSchema)
      .meta({
        description: "Changes by id of a known repair",
        examples: [{ "repair.rail": { minutes: 15 } }],
      })
      .exactOptional(),
    newRepairs: z
      .array(repairSchema)
      .max(200)
      .meta({ description: "Whole rows of new repairs" })
      .exactOptional(),
  })
  .meta({
    id: "Overlay",
    description: "A workshop's own numbers, laid over the tables",
    examples: [{ title: "Our workshop", faults: { "coil.half-dead": { shares: { rail: 120 } } } }],
  });

/** What became of an overlay: it can be laid over the tables, or these things are wrong with it. */
export type OverlayReading =
  | { readonly overlay: Overlay }
  | { readonly problems: readonly Problem[] };

/** Reads a saved overlay, e.g. parsed JSON. Problems point into the value by JSON Pointer. */
export function parseOverlay(value: unknown, base: Knowledge = KNOWLEDGE): OverlayReading {
  const reading = readShape(overlaySchema, value);
  if ("problems" in reading) return reading;
  const problems = checkOverlay(base, reading.value);
  return problems.length > 0 ? { problems } : { overlay: reading.value };
}
