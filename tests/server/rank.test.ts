// Do the ranking routes answer as the library does, and refuse what it would refuse?
import { profileById, rank, sensitivity, why } from "@half-order/core";
import { beforeAll, describe, expect, it } from "vitest";
import { buildBareApp } from "../helper/build-app.ts";

let app: Awaited<ReturnType<typeof buildBareApp>>;
beforeAll(async () => {
  app = await buildBareApp();
});

const profile = profileById("demo.dunlin");
if (!profile) throw new Error("demo.dunlin is gone");

const findings = [
  { finding: "codes", answer: ["P0302", "P0303"] },
  { finding: "plug.look", cylinder: 2, answer: "wet-petrol" },
];

const post = (url: string, payload: object) => app.inject({ method: "POST", url, payload });

describe("POST /api/v1/rank", () => {
  it("ranks as the library does", async () => {
    const response = await post("/api/v1/rank", { engine: "demo.dunlin", findings });
    expect(response.statusCode).toBe(200);
    expect(response.headers["content-type"]).toMatch(/^application\/json/);
    expect(response.json()).toEqual(JSON.parse(JSON.stringify(rank(profile, findings))));
  });

  it("takes a profile in place of an id, and a whole saved case", async () => {
    const { id: _, ...own } = profile;
    const saved = { halfOrderCase: 1, title: "t", note: "n", engine: own, findings };
    const response = await post("/api/v1/rank", saved);
    expect(response.statusCode).toBe(200);
    expect(response.json().ranking).toEqual(
      JSON.parse(JSON.stringify(rank(profile, findings).ranking)),
    );
  });

  it("ranks without any finding", async () => {
    const response = await post("/api/v1/rank", { engine: "demo.dunlin", findings: [] });
    expect(response.statusCode).toBe(200);
    expect(response.json().ranking.length).toBeGreaterThan(50);
  });

  it("refuses a body of the wrong shape, telling every fault by its path", async () => {
    const response = await post("/api/v1/rank", {
      engine: { cylinders: "six", ignition: "rail" },
      findings: [{ finding: "lamp", anwser: "steady" }],
    });
    expect(response.statusCode).toBe(400);
    expect(
      response
        .json()
        .problems.map((p: { path: string }) => p.path)
        .sort(),
    ).toEqual(["/engine/cylinders", "/findings/0/answer", "/findings/0/anwser"]);
  });

  it("refuses what has the right shape and no sense", async () => {
    const response = await post("/api/v1/rank", {
      engine: "demo.dunlin",
      findings: [{ finding: "lamp", answer: "sparkling" }],
    });
    expect(response.statusCode).toBe(400);
    expect(response.json().problems).toMatchObject([
      { code: "answer-wrong", path: "/findings/0/answer" },
    ]);
  });

  it("refuses an unknown engine and names the nearest", async () => {
    const response = await post("/api/v1/rank", { engine: "demo.dunlim", findings: [] });
    expect(response.statusCode).toBe(400);
    expect(response.json().problems[0]).toMatchObject({ code: "engine-unknown", path: "/engine" });
    expect(response.json().problems[0].hint).toContain("demo.dunlin");
  });
});

describe("a case that is wrong in several ways", () => {
  it("is told all of them at once: shape, engine and findings", async () => {
    const response = await post("/api/v1/rank", {
      engine: "demo.dunlim",
      findings: [
        { finding: "lamp", answer: true },
        { finding: "mist", answer: null },
        { finding: "lmap", answer: "on" },
      ],
    });
    expect(response.statusCode).toBe(400);
    const { problems } = response.json();
    expect(problems.map((p: { code: string; path: string }) => [p.path, p.code])).toEqual([
      ["/engine", "engine-unknown"],
      ["/findings/0/answer", "answer-wrong"],
      ["/findings/1/answer", "answer-wrong"],
      ["/findings/2/finding", "finding-unknown"],
    ]);
    expect(problems[1].hint).toContain('"off"');
    expect(problems[2].hint).toBe('Write "yes" or "no".');
  });
});

describe("POST /api/v1/sensitivity", () => {
  it("tells what the library tells", async () => {
    const response = await post("/api/v1/sensitivity", { engine: "demo.dunlin", findings });
    expect(response.statusCode).toBe(200);
    const told = response.json();
    expect(told).toEqual(JSON.parse(JSON.stringify(sensitivity(profile, findings))));
    expect(told.flips.length).toBeGreaterThan(0);
    expect(told.stability.map(({ sigma }: { sigma: number }) => sigma)).toEqual([0.5, 1]);
  });

  it("refuses what a ranking refuses", async () => {
    const response = await post("/api/v1/sensitivity", { engine: "demo.dunlin" });
    expect(response.statusCode).toBe(400);
    expect(response.json().problems).toMatchObject([{ code: "field-missing", path: "/findings" }]);
  });
});

describe("POST /api/v1/why", () => {
  const [first] = rank(profile, findings).ranking;
  if (!first) throw new Error("the ranking is empty");
  const { fault, place } = first;

  it("tells the ledger as the library does, and its column adds up", async () => {
    const response = await post("/api/v1/why", { engine: "demo.dunlin", findings, fault, place });
    expect(response.statusCode).toBe(200);
    const ledger = response.json();
    expect(ledger).toEqual(JSON.parse(JSON.stringify(why(profile, findings, { fault, place }))));
    const sum = ledger.lines.reduce(
      (total: number, line: { weightDb: number }) => total + line.weightDb,
      ledger.priorDb,
    );
    // Both sides are sums of the same few doubles.
    expect(sum).toBeCloseTo(ledger.posteriorDb, 9);
  });

  it("refuses a fault that this engine cannot have", async () => {
    const asked = { engine: "demo.dunlin", findings, fault, place: "coil 1+2" };
    const response = await post("/api/v1/why", asked);
    expect(response.statusCode).toBe(400);
    expect(response.json().problems).toMatchObject([{ code: "no-such-fault" }]);
  });

  it("needs the fault and its place", async () => {
    const response = await post("/api/v1/why", { engine: "demo.dunlin", findings });
    expect(response.statusCode).toBe(400);
    expect(response.json().problems).toMatchObject([
      { code: "field-missing", path: "/fault" },
      { code: "field-missing", path: "/place" },
    ]);
  });
});
