// What a record of plugs looks like when it comes from outside. Whether the engine has such cylinders and
// the figures can be meant is checked by the service room.
import { z } from "zod";
import type { PlugCourse, PlugEntry, PlugRecord } from "../service/record.ts";
import { cylinderNameSchema } from "./profile.ts";

const plugEntrySchema: z.ZodType<PlugEntry, PlugEntry> = z
  .strictObject({
    cylinder: cylinderNameSchema,
    gapMm: z
      .number()
      .meta({ description: "The gap as it came out, mm", examples: [1.15] })
      .exactOptional(),
    look: z
      .string()
      .max(80)
      .meta({ description: "An option of the finding `plug.look`", examples: ["tan"] })
      .exactOptional(),
    torqueNm: z
      .number()
      .meta({ description: "The torque with which the new plug went in, N·m", examples: [22] })
      .exactOptional(),
    part: z.string().max(80).meta({ description: "The number on the plug" }).exactOptional(),
  })
  .meta({ id: "PlugEntry", description: "One plug as it was found" });

const plugCourseSchema: z.ZodType<PlugCourse, PlugCourse> = z
  .strictObject({
    wentIn: z
      .enum(["new", "same"])
      .meta({ description: "New plugs went in on that day, or the same ones went back" })
      .exactOptional(),
    kmPerYear: z
      .number()
      .meta({ description: "How far the car is driven in a year, km", examples: [15_000] })
      .exactOptional(),
    fittedOn: z
      .string()
      .max(40)
      .meta({
        description: "The day on which the plugs that went back were new, ISO 8601",
        examples: ["2024-05-01"],
      })
      .exactOptional(),
  })
  .meta({ id: "PlugCourse", description: "What goes on from a record of plugs" });

export const plugRecordSchema: z.ZodType<PlugRecord, PlugRecord> = z
  .strictObject({
    when: z
      .string()
      .max(40)
      .meta({ description: "The day, ISO 8601", examples: ["2026-05-01"] }),
    odometerKm: z.number().meta({ description: "The odometer, km", examples: [120_000] }),
    plugs: z
      .array(plugEntrySchema)
      .max(64)
      .meta({
        description: "Plugs that were looked at",
        examples: [[{ cylinder: 1, gapMm: 1.15 }]],
      }),
    newGapMm: z
      .number()
      .meta({ description: "The gap with which these plugs went in, mm", examples: [0.9] })
      .exactOptional(),
    fittedAtKm: z
      .number()
      .meta({ description: "The odometer at which they went in, km", examples: [60_000] })
      .exactOptional(),
    course: plugCourseSchema.exactOptional(),
  })
  .meta({
    id: "PlugRecord",
    description: "The plugs of an engine on one day",
    examples: [{ when: "2026-05-01", odometerKm: 120_000, plugs: [{ cylinder: 1, gapMm: 1.15 }] }],
  });
