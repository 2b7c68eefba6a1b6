import { describe, expect, it } from "vitest";
import {
  CAUTIONS,
  cautionsHere,
  FINDINGS,
  profileById,
  rank,
} from "../../../packages/core/src/index.ts";

const TERN = profileById("demo.tern");
if (!TERN) throw new Error("demo.tern");

describe("cautions that an answer calls for", () => {
  it("come at once with a blinking lamp, and not with a steady one", () => {
    expect(rank(TERN, [{ finding: "lamp", answer: "blinking" }]).cautions).toEqual([
      "blinking-lamp",
    ]);
    expect(rank(TERN, [{ finding: "lamp", answer: "steady" }]).cautions).toEqual([]);
  });

  it("come in the order of the answers, each once, also from yes and from lists", () => {
    const { cautions } = rank(TERN, [
      { finding: "exhaust.glowing", answer: "yes" },
      { finding: "smell", answer: ["petrol", "scorch"] },
      { finding: "electrics-wild", answer: "no" },
    ]);
    expect(cautions).toEqual(["glowing-exhaust", "fuel"]);
  });

  it("are told where they are about the place, all while it is not known", () => {
    const ids = ["fuel", "traffic", "hot-parts", "no such caution"];
    expect(cautionsHere(ids, undefined)).toEqual(ids);
    expect(cautionsHere(ids, "roadside")).toEqual(ids);
    const elsewhere = ids.filter((id) => id !== "traffic");
    expect(cautionsHere(ids, "driveway")).toEqual(elsewhere);
    expect(cautionsHere(ids, "workshop")).toEqual(elsewhere);
  });

  it("exist", () => {
    const known = new Set<string>(CAUTIONS.map(({ id }) => id));
    const named = FINDINGS.flatMap(({ options }) =>
      Object.values(options).flatMap(({ caution }) => caution ?? []),
    );
    expect(named.length).toBeGreaterThan(3);
    expect(named.filter((id) => !known.has(id))).toEqual([]);
  });
});

describe("a connector pushed home that cures it", () => {
  it("puts the connector first when nothing else is known", () => {
    const { ranking } = rank(TERN, [{ finding: "connector.push", cylinder: 1, answer: "cured" }]);
    expect(ranking[0]?.fault).toBe("connector.loose");
  });
});
