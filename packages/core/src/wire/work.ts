// What a case says of the work: what was mended, what is at hand, what is off the engine and put back again,
// how it was proven. Only its shape; whether a repair exists and has such a place is checked against the
// knowledge.
import { z } from "zod";
import type { CylinderName } from "../engine/profile.ts";
import { type AtHand, REPAIR_RESULTS, type RepairDone } from "../knowledge/answer.ts";
import { FORMER_TOOLS, type FormerTool, TOOLS } from "../knowledge/tool.ts";
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

/** Still read: the case that names one was written before the tools had words of their own. */
const FORMER = Object.keys(FORMER_TOOLS) as readonly FormerTool[];

export const atHandSchema: z.ZodType<AtHand, AtHand> = z
  .strictObject({
    tools: z
      .array(z.enum([...TOOLS, ...FORMER]))
      .max(TOOLS.length + FORMER.length)
      .meta({
        description:
          'Tools that lie ready; "gauge" is of earlier cases, and stands for any of them',
        examples: [["light", "hand tools"]],
      })
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

/** Minutes that a step took. */
export interface SpentTime {
  /** The step and its cylinders, such as `check.spark 2`; of one step the last entry holds. */
  readonly step: string;
  readonly minutes: number;
  /** The answer that came of it, or the moment at which the repair was noted. */
  readonly shownBy:
    | { readonly finding: string; readonly cylinder?: CylinderName }
    | { readonly when: string };
  readonly when?: string;
}

/** A line of a put-back list that is done. */
export interface TickedLine {
  /** Whose list: the repair and its cylinders, such as `repair.boot-one 2`. */
  readonly list: string;
  readonly line: string;
  readonly when?: string;
}

/** How a drive went that was to prove a repair. */
export interface ProvingDrive {
  /** The moment at which the repair was noted; without one its place among the repairs, from 0. */
  readonly of: string;
  /** Against before the repair; `none` when nothing was felt. */
  readonly misfire: "none" | "less" | "same";
  /** A code of the fault came back. */
  readonly isCodeBack?: boolean;
  /** ISO 8601 where it is known; it tells the drives of a repair apart. */
  readonly when: string;
}

/** What was done beside finding and mending; each list in the order in which it was entered. */
export interface WorkBook {
  /** Ids of what is off the engine, as `opens` of a step tells them. */
  readonly open?: readonly string[];
  readonly spent?: readonly SpentTime[];
  readonly ticks?: readonly TickedLine[];
  readonly drives?: readonly ProvingDrive[];
}

const id = z.string().max(80);
const stepKey = z.string().max(200);

const spentSchema: z.ZodType<SpentTime, SpentTime> = z.strictObject({
  step: stepKey.meta({
    description: "The step and its cylinders; of one step the last entry holds",
    examples: ["check.spark 2"],
  }),
  minutes: z
    .number()
    .min(0)
    .max(100_000)
    .meta({ description: "Minutes that it took", examples: [15] }),
  shownBy: z
    .union([
      z.strictObject({ finding: id, cylinder: cylinderNameSchema.exactOptional() }),
      z.strictObject({ when: z.string().max(40) }),
    ])
    .meta({
      description: "The answer that came of it, or the moment at which the repair was noted",
      examples: [{ finding: "spark", cylinder: 2 }],
    }),
  when,
});

const tickedSchema: z.ZodType<TickedLine, TickedLine> = z.strictObject({
  list: stepKey.meta({
    description: "Whose put-back list: the repair and its cylinders",
    examples: ["repair.boot-one 2"],
  }),
  line: id.meta({ description: "The line that is done", examples: ["connector.click"] }),
  when,
});

const driveSchema: z.ZodType<ProvingDrive, ProvingDrive> = z.strictObject({
  of: z
    .string()
    .max(40)
    .meta({
      description:
        "The moment at which the repair was noted; without one its place among the repairs, from 0",
      examples: ["2026-05-01T09:30:00Z"],
    }),
  misfire: z
    .enum(["none", "less", "same"])
    .meta({ description: "Against before the repair; none when nothing was felt" }),
  isCodeBack: z.boolean().meta({ description: "A code of the fault came back" }).exactOptional(),
  when: z
    .string()
    .max(40)
    .meta({
      description: "ISO 8601 where it is known; it tells the drives of a repair apart",
      examples: ["2026-05-01T18:00:00Z"],
    }),
});

export const workBookSchema: z.ZodType<WorkBook, WorkBook> = z
  .strictObject({
    open: z
      .array(stepKey)
      .max(100)
      .meta({ description: "Ids of what is off the engine", examples: [["access.rail@engine"]] })
      .exactOptional(),
    spent: z.array(spentSchema).max(1000).meta({ description: "What steps took" }).exactOptional(),
    ticks: z
      .array(tickedSchema)
      .max(1000)
      .meta({ description: "Lines of put-back lists that are done" })
      .exactOptional(),
    drives: z
      .array(driveSchema)
      .max(500)
      .meta({ description: "Drives that prove a repair, in their order" })
      .exactOptional(),
  })
  .meta({
    id: "WorkBook",
    description: "The work beside what was found and mended; kept, never reasoned with",
    examples: [
      { open: ["access.rail@engine"], ticks: [{ list: "repair.rail", line: "connector.click" }] },
    ],
  });
