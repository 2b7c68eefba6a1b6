// Every answer that is not what was asked for: the only error handler and the only not-found handler.
// Their form is RFC 9457, with our list of problems beside it.
import { STATUS_CODES } from "node:http";
import { InputError, type Problem } from "@half-order/core";
import { nearest } from "@half-order/core/wire";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";

const problemSchema = z
  .strictObject({
    code: z.string().meta({ description: "Stable word for programs" }),
    path: z.string().meta({ description: "JSON Pointer to the bad field; empty for the whole" }),
    message: z.string().meta({ description: "What was got and why it cannot be used" }),
    hint: z.string().meta({ description: "What to write instead" }),
  })
  .meta({ id: "Problem" });

const problemDetailsSchema = z
  .strictObject({
    type: z.string(),
    title: z.string(),
    status: z.int(),
    detail: z.string(),
    instance: z.string(),
    problems: z.array(problemSchema).exactOptional(),
  })
  .meta({ id: "ProblemDetails", description: "RFC 9457" });

/** For the `response` of a route: how it says that it could not do as asked. */
export const failures = {
  "4xx": {
    description: "The request cannot be used; problems say why and what to write instead",
    content: { "application/problem+json": { schema: problemDetailsSchema } },
  },
} as const;

/** The path names something that is not there. */
class MissingError extends Error {
  readonly problems: readonly Problem[];

  constructor(problem: Problem) {
    super(problem.message);
    this.problems = [problem];
  }
}

/** The row with this id; else an error that becomes a 404 naming the nearest ids. */
export function findById<Row extends { readonly id?: string }>(
  rows: readonly Row[],
  id: string,
  noun: string,
): Row {
  const row = rows.find((candidate) => candidate.id === id);
  if (row) return row;
  const ids = rows.flatMap((candidate) => candidate.id ?? []);
  const close = nearest(id, ids, Number.POSITIVE_INFINITY).slice(0, 3);
  throw new MissingError({
    code: `${noun}-unknown`,
    path: "/id",
    message: `No ${noun} has the id ${JSON.stringify(id)}.`,
    hint: `The nearest are ${close.join(", ")}.`,
  });
}

/** Sets both handlers. Call it before any route is added: it takes note of them for 405. */
export function handleErrors(app: FastifyInstance, hasPage: boolean): void {
  const routes: { readonly pattern: RegExp; readonly method: string }[] = [];
  app.addHook("onRoute", ({ url, method }) => {
    if (url.includes("*")) return;
    const pattern = new RegExp(`^${url.replaceAll(".", "\\.").replace(/:\w+/g, "[^/]+")}$`);
    for (const each of [method].flat()) routes.push({ pattern, method: each });
  });
  app.setErrorHandler<Error & { statusCode?: number }>(answerError);
  app.setNotFoundHandler((request, reply) => {
    const path = request.url.split("?")[0] ?? "";
    const methods = routes.filter(({ pattern }) => pattern.test(path)).map((route) => route.method);
    if (methods.length > 0) return refuseMethod(request, reply, methods);
    if (hasPage && wantsPage(request)) return reply.sendFile("index.html");
    const detail = `There is nothing at ${path} for ${request.method}.`;
    return answer(request, reply, 404, { detail });
  });
}

/** A person who follows a link into the page, as opposed to a program or a missing picture. */
function wantsPage({ method, url, headers }: FastifyRequest): boolean {
  const isReading = method === "GET" || method === "HEAD";
  return isReading && !/^\/api(\/|\?|$)/.test(url) && /\btext\/html\b/.test(headers.accept ?? "");
}

function refuseMethod(request: FastifyRequest, reply: FastifyReply, methods: readonly string[]) {
  const allowed = [...new Set(methods)].join(", ");
  const detail = `${request.method} cannot be used here; use ${allowed}.`;
  return answer(request, reply.header("allow", allowed), 405, { detail });
}

/** Answers every error of a request; for the framework's own, too, which come before any route is found. */
export function answerError(
  error: Error & { statusCode?: number },
  request: FastifyRequest,
  reply: FastifyReply,
) {
  if (error instanceof InputError) {
    const detail = "The request cannot be used: see problems.";
    return answer(request, reply, 400, { detail, problems: error.problems });
  }
  if (error instanceof MissingError) {
    return answer(request, reply, 404, { detail: error.message, problems: error.problems });
  }
  if ("code" in error && error.code === "FST_ERR_BAD_URL") {
    const detail = "The address cannot be read: after % stand two hexadecimal digits, of UTF-8.";
    return answer(request, reply, 400, { detail });
  }
  const { statusCode = 500 } = error;
  if (statusCode >= 500) {
    request.log.error(error);
    const detail = "Something went wrong on this side; the reason is in the log.";
    return answer(request, reply, 500, { detail });
  }
  return answer(request, reply, statusCode, { detail: DETAILS[statusCode] ?? error.message });
}

const DETAILS: Readonly<Record<number, string>> = {
  413: "The body is larger than 1 MB.",
  414: "A part of the address is too long: no id is.",
  415: "The body must be JSON: send it with content-type: application/json.",
};

function answer(
  request: FastifyRequest,
  reply: FastifyReply,
  status: number,
  more: { readonly detail: string; readonly problems?: readonly Problem[] },
) {
  const title = STATUS_CODES[status] ?? "Error";
  return reply
    .code(status)
    .type("application/problem+json")
    .send({ type: "about:blank", title, status, instance: request.url, ...more });
}
