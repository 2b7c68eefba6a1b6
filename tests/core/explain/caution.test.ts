import { describe, expect, it } from "vitest";
import {
  CAUTIONS,
  CHECKS,
  cautionsHere,
  FINDINGS,
  mend,
  next,
  profileById,
  REPAIRS,
  rank,
  refusal,
  stepCautions,
} from "../../../packages/core/src/index.ts";
import { TOOLS } from "../../../packages/core/src/knowledge/tool.ts";

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

  it("of the place belong to every check and repair at the roadside, first of all, and to none elsewhere", () => {
    for (const row of [...CHECKS, ...REPAIRS]) {
      expect(row.cautions, row.id).not.toContain("traffic");
      expect(stepCautions(row, "roadside"), row.id).toEqual(["traffic", ...row.cautions]);
      for (const where of ["driveway", "workshop"] as const) {
        expect(stepCautions(row, where), row.id).toEqual(row.cautions);
      }
    }
  });

  it("of the place belong, while that is not known, to what could be done at the roadside", () => {
    const told = [...CHECKS, ...REPAIRS].filter((row) =>
      stepCautions(row, undefined).includes("traffic"),
    );
    const possible = [...CHECKS, ...REPAIRS].filter(
      (row) => refusal({ where: "roadside", tools: TOOLS }, row) === undefined,
    );
    expect(told).toEqual(possible);
    expect(told.length).toBeGreaterThan(40);
    expect(told.map(({ id }) => id)).not.toContain("check.compression");
  });

  it("of the place come with the next step and with a repair, by where the car stands", () => {
    const codes = [{ finding: "codes", answer: ["P0302", "P0305"] }];
    for (const [where, isTold] of [
      ["roadside", true],
      ["driveway", false],
      ["workshop", false],
    ] as const) {
      const { checks, repairs } = next(TERN, codes, { atHand: { where } });
      expect(checks.length).toBeGreaterThan(0);
      const { cautions } = mend(TERN, codes, { repair: "repair.rail" }, { atHand: { where } });
      for (const each of [...checks, ...repairs, { cautions }]) {
        expect(each.cautions.includes("traffic")).toBe(isTold);
      }
    }
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
