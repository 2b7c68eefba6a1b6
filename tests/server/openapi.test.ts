// Is the description of the API valid, complete and true?
import { Validator } from "@seriousme/openapi-schema-validator";
import { expect, it } from "vitest";
import { buildBareApp } from "../helper/build-app.ts";

const app = await buildBareApp();
const response = await app.inject({ url: "/api/v1/openapi.json" });
const description = response.json();

it("is valid OpenAPI 3.1", async () => {
  expect(response.statusCode).toBe(200);
  const validator = new Validator();
  const result = await validator.validate(structuredClone(description));
  expect(result.errors ?? []).toEqual([]);
  expect(result.valid).toBe(true);
  expect(validator.version).toBe("3.1");
});

it("names every route with a summary", () => {
  const routes = Object.entries<Record<string, { summary?: string }>>(description.paths).flatMap(
    ([path, methods]) =>
      Object.entries(methods).map(([method, { summary }]) => {
        expect(summary, `${method} ${path}`).toMatch(/\w/);
        return `${method} ${path}`;
      }),
  );
  expect(routes.filter((route) => !route.startsWith("head ")).sort()).toEqual([
    "get /api/v1/cautions",
    "get /api/v1/checks",
    "get /api/v1/checks/{id}",
    "get /api/v1/engines",
    "get /api/v1/engines/{id}",
    "get /api/v1/faults",
    "get /api/v1/faults/{id}",
    "get /api/v1/findings",
    "get /api/v1/findings/{id}",
    "get /api/v1/repairs",
    "get /api/v1/repairs/{id}",
    "get /healthz",
    "post /api/v1/drive",
    "post /api/v1/engines/describe",
    "post /api/v1/mend",
    "post /api/v1/next",
    "post /api/v1/rank",
    "post /api/v1/sensitivity",
    "post /api/v1/why",
  ]);
});

it("tells unknown fields, limits and the form of problems", () => {
  const { schemas } = description.components;
  expect(schemas.CaseInput.additionalProperties).toBe(false);
  expect(schemas.CaseInput.required).toEqual(["engine", "findings"]);
  expect(schemas.EngineProfileInput.properties.cylinders).toMatchObject({
    type: "integer",
    minimum: 1,
    maximum: 16,
  });
  expect(Object.keys(schemas.ProblemDetails.properties)).toEqual([
    "type",
    "title",
    "status",
    "detail",
    "instance",
    "problems",
  ]);
  const { responses } = description.paths["/api/v1/rank"].post;
  expect(responses["200"].content["application/json"].schema.$ref).toMatch(/\/Ranking$/);
  expect(responses["4XX"].content).toHaveProperty(["application/problem+json"]);
});
