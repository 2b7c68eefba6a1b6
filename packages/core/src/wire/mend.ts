// What a repair with all that belongs to it looks like, on the way in and out.
import { z } from "zod";
import type { Mending } from "../advice/mend.ts";
import type { CylinderName } from "../engine/profile.ts";
import type { ProofPlan } from "../service/proof.ts";
import { type CaseDocument, caseFields } from "./case.ts";
import { putBackLineSchema, repairFields } from "./next.ts";
import { cylinderNameSchema } from "./profile.ts";
import { putRightSchema } from "./ranking.ts";

/** A case and the repair that is thought of. */
export interface MendDocument extends CaseDocument {
  readonly repair: string;
  readonly cylinder?: CylinderName;
}

export const mendRequestSchema: z.ZodType<MendDocument, MendDocument> = z
  .strictObject({
    ...caseFields,
    repair: z
      .string()
      .max(80)
      .meta({ description: "Id of a repair", examples: ["repair.plug-set"] }),
    cylinder: cylinderNameSchema.exactOptional(),
  })
  .meta({ id: "MendRequest", description: "A case and the repair that is thought of" });

const words = z.array(z.string());

const proofSchema: z.ZodType<ProofPlan, ProofPlan> = z
  .strictObject({
    trials: z.number().meta({ description: "Clean drives until the repair may be believed" }),
    showChance: z.number(),
    belief: z.number(),
    believed: z.number(),
    trial: z.array(
      z.strictObject({
        regime: z.enum(["coldStart", "coldIdle", "hotIdle", "cruise", "pull", "wet", "bumps"]),
        say: z.string(),
        minutes: z.number(),
        cautions: words,
      }),
    ),
    codes: words.meta({ description: "Codes that must not come back" }),
    clear: z.array(
      z.strictObject({
        id: z.enum(["codes", "pending", "counts", "lamp", "permanent", "monitors", "trims"]),
        say: z.string(),
      }),
    ),
    rules: z.custom<ProofPlan["rules"]>().meta({ description: "What the car asks of a drive" }),
    averageDrives: z.number().exactOptional(),
  })
  .meta({ id: "ProofPlan", description: "What proves the repair" });

export const mendSchema: z.ZodType<Mending, Mending> = z
  .strictObject({
    ...repairFields,
    faults: z.array(
      z.strictObject({
        fault: z.string(),
        place: z.string(),
        cylinders: z.array(cylinderNameSchema),
        name: z.string(),
        probability: z.number(),
        works: z.number().meta({ description: "Chance that the repair cures it" }),
      }),
    ),
    alsoPutRight: z.array(putRightSchema),
    notYet: z
      .array(z.strictObject({ repair: z.string(), name: z.string(), cures: z.number() }))
      .meta({ description: "Dear parts that are not likely to help" }),
    putBack: z.array(putBackLineSchema),
    proof: proofSchema.exactOptional(),
  })
  .meta({ id: "Mending", description: "A repair from the first screw to the last proof" });
