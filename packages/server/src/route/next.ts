// What to do on a case: may one drive, what pays next, what belongs to a repair.
import { driveAdvice, mend, next } from "@half-order/core";
import {
  caseSchema,
  driveSchema,
  mendRequestSchema,
  mendSchema,
  nextSchema,
} from "@half-order/core/wire";
import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { failures } from "../error.ts";
import { caseOf } from "./case.ts";

/** A server has others to answer: the plan is cut here, and is good by then. */
const THINK_MS = 100;

export const nextRoutes: FastifyPluginAsyncZod = async (app) => {
  const nextDocs = {
    summary: "Tell what pays most to do next",
    body: caseSchema,
    response: { 200: nextSchema, ...failures },
  };
  app.post("/api/v1/next", { schema: nextDocs }, ({ body }) => {
    const { engine, findings, repairs = [], atHand = {} } = caseOf(body);
    const end = performance.now() + THINK_MS;
    return next(engine, findings, { repairs, atHand, isEnough: () => performance.now() > end });
  });

  const driveDocs = {
    summary: "Tell whether one may drive on, by rules and never by a probability",
    body: caseSchema,
    response: { 200: driveSchema, ...failures },
  };
  app.post("/api/v1/drive", { schema: driveDocs }, ({ body }) => {
    const { engine, findings, atHand: { where } = {} } = caseOf(body);
    return driveAdvice(engine, findings, { where });
  });

  const mendDocs = {
    summary: "Tell what belongs to a repair: company, put-back list and proof",
    body: mendRequestSchema,
    response: { 200: mendSchema, ...failures },
  };
  app.post("/api/v1/mend", { schema: mendDocs }, ({ body }) => {
    const { repair, cylinder, ...document } = body;
    const { engine, findings, repairs = [], atHand = {} } = caseOf(document);
    const wanted = { repair, ...(cylinder === undefined ? {} : { cylinder }) };
    return mend(engine, findings, wanted, { repairs, atHand });
  });
};
