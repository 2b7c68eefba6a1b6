// What the library knows: engines, faults, findings, checks and repairs.
import {
  allProfiles,
  CAUTIONS,
  CHECKS,
  describeEngine,
  FAULTS,
  FINDINGS,
  REPAIRS,
  resolveEngine,
} from "@half-order/core";
import {
  cautionSchema,
  checkSchema,
  engineDescriptionSchema,
  faultSchema,
  findingRowSchema,
  profileSchema,
  repairSchema,
} from "@half-order/core/wire";
import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { failures, findById } from "../error.ts";

const idSchema = z.strictObject({ id: z.string().max(80) });

const engineSchema = z
  .strictObject({ profile: profileSchema, description: engineDescriptionSchema })
  .meta({ id: "Engine" });

export const catalogueRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get(
    "/api/v1/engines",
    { schema: listOf("The engines that come with the library", profileSchema) },
    () => [...allProfiles()],
  );
  app.get(
    "/api/v1/engines/:id",
    { schema: oneOf("One engine and everything worked out about it", engineSchema) },
    ({ params }) => {
      const profile = findById(allProfiles(), params.id, "engine");
      return { profile, description: describeEngine(resolveEngine(profile)) };
    },
  );
  const describeDocs = {
    summary: "Work out companions, coils and connectors of an engine",
    body: profileSchema,
    response: { 200: engineDescriptionSchema, ...failures },
  };
  app.post("/api/v1/engines/describe", { schema: describeDocs }, ({ body }) =>
    describeEngine(resolveEngine(body)),
  );

  app.get("/api/v1/faults", { schema: listOf("All faults of the catalogue", faultSchema) }, () => [
    ...FAULTS,
  ]);
  app.get(
    "/api/v1/faults/:id",
    { schema: oneOf("One fault of the catalogue", faultSchema) },
    ({ params }) => findById(FAULTS, params.id, "fault"),
  );
  app.get(
    "/api/v1/findings",
    { schema: listOf("All findings that can be answered", findingRowSchema) },
    () => [...FINDINGS],
  );
  app.get(
    "/api/v1/findings/:id",
    { schema: oneOf("One finding with its options", findingRowSchema) },
    ({ params }) => findById(FINDINGS, params.id, "finding"),
  );
  app.get("/api/v1/checks", { schema: listOf("All checks", checkSchema) }, () => [...CHECKS]);
  app.get(
    "/api/v1/checks/:id",
    { schema: oneOf("One check with its steps", checkSchema) },
    ({ params }) => findById(CHECKS, params.id, "check"),
  );
  app.get("/api/v1/repairs", { schema: listOf("All repairs", repairSchema) }, () => [...REPAIRS]);
  app.get(
    "/api/v1/repairs/:id",
    { schema: oneOf("One repair and what it mends", repairSchema) },
    ({ params }) => findById(REPAIRS, params.id, "repair"),
  );
  app.get(
    "/api/v1/cautions",
    { schema: listOf("The words behind the cautions of checks", cautionSchema) },
    () => [...CAUTIONS],
  );
};

function listOf<Row>(summary: string, row: z.ZodType<Row, Row>) {
  return { summary, response: { 200: z.array(row) } };
}

function oneOf<Row>(summary: string, row: z.ZodType<Row, Row>) {
  return { summary, params: idSchema, response: { 200: row, ...failures } };
}
