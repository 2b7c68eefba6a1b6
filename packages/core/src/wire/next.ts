// What the next step looks like when it leaves for outside.
import { z } from "zod";
import type { Next, NextCheck, NextRepair } from "../advice/advice.ts";
import { findingSchema } from "./finding.ts";
import { cylinderNameSchema } from "./profile.ts";

const minutes = (description: string) => z.number().meta({ description, examples: [12.5] });

/** The limits are told, not enforced: a sum that rounds to just above 1 is no reason for an error. */
const probability = (description: string) =>
  z.number().meta({ description, minimum: 0, maximum: 1 });

const where = {
  name: z.string(),
  cylinders: z.array(cylinderNameSchema).meta({ description: "Where; empty for the whole engine" }),
  opens: z
    .array(
      z.strictObject({ id: z.string(), say: z.string(), minutes: minutes("Off and on again") }),
    )
    .meta({ description: "What must come off first" }),
};

export const putBackLineSchema = z.strictObject({
  id: z.string(),
  say: z.string(),
  isFigureMissing: z.boolean(),
  cautions: z.array(z.string()),
});

const outcomeSchema = z.strictObject({
  answers: z
    .array(findingSchema)
    .meta({ description: 'The findings that make this outcome; empty for "anything else"' }),
  probability: probability("That the check comes out so"),
  leader: z
    .strictObject({
      component: z.string(),
      fault: z.string().meta({ description: "Its likeliest way of failing" }),
      place: z.string(),
      name: z.string(),
      probability: probability("That the part failed if the check comes out so"),
    })
    .meta({ description: "The likeliest part if the check comes out so" })
    .exactOptional(),
});

const checkSchema: z.ZodType<NextCheck, NextCheck> = z
  .strictObject({
    kind: z.literal("check"),
    check: z.string().meta({ description: "Id of the check", examples: ["check.spark-both"] }),
    ...where,
    minutes: minutes("Work, with what must come off first"),
    worthMinutes: minutes("Minutes that it is expected to save, its own taken off"),
    tellsBits: z.number().meta({ description: "What it tells of which fault it is, bits" }),
    cautions: z.array(z.string()).meta({
      description: "Ids of cautions that are about this place and the engine, to be read first",
    }),
    putBack: z.array(putBackLineSchema).meta({
      description: "What it takes off, unplugs or cuts, to be put back before the next start",
    }),
    outcomes: z.array(outcomeSchema),
  })
  .meta({ id: "NextCheck", description: "A check, and what each outcome would mean" });

export const repairFields = {
  kind: z.literal("repair"),
  repair: z.string().meta({ description: "Id of the repair", examples: ["repair.plug-set"] }),
  ...where,
  minutes: minutes("Work, with what must come off first; without the price of parts"),
  partsPrice: z.number().meta({ description: "In the user's money, or in a made-up unit" }),
  cures: probability("That the engine runs right after it"),
  cautions: z
    .array(z.string())
    .meta({ description: "Ids of cautions that are about this place, to be read first" }),
  isMade: z
    .literal(true)
    .meta({ description: "Made already: start the engine, and write its result under repairs" })
    .exactOptional(),
  because: z
    .string()
    .meta({ description: "Why it comes before anything that the costs would put first" })
    .exactOptional(),
};

const repairSchema: z.ZodType<NextRepair, NextRepair> = z
  .strictObject(repairFields)
  .meta({ id: "NextRepair", description: "A repair at a place" });

const callSchema = z
  .strictObject({ kind: z.literal("call") })
  .meta({ description: "Hand it to somebody who has what it takes" });

export const nextSchema: z.ZodType<Next, Next> = z
  .strictObject({
    step: z.union([checkSchema, repairSchema, callSchema]),
    expectedMinutes: minutes("From here until the engine runs right, parts and call included"),
    expectedMinutesWithoutChecks: minutes("The same with repairs only, in the best order"),
    callChance: probability("That repairs alone, in the best order, end at a professional's"),
    mendable: probability("That something of all that can be done here would mend it"),
    hourRate: z.number().meta({
      description: "What an hour of the user's time is taken to be worth",
      examples: [25],
    }),
    checks: z.array(checkSchema).meta({ description: "Checks worth looking at, best first" }),
    repairs: z
      .array(repairSchema)
      .meta({ description: "Repairs in the order in which they would be tried without checks" }),
    withheld: z
      .array(
        z.strictObject({
          id: z.string(),
          name: z.string(),
          why: z.enum(["tool", "spare", "skill", "place", "rest"]),
        }),
      )
      .meta({ description: "What tools, skill, place or the engine rule out" }),
  })
  .meta({
    id: "Next",
    description: "What pays most to do next. Minutes, prices and chances are estimates.",
  });
