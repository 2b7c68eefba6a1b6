// What a finding looks like when it comes from outside. Whether it exists and takes such an answer is
// checked against the knowledge.
import { z } from "zod";
import type { Answer, Finding } from "../knowledge/answer.ts";
import { cylinderNameSchema } from "./profile.ts";

const answerSchema: z.ZodType<Answer, Answer> = z
  .union([
    z.string().max(80),
    z.number(),
    z.array(z.string().max(80)).max(100),
    z.record(z.string().max(8), z.number()),
  ])
  .meta({
    description:
      "What was seen: an option, a measured number, a list of options or codes, or counts by cylinder",
    examples: ["steady", 1.6, ["P0302", "P0305"], { "1": 0, "2": 131 }],
  });

export const findingSchema: z.ZodType<Finding, Finding> = z
  .strictObject({
    finding: z
      .string()
      .max(80)
      .meta({ description: "Which finding is answered", examples: ["lamp"] }),
    answer: answerSchema,
    cylinder: cylinderNameSchema.exactOptional(),
    when: z
      .string()
      .max(40)
      .meta({
        description: "ISO 8601; kept, never reasoned with",
        examples: ["2026-05-01T09:30:00Z"],
      })
      .exactOptional(),
  })
  .meta({
    id: "Finding",
    description: "One thing that was observed; what was not looked at is left out",
    examples: [
      { finding: "lamp", answer: "steady" },
      { finding: "plug.look", cylinder: 2, answer: "wet-petrol" },
    ],
  });
