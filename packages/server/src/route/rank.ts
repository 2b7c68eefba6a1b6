// Likely faults of a case, and why one of them stands where it stands.
import { rank, sensitivity, why } from "@half-order/core";
import {
  caseSchema,
  ledgerSchema,
  rankingSchema,
  sensitivitySchema,
  whySchema,
} from "@half-order/core/wire";
import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { failures } from "../error.ts";
import { caseOf } from "./case.ts";

export const rankRoutes: FastifyPluginAsyncZod = async (app) => {
  const rankDocs = {
    summary: "Rank the likely faults",
    body: caseSchema,
    response: { 200: rankingSchema, ...failures },
  };
  app.post("/api/v1/rank", { schema: rankDocs }, ({ body }) => {
    const { engine, findings, repairs = [] } = caseOf(body);
    return rank(engine, findings, { repairs });
  });

  const whyDocs = {
    summary: "Tell what each finding did to the odds of one fault",
    body: whySchema,
    response: { 200: ledgerSchema, ...failures },
  };
  app.post("/api/v1/why", { schema: whyDocs }, ({ body }) => {
    const { engine, findings, repairs = [] } = caseOf(body);
    const { fault, place } = body;
    return why(engine, findings, { fault, place }, { repairs });
  });

  const sensitivityDocs = {
    summary: "Tell how far the first place rests on exact numbers",
    description: "Takes a second or two: all numbers are shaken two hundred times.",
    body: caseSchema,
    response: { 200: sensitivitySchema, ...failures },
  };
  app.post("/api/v1/sensitivity", { schema: sensitivityDocs }, ({ body }) => {
    const { engine, findings, repairs = [] } = caseOf(body);
    return sensitivity(engine, findings, { repairs });
  });
};
