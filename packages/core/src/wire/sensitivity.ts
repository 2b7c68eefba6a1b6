// What the sensitivity of a ranking looks like when it leaves for outside.
import { z } from "zod";
import type { Sensitivity } from "../explain/sensitivity.ts";
import { cylinderNameSchema } from "./profile.ts";

const faultAtPlace = (description: string) =>
  z.string().meta({ description, examples: ["coil.half-dead@coil 2+5"] });

const flipSchema = z
  .strictObject({
    of: z.enum(["prior", "answer"]).meta({
      description: "prior: how common the fault is; answer: how likely the answer is with it",
    }),
    fault: faultAtPlace("Whose number moves, as fault@place; its type at all places moves with it"),
    finding: z.string().meta({ description: "For an answer: which" }).exactOptional(),
    cylinder: cylinderNameSchema.exactOptional(),
    from: z.number().meta({ description: "Odds (prior) or a probability (answer), as it is" }),
    to: z.number().meta({ description: "The same where the first place changes hands" }),
    moveDb: z.number().meta({ description: "Decibans of odds between the two" }),
    first: faultAtPlace("What is then first, as fault@place; a fault of another part"),
  })
  .meta({
    id: "Flip",
    description: "A single number that would bring another part to the first place",
  });

const stabilitySchema = z
  .strictObject({
    sigma: z.number().meta({ description: "Standard deviation of the noise, natural log-odds" }),
    shakes: z.int(),
    first: z
      .number()
      .meta({ description: "Part of the shakes in which the first part stays first" }),
    firstFault: z.number().meta({ description: "The same for the likeliest single fault" }),
    firstThree: z
      .number()
      .meta({ description: "The same for the first three parts, in any order" }),
  })
  .meta({ id: "Stability" });

export const sensitivitySchema: z.ZodType<Sensitivity, Sensitivity> = z
  .strictObject({
    leading: z.array(z.string()).meta({
      description: "The two parts that lead, each by its likeliest fault, as fault@place",
    }),
    flips: z.array(flipSchema).meta({ description: "Nearest first" }),
    stability: z.array(stabilitySchema).meta({ description: "By size of the noise" }),
  })
  .meta({ id: "Sensitivity", description: "How far the first place rests on exact numbers" });
