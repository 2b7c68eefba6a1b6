// What the advice whether to drive looks like when it leaves for outside.
import { z } from "zod";
import { DRIVE_LEVELS, DRIVE_LOOKS, type DriveCondition } from "../knowledge/schema.ts";
import type { DriveAdvice } from "../service/drive.ts";
import { groundsSchema } from "./catalogue.ts";
import { cylinderNameSchema } from "./profile.ts";

const words = z.array(z.string());

const conditionSchema: z.ZodType<DriveCondition, DriveCondition> = z
  .lazy(() =>
    z.union([
      z.strictObject({ finding: z.string(), is: words }),
      z.strictObject({
        missing: z.strictObject({ atLeast: z.number(), share: z.number().exactOptional() }),
      }),
      z.strictObject({ all: z.array(conditionSchema) }),
      z.strictObject({ any: z.array(conditionSchema) }),
    ]),
  )
  .meta({ id: "DriveCondition", description: "When a rule holds; there is no probability in it" });

const ruleSchema = z.strictObject({
  id: z.string(),
  level: z.enum(DRIVE_LEVELS),
  when: conditionSchema,
  reason: z.string(),
  lifts: z.string().meta({ description: "What would have to be otherwise" }),
  never: words,
  cautions: words,
  restsUntil: z
    .enum(DRIVE_LOOKS)
    .meta({ description: "Until this was looked at, the engine is not turned even for a check" })
    .exactOptional(),
  grounds: groundsSchema,
});

const limpHomeSchema = z.strictObject({
  limits: z.strictObject({
    isEstimate: z.literal(true),
    maxSpeedKmh: z.number(),
    maxDistanceKm: z.number(),
    rpm: z.tuple([z.number(), z.number()]),
    lookEveryMin: z.number(),
    grounds: groundsSchema,
  }),
  steps: words,
  fuelCut: z
    .strictObject({
      steps: words,
      never: words,
      cautions: words,
    })
    .exactOptional(),
  never: words,
  afterwards: words,
  towInstead: words,
  grounds: groundsSchema,
});

export const driveSchema: z.ZodType<DriveAdvice, DriveAdvice> = z
  .strictObject({
    ask: z
      .enum(DRIVE_LOOKS)
      .meta({ description: "The finding to look at first: it may forbid driving" })
      .exactOptional(),
    rests: z
      .literal(true)
      .meta({ description: "The engine is not turned, not even for a check" })
      .exactOptional(),
    level: z
      .strictObject({ level: z.enum(DRIVE_LEVELS), say: z.string(), steps: words })
      .meta({ description: "The most cautious level that a rule calls for" })
      .exactOptional(),
    rules: z.array(ruleSchema).meta({ description: "Every rule that holds, most cautious first" }),
    never: words,
    cautions: words,
    missing: z
      .array(cylinderNameSchema)
      .meta({ description: "Cylinders that codes, counts or a cancel test name" }),
    limpHome: limpHomeSchema
      .meta({ description: "How to cover a few kilometres; limits are estimates" })
      .exactOptional(),
  })
  .meta({
    id: "DriveAdvice",
    description: "Whether one may drive on. Rules decide it, never a probability.",
  });
