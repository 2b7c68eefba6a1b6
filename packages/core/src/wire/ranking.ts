// What a ranking and a ledger look like when they leave for outside.
import { z } from "zod";
import type { Ledger, Ranking } from "../explain/ranking.ts";
import { groundsSchema } from "./catalogue.ts";
import { cylinderNameSchema } from "./profile.ts";

/** The limits are told, not enforced: a sum that rounds to just above 1 is no reason for an error. */
const probability = (description: string) =>
  z.number().meta({ description, minimum: 0, maximum: 1 });

const cylinders = z.array(cylinderNameSchema);

const rankedFaultSchema = z
  .strictObject({
    fault: z.string().meta({ description: "Id of the fault", examples: ["coil.half-dead"] }),
    place: z.string().meta({ description: "Where it sits", examples: ["coil 2+5", "leg 3"] }),
    cylinders,
    probability: probability("That it is present, alone or with another fault"),
    name: z.string(),
    about: z.string(),
    component: z.string().meta({ description: "Key into components" }),
    mend: z.string(),
    firstCheck: z.string().meta({ description: "Id of the check that looks at it first" }),
  })
  .meta({ id: "RankedFault" });

const componentSchema = z.strictObject({
  component: z.string(),
  part: z.string(),
  cylinders,
  probability: probability("That it has failed, in whatever way"),
});

const hypothesisSchema = z.strictObject({
  faults: z.array(z.strictObject({ fault: z.string(), place: z.string() })),
  probability: probability("That exactly these faults are present together"),
});

const fitSchema = z.strictObject({
  conflictDb: z.number().meta({ description: "Above 0 the findings disagree" }),
  suspect: z
    .strictObject({ finding: z.string(), cylinder: cylinderNameSchema.exactOptional() })
    .meta({ description: "With conflict: the finding to look at again" })
    .exactOptional(),
});

const orderSchema = z.strictObject({
  firingOrder: cylinders,
  probability: probability("That the engine has this firing order"),
  first: z.string().meta({ description: "First place of the ranking if it has" }),
});

export const putRightSchema = z.strictObject({
  finding: z.string(),
  cylinder: cylinderNameSchema.exactOptional(),
  say: z.string(),
  grounds: groundsSchema,
});

const rankingFields = {
  cautions: z.array(z.string()).meta({ description: "Cautions called for at once, by id" }),
  ranking: z.array(rankedFaultSchema).meta({ description: "All faults, likeliest first" }),
  components: z.array(componentSchema).meta({ description: "Parts, whatever has failed in them" }),
  cylinders: z.array(
    z.strictObject({
      cylinder: cylinderNameSchema,
      misses: probability("That it misses steadily"),
    }),
  ),
  atRandom: probability("That cylinders miss at random, no fixed set"),
  noMisfire: probability("That no cylinder really misses"),
  hypotheses: z.array(hypothesisSchema).meta({ description: "The likeliest sets of faults" }),
  somethingElse: probability("That nothing in the catalogue fits"),
  unsearched: probability("Proven bound on the probability of what was not searched"),
  visited: z.int(),
  instances: z.int(),
  entropyBits: z.number(),
  fit: fitSchema,
  ambiguity: z
    .array(z.array(z.string()))
    .meta({ description: "Faults, as fault@place, that no answer so far tells apart" }),
  alsoPutRight: z.array(putRightSchema),
  orders: z
    .array(orderSchema)
    .meta({ description: "Only for an engine known in part" })
    .exactOptional(),
};

export const rankingSchema: z.ZodType<Ranking, Ranking> = z
  .strictObject(rankingFields)
  .meta({ id: "Ranking", description: "Likely faults of one case. The weights are estimates." });

const ledgerLineSchema = z.strictObject({
  finding: z.string(),
  cylinder: cylinderNameSchema.exactOptional(),
  weightDb: z.number().meta({ description: "What it added, given the findings before it" }),
  withoutDb: z.number().meta({ description: "What the odds would lose if it were withdrawn" }),
  grounds: groundsSchema,
});

export const ledgerSchema: z.ZodType<Ledger, Ledger> = z
  .strictObject({
    fault: z.string(),
    place: z.string(),
    priorDb: z.number(),
    lines: z.array(ledgerLineSchema),
    posteriorDb: z.number(),
  })
  .meta({
    id: "Ledger",
    description: "Odds of one fault in dB: those beforehand, each finding's weight, those now",
  });
