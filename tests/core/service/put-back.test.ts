// The put-back list of an engine, in the order of the hand and the units of the user.
import { describe, expect, it } from "vitest";
import {
  type AtHand,
  CHECKS,
  type EngineProfile,
  InputError,
  next,
  PUT_BACK,
  profileById,
  putBackAfter,
  putBackList,
  REPAIRS,
} from "../../../packages/core/src/index.ts";
import { PLUG_TURNS } from "../../../packages/core/src/physics/torque.ts";

const rail = profileById("demo.dunlin") as EngineProfile; // 0.9–1.0 mm, 23–27 N·m
const cables = profileById("demo.plover") as EngineProfile;
const unknown: EngineProfile = { cylinders: 4, ignition: "rail" };
const idsOf = (lines: readonly { id: string }[]) => lines.map(({ id }) => id);
const lineOf = (lines: ReturnType<typeof putBackList>, id: string) =>
  lines.find((line) => line.id === id);

describe("putBackList", () => {
  it("puts the steps into the order of the hand, each once", () => {
    const ids = ["connector.lock", "plug.torque", "connector.click", "plug.torque", "plug.by-hand"];
    expect(idsOf(putBackList(rail, ids))).toEqual([
      "plug.by-hand",
      "plug.torque",
      "connector.click",
      "connector.lock",
    ]);
    expect(putBackList(rail, [])).toEqual([]);
  });

  it("holds these steps and no others", () => {
    expect(idsOf(PUT_BACK).toSorted()).toEqual(
      [
        "plug.by-hand plug.torque plug.gap well.clean head.bolt boot.spring boot.home coil.bolt lead.order",
        "connector.click connector.lock intake.hose injector.seal fuel.leak-check ground.tight",
        "belt.mark coolant.level oil.level tools.counted battery.back codes.clear first-start",
        "fuel.back cap.closed cover.bolt distributor.cap sensor.seat wheel.bolt breaker.gap timing.base",
      ]
        .join(" ")
        .split(" ")
        .toSorted(),
    );
  });

  it("says the profile's figures, in millimetres and newton metres unless asked otherwise", () => {
    const metric = putBackList(rail, ["plug.gap", "plug.torque"]);
    expect(lineOf(metric, "plug.gap")?.say).toContain("0.90 to 1.00 mm");
    expect(lineOf(metric, "plug.torque")?.say).toContain("23 to 27 N·m");
    const imperial = putBackList(rail, ["plug.gap", "plug.torque"], {
      gap: "thou",
      torque: "lb·ft",
    });
    // 0.9 mm is 35.4 and 1.0 mm is 39.4 thousandths; 23 N·m is 16.96 and 27 N·m is 19.91 lb·ft
    expect(lineOf(imperial, "plug.gap")?.say).toContain("35 to 39 thou");
    expect(lineOf(imperial, "plug.torque")?.say).toContain("17.0 to 19.9 lb·ft");
    const one = putBackList({ ...rail, figures: { plugTorqueNm: [25, 25] } }, ["plug.torque"]);
    expect(one[0]?.say).toContain("to 25 N·m,");
  });

  it("sends to the maker's manual where a figure is missing", () => {
    for (const line of putBackList(unknown, ["plug.gap", "plug.torque"])) {
      expect(line.isFigureMissing).toBe(true);
      expect(line.say).toContain("vehicle maker's manual");
    }
    const [gap] = putBackList({ ...unknown, figures: { plugGapMm: [0.8, 0.9] } }, ["plug.gap"]);
    expect(gap).toMatchObject({ isFigureMissing: false });
  });

  it("tells how it is done without a torque wrench where it is told that there is none", () => {
    const saysTorque = (tools?: AtHand["tools"]): string =>
      putBackList(rail, ["plug.torque"], undefined, tools)[0]?.say ?? "";
    expect(saysTorque()).toContain("23 to 27 N·m");
    expect(saysTorque(["hand tools", "torque wrench"])).toBe(saysTorque());
    // What earlier cases called a gauge was no torque wrench.
    for (const tools of [[], ["hand tools"], ["gauge"]] as const) {
      expect(saysTorque(tools)).toMatch(/^No torque wrench at hand/);
    }
    const [head] = putBackList(rail, ["head.bolt"], undefined, ["hand tools"]);
    expect(head?.say).toMatch(/with a torque wrench.*Never by feel/);
  });

  it("turns plugs no further without one than makers and retailers say", () => {
    const [line] = putBackList(unknown, ["plug.torque"], undefined, []);
    const { "gasket.new": fresh, "gasket.used": used, taper } = PLUG_TURNS;
    expect(line?.say).toContain("half a turn for a new ring seat, a twelfth for a used one");
    expect([fresh[0], used[1], taper[1]]).toEqual([1 / 2, 1 / 12, 1 / 16]);
    expect(line?.say).toContain("a sixteenth for a tapered seat");
  });

  it("leaves no blank in any line of any engine", () => {
    for (const profile of [rail, cables, unknown]) {
      const lines = putBackList(profile, idsOf(PUT_BACK));
      expect(lines.length).toBeGreaterThan(15);
      for (const { say } of lines) expect(say).not.toMatch(/[{}]|undefined|NaN| {2}/);
    }
  });

  it("asks for no spring where there is none", () => {
    expect(idsOf(putBackList(cables, ["boot.spring", "boot.home"]))).toEqual(["boot.home"]);
    expect(idsOf(putBackList(rail, ["boot.spring", "boot.home"]))).toHaveLength(2);
  });

  it("tells of the click before the lock, of a rough first start, and warns", () => {
    const lines = putBackList(rail, idsOf(PUT_BACK));
    expect(lineOf(lines, "connector.click")?.say).toMatch(/until it clicks/);
    expect(lineOf(lines, "connector.lock")?.say).toMatch(/^Only then/);
    expect(lineOf(lines, "first-start")?.say).toMatch(/roughly/);
    expect(lineOf(lines, "first-start")?.cautions).toContain("exhaust-gas");
    expect(lineOf(lines, "fuel.leak-check")?.cautions).toContain("fuel");
  });

  it("refuses unknown steps, each with its place and what was meant", () => {
    try {
      putBackList(rail, ["plug.torque", "plug.tork", "conector.click"]);
      expect.unreachable();
    } catch (error) {
      const { problems } = error as InputError;
      expect(problems.map(({ path }) => path)).toEqual(["/1", "/2"]);
      expect(problems[0]?.hint).toContain('"plug.torque"');
      expect(problems[1]?.hint).toContain('"connector.click"');
    }
    const bad = { ...rail, figures: { plugTorqueNm: [27, 23] } } as const;
    expect(() => putBackList(bad, [])).toThrow(InputError);
  });
});

describe("putBackAfter", () => {
  const check = (id: string) => CHECKS.find((row) => row.id === id) ?? {};

  it("tells the fuel that was cut for a spark test, with what came off for it, before the leak check", () => {
    const ids = idsOf(putBackAfter(rail, check("check.spark-rail")));
    expect(ids).toContain("fuel.back");
    expect(ids).toEqual(expect.arrayContaining(["boot.home", "coil.bolt", "connector.click"]));
    const pump = REPAIRS.find(({ id }) => id === "repair.fuel-pump") ?? {};
    const after = idsOf(putBackAfter(rail, pump));
    expect(after.indexOf("fuel.back")).toBeLessThan(after.indexOf("fuel.leak-check"));
  });

  it("tells only of what this engine has, and of a cover that lies over it", () => {
    const distributor: EngineProfile = { cylinders: 4, ignition: "distributor" };
    const plugs = check("check.plugs-out");
    expect(idsOf(putBackAfter(distributor, plugs))).toEqual([
      "well.clean",
      "plug.by-hand",
      "plug.torque",
      "boot.home",
      "lead.order",
    ]);
    const covers = [{ name: "inlet manifold", cylinders: [1], minutes: 60 }];
    expect(idsOf(putBackAfter({ ...distributor, covers }, plugs))).toEqual(
      expect.arrayContaining(["cover.bolt", "intake.hose"]),
    );
    expect(putBackAfter({ ...distributor, covers }, check("check.lamp"))).toEqual([]);
  });

  it("comes with each check that the planner tells, in the units that are wanted", () => {
    const codes = [{ finding: "codes", answer: ["P0302", "P0303"] }];
    const units = { gap: "thou", torque: "lb·ft" } as const;
    const { checks } = next(rail, codes, { units });
    for (const each of checks) {
      expect(each.putBack).toEqual(putBackAfter(rail, check(each.check), units));
    }
    expect(checks.some(({ putBack }) => putBack.length > 0)).toBe(true);
  });
});
