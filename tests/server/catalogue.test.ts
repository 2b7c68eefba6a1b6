// Do the catalogue routes hand out what the library knows?
import {
  allProfiles,
  CAUTIONS,
  CHECKS,
  describeEngine,
  FAULTS,
  FINDINGS,
  profileById,
  REPAIRS,
  resolveEngine,
} from "@half-order/core";
import { beforeAll, describe, expect, it } from "vitest";
import { version } from "../../packages/server/src/config.ts";
import { buildBareApp } from "../helper/build-app.ts";

let app: Awaited<ReturnType<typeof buildBareApp>>;
beforeAll(async () => {
  app = await buildBareApp();
});

const asJson = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

describe("lists", () => {
  it.each([
    ["/api/v1/engines", allProfiles()],
    ["/api/v1/faults", FAULTS],
    ["/api/v1/findings", FINDINGS],
    ["/api/v1/checks", CHECKS],
    ["/api/v1/repairs", REPAIRS],
    ["/api/v1/cautions", CAUTIONS],
  ])("GET %s", async (url, rows) => {
    const response = await app.inject({ url });
    expect(response.statusCode).toBe(200);
    expect(response.json()).toEqual(asJson(rows));
  });
});

describe("single rows", () => {
  it.each([
    ...FAULTS.map((row) => [`/api/v1/faults/${row.id}`, row] as const),
    ...FINDINGS.map((row) => [`/api/v1/findings/${row.id}`, row] as const),
    ...CHECKS.map((row) => [`/api/v1/checks/${row.id}`, row] as const),
    ...REPAIRS.map((row) => [`/api/v1/repairs/${row.id}`, row] as const),
  ])("GET %s", async (url, row) => {
    const response = await app.inject({ url });
    expect(response.statusCode).toBe(200);
    expect(response.json()).toEqual(asJson(row));
  });

  it("GET /api/v1/engines/demo.tern gives the profile and what follows from it", async () => {
    const profile = profileById("demo.tern");
    if (!profile) throw new Error("demo.tern is gone");
    const response = await app.inject({ url: "/api/v1/engines/demo.tern" });
    expect(response.statusCode).toBe(200);
    expect(response.json()).toEqual(
      asJson({ profile, description: describeEngine(resolveEngine(profile)) }),
    );
  });

  it.each([
    ["/api/v1/engines/demo.term", "engine-unknown", "demo.tern"],
    ["/api/v1/faults/coil.weka", "fault-unknown", "coil.weak"],
    ["/api/v1/findings/plug.loook", "finding-unknown", "plug.look"],
    ["/api/v1/checks/check.codez", "check-unknown", "check.codes"],
    ["/api/v1/repairs/repair.rial", "repair-unknown", "repair.rail"],
  ])("GET %s is a 404 that names the nearest", async (url, code, near) => {
    const response = await app.inject({ url });
    expect(response.statusCode).toBe(404);
    expect(response.json().problems).toMatchObject([{ code, path: "/id" }]);
    expect(response.json().problems[0].hint).toContain(near);
  });

  it("refuses an id that is too long to be one", async () => {
    const response = await app.inject({ url: `/api/v1/faults/${"x".repeat(90)}` });
    expect(response.statusCode).toBe(400);
    expect(response.json().problems).toMatchObject([{ code: "too-big", path: "/id" }]);
  });
});

describe("POST /api/v1/engines/describe", () => {
  const describeIt = (payload: object) =>
    app.inject({ method: "POST", url: "/api/v1/engines/describe", payload });

  it("works out companions and coils", async () => {
    const response = await describeIt({
      cylinders: 4,
      firingOrder: [1, 3, 4, 2],
      ignition: "pack",
    });
    expect(response.statusCode).toBe(200);
    expect(response.json()).toMatchObject({
      pairs: [
        [1, 4],
        [3, 2],
      ],
      groups: [
        [1, 4],
        [3, 2],
      ],
      mismatchDeg: 0,
    });
  });

  it("says what is wrong with the profile, by paths into it", async () => {
    const profile = { cylinders: 4, firingOrder: [1, 3, 4, 4], ignition: "pack" };
    const response = await describeIt(profile);
    expect(response.statusCode).toBe(400);
    expect(response.json().problems[0]).toMatchObject({ path: "/firingOrder/3" });
  });

  it("asks for the firing order when it is not there", async () => {
    const response = await describeIt({ cylinders: 4, ignition: "pack" });
    expect(response.statusCode).toBe(400);
    expect(response.json().problems).toMatchObject([
      { code: "order-missing", path: "/firingOrder" },
    ]);
  });
});

it("GET /healthz says that the server is up, and in which version", async () => {
  const response = await app.inject({ url: "/healthz" });
  expect(response.json()).toEqual({ status: "ok", version });
  expect(version).toMatch(/^\d+\.\d+\.\d+$/);
});
