// What a case says of the work: what was mended, what is at hand, how the plugs looked that came out.
// Only its shape; whether a repair exists and has such a place is checked against the knowledge.
import { z } from "zod";
import { type AtHand, REPAIR_RESULTS, type RepairDone } from "../knowledge/answer.ts";
import { TOOLS } from "../knowledge/schema.ts";
import { cylinderNameSchema } from "./profile.ts";

const when = z
  .string()
  .max(40)
  .meta({ description: "ISO 8601; kept, never reasoned with", examples: ["2026-05-01T09:30:00Z"] })
  .exactOptional();

export const repairDoneSchema: z.ZodType<RepairDone, RepairDone> = z
  .strictObject({
    repair: z
      .string()
      .max(80)
      .meta({ description: "Id of a repair", examples: ["repair.plug-set"] }),
    cylinder: cylinderNameSchema.exactOptional(),
    result: z
      .enum(REPAIR_RESULTS)
      .meta({ description: "How the engine ran afterwards; leave it out until it was tried" })
      .exactOptional(),
    when,
  })
  .meta({
    id: "RepairDone",
    description: "Something that was mended, and what came of it",
    examples: [{ repair: "repair.plug-set", result: "same" }],
  });

function money(description: string, example: number) {
  return z
    .number()
    .min(0)
    .max(1e9)
    .meta({ description, examples: [example] })
    .exactOptional();
}

export const atHandSchema: z.ZodType<AtHand, AtHand> = z
  .strictObject({
    tools: z
      .array(z.enum(TOOLS))
      .max(TOOLS.length)
      .meta({ description: "Tools that lie ready", examples: [["light", "hand tools"]] })
      .exactOptional(),
    where: z.enum(["roadside", "driveway", "workshop"]).exactOptional(),
    skill: z
      .union([z.literal(0), z.literal(1), z.literal(2), z.literal(3), z.literal(4)])
      .meta({ description: "Skill, from 0 for anyone to 4 for a professional", examples: [1] })
      .exactOptional(),
    hourRate: money("What an hour of your own time is worth, in your money", 20),
    partsPrice: z
      .strictObject({
        small: money("Price of small parts, e.g. one plug", 15),
        medium: money("Price of medium parts, e.g. a set of plugs or one coil", 80),
        large: money("Price of large parts, e.g. a coil rail", 300),
      })
      .meta({ description: "Prices of parts in your money", examples: [{ large: 300 }] })
      .exactOptional(),
    callPrice: money("What a professional would ask for the whole, in your money", 400),
  })
  .meta({
    id: "AtHand",
    description: "What hand, place and purse allow; what is left out is not limited",
    examples: [{ tools: ["light", "hand tools"], where: "driveway", skill: 1 }],
  });
