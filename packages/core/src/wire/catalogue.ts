// What the rows of the knowledge and a described engine look like when they leave for outside.
import { z } from "zod";
import type { EngineDescription } from "../engine/describe-engine.ts";
import { PLACE_KINDS } from "../engine/place.ts";
import { FUELLINGS, IGNITION_KINDS, SWITCHINGS } from "../engine/profile.ts";
import {
  type CautionRow,
  type CheckRow,
  type FaultRow,
  type FindingRow,
  type Grounds,
  type RepairRow,
  TOPICS,
} from "../knowledge/schema.ts";
import { TOOLS } from "../knowledge/tool.ts";
import { cylinderNameSchema } from "./profile.ts";

export const groundsSchema: z.ZodType<Grounds, Grounds> = z
  .strictObject({
    basis: z.enum(["published", "common practice", "memory"]),
    confidence: z.enum(["high", "medium", "low"]),
    source: z.string().meta({ description: "Key into the cited works" }).exactOptional(),
  })
  .meta({ id: "Grounds", description: "What stands behind a number" });

const grounds = groundsSchema;
const chances = z.record(z.string(), z.number());
const suits = z
  .array(z.enum(IGNITION_KINDS))
  .meta({ description: "Ignition kinds it is for; all unless given" })
  .exactOptional();

const build = {
  switching: z
    .enum(SWITCHINGS)
    .meta({ description: "Only for engines switched so; all unless given" })
    .exactOptional(),
  fuelling: z
    .enum(FUELLINGS)
    .meta({ description: "Only for engines fuelled so; all unless given" })
    .exactOptional(),
};

const putBack = z
  .array(z.string())
  .meta({ description: "Steps of the put-back list, beside those of what must come off first" });

const REGIMES = ["coldStart", "coldIdle", "hotIdle", "cruise", "pull", "wet", "bumps"] as const;

const groundsOf = z
  .record(z.string(), grounds)
  .meta({ description: "Grounds of single numbers, by path in the row" })
  .exactOptional();

export const sharesSchema = z
  .strictObject({
    distributor: z.number().exactOptional(),
    pack: z.number().exactOptional(),
    rail: z.number().exactOptional(),
    hybrid: z.number().exactOptional(),
    "coil-per-plug": z.number().exactOptional(),
  })
  .meta({ description: "Per 1,000 complaints, by ignition kind" });

const regimesSchema = z
  .strictObject({
    coldStart: z.number(),
    coldIdle: z.number(),
    hotIdle: z.number(),
    cruise: z.number(),
    pull: z.number(),
    wet: z.number(),
    bumps: z.number(),
  })
  .meta({ description: "How hard it shows at each moment, 0 (not at all) to 1 (fully)" });

export const riskSchema = z.strictObject({
  finding: z.string(),
  times: chances,
  grounds: grounds.exactOptional(),
});

export const signSchema = z.strictObject({
  finding: z.string(),
  gives: chances,
  grounds: grounds.exactOptional(),
});

export const wearSchema = z.strictObject({
  fault: z.string(),
  times: z.number(),
  grounds: grounds.exactOptional(),
});

export const reachSchema = z
  .strictObject({
    own: z.number().exactOptional(),
    group: z.number().exactOptional(),
    companions: z.number().exactOptional(),
    mate: z.number().exactOptional(),
    neighbours: z.number().exactOptional(),
    consecutive: z.number().exactOptional(),
    two: z.number().exactOptional(),
    bank: z.number().exactOptional(),
    all: z.number().exactOptional(),
    elsewhere: z.number().exactOptional(),
    random: z.number().exactOptional(),
    none: z.number().exactOptional(),
  })
  .meta({ description: "How likely it makes which cylinders miss, seen from its place" });

const placeKindSchema = z.enum(PLACE_KINDS);

export const faultSchema: z.ZodType<FaultRow, FaultRow> = z
  .strictObject({
    id: z.string(),
    name: z.string().meta({ description: "{at} stands for the place in words" }),
    about: z.string(),
    at: placeKindSchema,
    part: z.strictObject({ name: z.string(), at: placeKindSchema }),
    grounds,
    groundsOf,
    ...build,
    shares: sharesSchema,
    reach: reachSchema,
    shows: z.number().meta({ description: "Chance that it shows at a given moment" }),
    regimes: regimesSchema,
    risks: z.array(riskSchema),
    signs: z.array(signSchema),
    wears: z.array(wearSchema).exactOptional(),
    firstCheck: z.string(),
    mend: z.string(),
  })
  .meta({ id: "Fault", description: "A fault of the catalogue; its numbers are estimates" });

const readingSchema = z
  .strictObject({
    unit: z.string(),
    figure: z.string().exactOptional(),
    otherwise: z.tuple([z.number(), z.number()]).exactOptional(),
    steps: z.array(z.strictObject({ option: z.string(), under: z.number().exactOptional() })),
    possible: z
      .tuple([z.number(), z.number()])
      .meta({ description: "Lowest and highest number that is taken" }),
  })
  .meta({ description: "How a measured number turns into an option" });

const regimeRuleSchema = z.strictObject({
  of: z.array(z.enum(REGIMES)),
  how: z.enum(["most", "least", "mean"]),
  times: z.number().exactOptional(),
});

export const findingRowSchema: z.ZodType<FindingRow, FindingRow> = z
  .strictObject({
    id: z.string(),
    ask: z.string(),
    help: z.string().exactOptional(),
    topic: z.enum(TOPICS),
    kind: z.enum(["choice", "presence", "several", "codes", "counts"]),
    scope: z
      .enum(["engine", "cylinder", "coil", "connector"])
      .meta({ description: "engine: one answer; else each answer names a cylinder" }),
    options: z.record(
      z.string(),
      z.strictObject({
        say: z.string(),
        more: z.string().exactOptional(),
        chance: z.number(),
        caution: z.string().exactOptional(),
        suits,
        ...build,
        leaves: z
          .strictObject({ cold: z.number().exactOptional(), idle: z.number().exactOptional() })
          .meta({ description: "Part of the trouble that is left for a look made so" })
          .exactOptional(),
        provoked: z
          .literal(true)
          .meta({ description: "Says that the trouble was brought about first" })
          .exactOptional(),
      }),
    ),
    grounds,
    momentary: z.boolean().exactOptional(),
    awaits: z
      .number()
      .meta({ description: "Part of the times that a fault hides in which the look waits for it" })
      .exactOptional(),
    made: z
      .enum(["cold", "idle"])
      .meta({ description: "Made cold or at idle, whenever the trouble is there" })
      .exactOptional(),
    throughPort: z
      .literal(true)
      .meta({ description: "Says nothing on an engine without a diagnostic port" })
      .exactOptional(),
    travels: z
      .string()
      .meta({ description: "Option that says that the misfire travelled with the exchanged part" })
      .exactOptional(),
    byMisfire: z
      .union([
        z.record(z.enum(["none", "one", "two", "more", "random"]), chances),
        z.record(z.enum(["hit", "spared", "random"]), chances),
      ])
      .exactOptional(),
    afterMisfire: z
      .record(z.enum(["none", "one", "two", "more", "random"]), chances)
      .meta({ description: "What cylinders that miss do by themselves" })
      .exactOptional(),
    fades: z
      .strictObject({ of: z.string(), left: chances })
      .meta({ description: "How much another finding still pulls, by how far back it lies" })
      .exactOptional(),
    byRegime: z.record(z.string(), regimeRuleSchema).exactOptional(),
    sharpness: z.number().exactOptional(),
    byShows: z.record(z.string(), z.tuple([z.number(), z.number()])).exactOptional(),
    reading: readingSchema.exactOptional(),
    suits,
    ...build,
    first: z.number().meta({ description: "Place among the first questions" }).exactOptional(),
  })
  .meta({ id: "FindingRow", description: "Something that can be seen, read or measured" });

const access = z
  .array(z.string())
  .meta({ description: "What must come off first; its minutes are not in minutes" })
  .exactOptional();

const coilsApart = z
  .literal(true)
  .meta({ description: "Only where each coil has a connector of its own" })
  .exactOptional();

export const repairSchema: z.ZodType<RepairRow, RepairRow> = z
  .strictObject({
    id: z.string(),
    name: z.string(),
    at: z.enum(PLACE_KINDS),
    mends: z.array(
      z.strictObject({
        fault: z.string(),
        works: z.number().meta({ description: "Chance that it cures the engine of the fault" }),
      }),
    ),
    minutes: z.number(),
    skill: z.number().meta({ description: "0 anyone … 4 professional" }),
    tool: z.enum(TOOLS),
    parts: z.enum(["none", "small", "medium", "large"]),
    access,
    cautions: z.array(z.string()),
    putBack,
    suits,
    ...build,
    coilsApart,
    grounds,
    groundsOf,
  })
  .meta({ id: "Repair", description: "Something that is mended or renewed, and what that cures" });

export const checkSchema: z.ZodType<CheckRow, CheckRow> = z
  .strictObject({
    id: z.string(),
    name: z.string(),
    steps: z.array(z.string()),
    minutes: z.number(),
    tool: z.enum(TOOLS),
    skill: z.number().meta({ description: "0 anyone … 4 professional" }),
    cautions: z.array(z.string()),
    yields: z.array(z.string()).meta({ description: "The findings that its outcome answers" }),
    suits,
    ...build,
    access,
    putBack: putBack.exactOptional(),
    breaks: z
      .number()
      .meta({ description: "Chance that a brittle part breaks on the way" })
      .exactOptional(),
    coilsApart,
    everyCylinder: z
      .literal(true)
      .meta({ description: "Looks at every cylinder, each judged by all the others" })
      .exactOptional(),
    instead: z
      .string()
      .meta({
        description: "Id of the check that is made where the engine has nothing for this one",
      })
      .exactOptional(),
    grounds,
    groundsOf,
  })
  .meta({ id: "Check", description: "Something that can be tried, looked at or measured" });

export const cautionSchema: z.ZodType<CautionRow, CautionRow> = z
  .strictObject({
    id: z.string(),
    say: z.string(),
    where: z
      .array(z.enum(["roadside", "driveway", "workshop"]))
      .meta({ description: "Places that it is about; left out: everywhere" })
      .exactOptional(),
    everyStep: z
      .literal(true)
      .meta({ description: "Belongs to every check and repair that is done at these places" })
      .exactOptional(),
    unless: z
      .strictObject({ finding: z.string(), is: z.array(z.string()) })
      .meta({ description: "Not told by a drive rule once the finding was answered so" })
      .exactOptional(),
  })
  .meta({ id: "Caution", description: "A hazard in words" });

const names = z.array(cylinderNameSchema);

export const engineDescriptionSchema: z.ZodType<EngineDescription, EngineDescription> = z
  .strictObject({
    id: z.string().exactOptional(),
    name: z.string().exactOptional(),
    isInvented: z.boolean(),
    ignition: z.enum(IGNITION_KINDS),
    firingOrder: names,
    cylinders: z.array(
      z.strictObject({
        name: cylinderNameSchema,
        angleDeg: z.number().meta({ description: "Crank degrees in 0..720 at which it fires" }),
        companion: cylinderNameSchema.exactOptional(),
        bank: z.number().meta({ description: "Counted from 1" }),
        hasLead: z.boolean(),
      }),
    ),
    pairs: z.array(z.tuple([cylinderNameSchema, cylinderNameSchema])),
    groups: z.array(names).meta({ description: "The cylinders that each coil fires" }),
    banks: z.array(names),
    neighbours: z.array(names),
    connectors: z.array(z.strictObject({ name: z.string(), feeds: names })),
    mismatchDeg: z
      .number()
      .meta({ description: "How far the best pairs are from 360 degrees apart" }),
    explanation: z.string(),
  })
  .meta({ id: "EngineDescription", description: "Everything worked out about an engine" });
