// The HTTP server without the process: every route and plugin, registered by hand.
import { existsSync, readFileSync } from "node:fs";
import { join, sep } from "node:path";
import compress from "@fastify/compress";
import helmet from "@fastify/helmet";
import fastifyStatic from "@fastify/static";
import swagger from "@fastify/swagger";
import { InputError } from "@half-order/core";
import { caseProblems, parseJson, readShape } from "@half-order/core/wire";
import fastify, { type FastifyInstance, type FastifyServerOptions } from "fastify";
import {
  jsonSchemaTransform,
  jsonSchemaTransformObject,
  serializerCompiler,
} from "fastify-type-provider-zod";
import type { z } from "zod";
import { type Config, version } from "./config.ts";
import { answerError, handleErrors } from "./error.ts";
import { pagePolicy } from "./page-policy.ts";
import { catalogueRoutes } from "./route/catalogue.ts";
import { healthRoute } from "./route/health.ts";
import { nextRoutes } from "./route/next.ts";
import { rankRoutes } from "./route/rank.ts";

const BODY_LIMIT = 1024 * 1024;

/** The server, to listen with or to be asked directly. */
export async function buildApp(
  { page, tls }: Pick<Config, "page" | "tls">,
  logger: FastifyServerOptions["logger"] = false,
): Promise<FastifyInstance> {
  // The types tell a server with a certificate from one without; nothing here depends on which it is.
  const app: FastifyInstance = fastify({
    logger,
    bodyLimit: BODY_LIMIT,
    https: tls ?? null,
    frameworkErrors: answerError,
  } as object);
  const document = join(page, "index.html");
  const hasPage = existsSync(document);
  handleErrors(app, hasPage);
  speakJson(app);
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: pagePolicy(hasPage ? readFileSync(document, "utf8") : ""),
    },
    // Whether a name is to be reached by https only is for whoever puts a proxy in front.
    strictTransportSecurity: false,
    xFrameOptions: { action: "deny" },
  });
  await app.register(compress);
  await app.register(swagger, {
    openapi: {
      openapi: "3.1.0",
      info: {
        title: "Half-Order",
        version,
        description: "Ranks the likely faults behind an engine misfire. The weights are estimates.",
      },
    },
    transform: jsonSchemaTransform,
    transformObject: jsonSchemaTransformObject,
  });
  await app.register(healthRoute);
  await app.register(rankRoutes);
  await app.register(nextRoutes);
  await app.register(catalogueRoutes);
  app.get("/api/v1/openapi.json", { schema: { hide: true } }, () => app.swagger());
  if (hasPage) await servePage(app, page);
  return app;
}

/** Reads and writes bodies by the schemas of the wire, and says what is wrong in our own words. */
function speakJson(app: FastifyInstance): void {
  app.removeContentTypeParser(["application/json", "text/plain"]);
  app.addContentTypeParser("application/json", { parseAs: "string" }, (_, body, done) => {
    try {
      done(null, parseJson(body.toString()));
    } catch (error) {
      done(error as Error);
    }
  });
  app.setValidatorCompiler<z.ZodType>(({ schema }) => (input) => {
    // Where no body was sent, the framework hands on null.
    const reading = readShape(schema, input ?? undefined);
    if (!("problems" in reading)) return reading;
    return { error: new InputError(caseProblems(input, reading.problems)) };
  });
  app.setSerializerCompiler(serializerCompiler);
}

async function servePage(app: FastifyInstance, page: string): Promise<void> {
  const assets = join(page, "assets") + sep;
  await app.register(fastifyStatic, {
    root: page,
    cacheControl: false,
    // The build has compressed them better than there is time for here.
    preCompressed: true,
    setHeaders: (reply, path) => {
      // The names of assets carry a hash of what is in them; all else keeps its name when it changes.
      const isHashed = path.startsWith(assets);
      reply.header("cache-control", isHashed ? "public, max-age=31536000, immutable" : "no-cache");
    },
  });
}
