// Do the routes round the next step answer as the library does, and refuse what it would refuse?
import { driveAdvice, mend, profileById } from "@half-order/core";
import { beforeAll, describe, expect, it } from "vitest";
import { buildBareApp } from "../helper/build-app.ts";

let app: Awaited<ReturnType<typeof buildBareApp>>;
beforeAll(async () => {
  app = await buildBareApp();
});

const profile = profileById("generic.i4.1342.rail");
if (!profile) throw new Error("generic.i4.1342.rail is gone");
const findings = [
  { finding: "lamp", answer: "blinking" },
  { finding: "codes", answer: ["P0302", "P0303"] },
];
const known = { engine: "generic.i4.1342.rail", findings };
const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));
const post = (url: string, payload: object) => app.inject({ method: "POST", url, payload });

describe("POST /api/v1/next", () => {
  it("tells a step with what is at hand", async () => {
    const atHand = { tools: [], skill: 1, where: "roadside" };
    const response = await post("/api/v1/next", { ...known, atHand });
    expect(response.statusCode).toBe(200);
    const { step, checks, withheld } = response.json();
    expect(["check", "repair", "call"]).toContain(step.kind);
    expect(checks.length).toBeGreaterThan(0);
    expect(withheld.length).toBeGreaterThan(0);
  });

  it("refuses a repair that there is not, by its path", async () => {
    const response = await post("/api/v1/next", {
      ...known,
      repairs: [{ repair: "repair.plugs" }],
    });
    expect(response.statusCode).toBe(400);
    expect(response.json().problems[0]).toMatchObject({
      code: "repair-unknown",
      path: "/repairs/0/repair",
    });
  });
});

describe("POST /api/v1/drive", () => {
  it("answers as the library does", async () => {
    const response = await post("/api/v1/drive", known);
    expect(response.statusCode).toBe(200);
    expect(response.json()).toEqual(plain(driveAdvice(profile, findings)));
  });

  it("leaves out the traffic in a workshop", async () => {
    const seen = [{ finding: "alarm", answer: ["fuel-seen"] }];
    const told = async (more: object) =>
      (await post("/api/v1/drive", { ...known, findings: seen, ...more })).json().cautions;
    expect(await told({})).toContain("traffic");
    expect(await told({ atHand: { where: "workshop" } })).not.toContain("traffic");
  });
});

describe("POST /api/v1/mend", () => {
  it("answers as the library does", async () => {
    const response = await post("/api/v1/mend", { ...known, repair: "repair.rail" });
    expect(response.statusCode).toBe(200);
    expect(response.json()).toEqual(plain(mend(profile, findings, { repair: "repair.rail" })));
  });

  it("asks for the cylinder where the repair has one", async () => {
    const response = await post("/api/v1/mend", { ...known, repair: "repair.plug-one" });
    expect(response.statusCode).toBe(400);
    expect(response.json().problems[0]).toMatchObject({
      code: "cylinder-missing",
      path: "/cylinder",
    });
  });

  it("names a repair that there is not by its path in the request", async () => {
    const response = await post("/api/v1/mend", { ...known, repair: "repair.plugset" });
    expect(response.statusCode).toBe(400);
    expect(response.json().problems).toMatchObject([{ code: "repair-unknown", path: "/repair" }]);
  });
});
