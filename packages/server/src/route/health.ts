// Is the server up?
import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { version } from "../config.ts";

const healthSchema = z
  .strictObject({ status: z.literal("ok"), version: z.string() })
  .meta({ id: "Health" });

export const healthRoute: FastifyPluginAsyncZod = async (app) => {
  const schema = { summary: "Is the server up?", response: { 200: healthSchema } };
  app.get("/healthz", { schema }, () => ({ status: "ok" as const, version }));
};
