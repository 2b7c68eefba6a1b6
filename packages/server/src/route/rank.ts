// Likely faults of a case, and why one of them stands where it stands.
import { InputError, rank, why } from "@half-order/core";
import {
  type Case,
  type CaseDocument,
  caseSchema,
  ledgerSchema,
  rankingSchema,
  resolveCase,
  whySchema,
} from "@half-order/core/wire";
import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { failures } from "../error.ts";

export const rankRoutes: FastifyPluginAsyncZod = async (app) => {
  const rankDocs = {
    summary: "Rank the likely faults",
    body: caseSchema,
    response: { 200: rankingSchema, ...failures },
  };
  app.post("/api/v1/rank", { schema: rankDocs }, ({ body }) => {
    const { engine, findings } = caseOf(body);
    return rank(engine, findings);
  });

  const whyDocs = {
    summary: "Tell what each finding did to the odds of one fault",
    body: whySchema,
    response: { 200: ledgerSchema, ...failures },
  };
  app.post("/api/v1/why", { schema: whyDocs }, ({ body }) => {
    const { engine, findings } = caseOf(body);
    const { fault, place } = body;
    return why(engine, findings, { fault, place });
  });
};

function caseOf(document: CaseDocument): Case {
  const reading = resolveCase(document);
  if ("problems" in reading) throw new InputError(reading.problems);
  return reading.case;
}
