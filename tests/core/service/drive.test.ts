// Every drive rule by its name, and what must be true of any advice on driving.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  allProfiles,
  DRIVE_LEVELS,
  DRIVE_RULES,
  type DriveAdvice,
  driveAdvice,
  type EngineProfile,
  type Finding,
  hasDiagnosticPort,
  InputError,
  LIMP_HOME,
  profileById,
} from "../../../packages/core/src/index.ts";
import { findingsFor } from "../../helper/arbitrary-findings.ts";
import { findingWith, waysTo } from "../../helper/drive-condition.ts";

const four: EngineProfile = { cylinders: 4, ignition: "pack", firingOrder: [1, 3, 4, 2] };
const six = profileById("demo.tern") as EngineProfile;
const older = profileById("demo.lapwing") as EngineProfile;
const lampOff: Finding = { finding: "lamp", answer: "off" };

const levelOf = ({ level }: DriveAdvice) => level?.level;
const rulesOf = ({ rules }: DriveAdvice) => rules.map(({ id }) => id);
/** 0 is the most cautious; no level is the least. */
const rankOf = (advice: DriveAdvice) =>
  advice.level ? DRIVE_LEVELS.indexOf(advice.level.level) : DRIVE_LEVELS.length;

describe("each rule", () => {
  it.each(DRIVE_RULES)(
    "$id holds on its own, in every way it can: $level",
    ({ id, level, when, fuelling }) => {
      const engine = fuelling === "carburettor" ? older : four;
      const ways = waysTo(when);
      expect(ways.length).toBeGreaterThan(0);
      for (const way of ways) {
        const advice = driveAdvice(engine, way);
        expect(rulesOf(advice), JSON.stringify(way)).toContain(id);
        expect(rankOf(advice)).toBeLessThanOrEqual(DRIVE_LEVELS.indexOf(level));
      }
    },
  );

  // The level that practice gives each situation, written down a second time and apart from the table.
  const situations: readonly (readonly [string, readonly Finding[], string, string])[] = [
    [
      "blinks and is rough",
      [said("lamp", "blinking"), said("complaint.severity", "clear")],
      "stop-now",
      "drive.blinks-and-rough",
    ],
    ["blinks", [said("lamp", "blinking")], "do-not-drive", "drive.blinks"],
    [
      "blinked under load, now steady",
      [said("lamp", "blinked-then-steady")],
      "to-safety-only",
      "drive.blinked",
    ],
    ["blinked, now out", [said("lamp", "blinked-then-out")], "to-safety-only", "drive.blinked"],
    [
      "blinked, and misses at light throttle too",
      [said("lamp", "blinked-then-steady"), said("regime.worst", "cruise")],
      "do-not-drive",
      "drive.blinked-and-misses",
    ],
    [
      "blinked, and misses under load alone",
      [said("lamp", "blinked-then-steady"), said("regime.worst", "pull")],
      "to-safety-only",
      "drive.blinked",
    ],
    [
      "steady lamp, slight roughness",
      [said("lamp", "steady"), said("complaint.severity", "slight")],
      "drive-gently",
      "drive.lamp-steady",
    ],
    [
      "no lamp, only a feel",
      [lampOff, said("complaint.severity", "slight")],
      "normal-care",
      "drive.lamp-off",
    ],
    ["liquid petrol", [said("alarm", ["fuel-seen"])], "stop-now", "drive.fuel-seen"],
    [
      "petrol in the air and a spark outside",
      [said("smell", ["petrol"]), said("dark-look", "yes")],
      "stop-now",
      "drive.fuel-and-spark",
    ],
    ["glowing exhaust", [said("exhaust.glowing", "yes")], "stop-now", "drive.exhaust-hot"],
    ["a smell of hot floor", [said("smell", ["scorch"])], "stop-now", "drive.exhaust-hot"],
    ["gauges jump", [said("electrics-wild", "yes")], "stop-now", "drive.stray-voltage"],
    [
      "burnt insulation",
      [said("smell", ["burnt-insulation"])],
      "stop-now",
      "drive.burnt-insulation",
    ],
    ["hot gauge", [said("alarm", ["hot-gauge"])], "stop-now", "drive.overheats"],
    ["white sweet smoke", [said("smoke", ["white"])], "stop-now", "drive.overheats"],
    ["oil lamp", [said("alarm", ["oil-lamp"])], "stop-now", "drive.mechanical"],
    ["knock", [said("sound", ["knock"])], "stop-now", "drive.mechanical"],
    ["plug blown out", [said("alarm", ["plug-out"])], "stop-now", "drive.mechanical"],
    ["a thump", [said("alarm", ["thump"])], "stop-now", "drive.thump"],
    ["cuts out", [lampOff, said("complaint.main", "cuts-out")], "do-not-drive", "drive.cuts-out"],
    [
      "petrol in the oil",
      [said("smell", ["petrol-in-oil"])],
      "do-not-drive",
      "drive.injector-open",
    ],
    [
      "right after belt work",
      [said("work", ["belt"]), said("onset", "after-work")],
      "do-not-drive",
      "drive.timing",
    ],
    ["crank and cam do not agree", [said("codes", ["P0016"])], "do-not-drive", "drive.timing"],
    [
      "two of four by code",
      [said("lamp", "steady"), said("codes", ["P0301", "P0304"])],
      "do-not-drive",
      "drive.half-missing",
    ],
    [
      "two of four by counts",
      [said("counts", { 1: 300, 2: 2, 3: 0, 4: 280 })],
      "do-not-drive",
      "drive.half-missing",
    ],
    [
      "one of four dead by test",
      [lampOff, { finding: "cancel", cylinder: 2, answer: "no-drop" }],
      "to-safety-only",
      "drive.one-dead",
    ],
    [
      "one of four by code",
      [said("lamp", "steady"), said("codes", ["P0302"])],
      "drive-gently",
      "drive.one-named",
    ],
    [
      "barely drivable",
      [lampOff, said("complaint.severity", "barely-drivable")],
      "to-safety-only",
      "drive.barely",
    ],
    ["loses coolant", [lampOff, said("coolant", "loss")], "drive-gently", "drive.coolant-low"],
    [
      "overheated lately",
      [lampOff, said("coolant", "overheated")],
      "do-not-drive",
      "drive.coolant-inside",
    ],
  ];

  it.each(situations)("%s (common practice)", (_, findings, level, rule) => {
    const advice = driveAdvice(four, findings);
    expect(levelOf(advice)).toBe(level);
    expect(rulesOf(advice)).toContain(rule);
  });
});

describe("how many cylinders miss", () => {
  it("is held against how many there are", () => {
    const two = said("codes", ["P0302", "P0305"]);
    const advice = driveAdvice(six, [two]);
    expect(advice.missing).toEqual([2, 5]);
    expect(rulesOf(advice)).toContain("drive.two-missing");
    expect(rulesOf(advice)).not.toContain("drive.half-missing");
    expect(levelOf(advice)).toBe("do-not-drive");
    const three: EngineProfile = {
      cylinders: 3,
      ignition: "coil-per-plug",
      firingOrder: [1, 3, 2],
    };
    const one = [said("codes", ["P0302"]), said("complaint.severity", "clear"), lampOff];
    expect(levelOf(driveAdvice(three, one))).toBe("to-safety-only");
    expect(levelOf(driveAdvice(four, one))).toBe("drive-gently");
  });

  it("adds up over codes, counts and tests", () => {
    const advice = driveAdvice(six, [
      said("codes", ["P0302"]),
      { finding: "cancel", cylinder: 5, answer: "no-drop" },
      { finding: "cancel", cylinder: 1, answer: "small-drop" },
      said("counts", { 3: 400, 1: 30 }),
    ]);
    expect(advice.missing).toEqual([2, 3, 5]);
  });

  it("is not taken from misses at random, nor from a handful of counts", () => {
    expect(driveAdvice(four, [said("codes", ["P0301", "P0302", "P0304"])]).missing).toEqual([]);
    expect(driveAdvice(four, [said("counts", { 1: 90, 2: 80, 3: 95, 4: 70 })]).missing).toEqual([]);
    expect(driveAdvice(four, [said("counts", { 2: 49 })]).missing).toEqual([]);
    expect(driveAdvice(four, [said("counts", { 2: 50, 3: 4 })]).missing).toEqual([2]);
    // above fifty, but under a tenth of all
    expect(driveAdvice(four, [said("counts", { 2: 900, 3: 60 })]).missing).toEqual([2]);
  });
});

describe("the lamp", () => {
  it("is asked for first, and until then nothing is said that needs it", () => {
    const advice = driveAdvice(four, []);
    expect(advice.ask).toBe("lamp");
    expect(advice.level).toBeUndefined();
    expect(advice.rules).toEqual([]);
  });

  it("is not waited for when something else says stop", () => {
    const advice = driveAdvice(four, [said("exhaust.glowing", "yes")]);
    expect(advice.ask).toBeUndefined();
    expect(levelOf(advice)).toBe("stop-now");
  });

  it("is asked for beside what is known to forbid driving", () => {
    const advice = driveAdvice(four, [said("complaint.main", "stalls")]);
    expect(advice.ask).toBe("lamp");
    expect(levelOf(advice)).toBe("do-not-drive");
  });

  it("is not asked for once it was looked at", () => {
    expect(driveAdvice(four, [lampOff]).ask).toBeUndefined();
  });
});

describe("a look round the car", () => {
  const old = { ...four, ignition: "distributor", diagnosticPort: false } as const;
  const smell = said("smell", ["petrol"]);
  const nothing = said("alarm", []);

  it("is asked for where no lamp could warn", () => {
    expect(driveAdvice(old, []).ask).toBe("alarm");
    expect(driveAdvice(old, [nothing]).ask).toBeUndefined();
  });

  it("is asked for once it smells of petrol, and until then the engine rests", () => {
    expect(driveAdvice(four, [smell, lampOff])).toMatchObject({ ask: "alarm", rests: true });
    const looked = driveAdvice(four, [smell, lampOff, nothing]);
    expect([levelOf(looked), looked.rests, looked.ask]).toEqual([
      "do-not-drive",
      undefined,
      undefined,
    ]);
    const seen = driveAdvice(four, [smell, said("alarm", ["fuel-seen"])]);
    expect([levelOf(seen), seen.rests]).toEqual(["stop-now", true]);
  });
});

describe("a cylinder that feels dead", () => {
  it("is driven gently at most", () => {
    const advice = driveAdvice(four, [lampOff, said("complaint.dead-cylinders", "one")]);
    expect(levelOf(advice)).toBe("drive-gently");
  });
});

describe("advice", () => {
  it("tells all that hold, the most cautious first, with everything never to do", () => {
    const advice = driveAdvice(four, [
      said("lamp", "blinking"),
      said("complaint.severity", "barely-drivable"),
      said("smell", ["petrol"]),
    ]);
    const ranks = advice.rules.map(({ level }) => DRIVE_LEVELS.indexOf(level));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(rulesOf(advice)).toEqual([
      "drive.blinks-and-rough",
      "drive.blinks",
      "drive.petrol-smell",
      "drive.barely",
    ]);
    expect(advice.cautions).toEqual(["blinking-lamp", "traffic", "fuel"]);
    for (const { never } of advice.rules)
      expect(advice.never).toEqual(expect.arrayContaining([...never]));
  });

  it("tells how to reach safety only where one may", () => {
    const limping = driveAdvice(four, [said("lamp", "blinked-then-steady")]);
    expect(limping.limpHome).toBe(LIMP_HOME);
    expect(LIMP_HOME.limits).toMatchObject({
      isEstimate: true,
      maxSpeedKmh: 60,
      maxDistanceKm: 10,
    });
    for (const answer of ["off", "steady", "blinking"]) {
      expect(driveAdvice(four, [said("lamp", answer)]).limpHome).toBeUndefined();
    }
  });

  it("takes the later of two answers", () => {
    const advice = driveAdvice(four, [said("lamp", "blinking"), lampOff]);
    expect(levelOf(advice)).toBe("normal-care");
  });

  it("is given without a firing order", () => {
    const advice = driveAdvice({ cylinders: 6, ignition: "pack" }, [said("lamp", "blinking")]);
    expect(levelOf(advice)).toBe("do-not-drive");
  });

  it("refuses what the ranking refuses, with every path", () => {
    const bad = [
      said("lamp", "purple"),
      said("nonsense", "yes"),
      { finding: "cancel", answer: "drop" },
    ];
    expect(() => driveAdvice(four, bad)).toThrow(InputError);
    try {
      driveAdvice(four, bad);
    } catch (error) {
      const paths = (error as InputError).problems.map(({ path }) => path);
      expect(paths).toEqual(["/0/answer", "/1/finding", "/2/cylinder"]);
    }
    expect(() => driveAdvice({ cylinders: 0, ignition: "pack" }, [])).toThrow(InputError);
  });
});

describe("its cautions", () => {
  const fuelSeen: Finding = { finding: "alarm", answer: ["fuel-seen"] };

  it("tell of traffic at the roadside and while the place is not known, nowhere else", () => {
    const told = (where?: "roadside" | "driveway" | "workshop") =>
      driveAdvice(four, [fuelSeen], { where }).cautions;
    expect(told()).toContain("traffic");
    expect(told("roadside")).toContain("traffic");
    expect(told("driveway")).toEqual(told().filter((id) => id !== "traffic"));
    expect(told("workshop")).toEqual(told("driveway"));
  });

  it("tell of a blinking lamp unless the lamp was seen to be off", () => {
    const rough: Finding = { finding: "complaint.severity", answer: "clear" };
    const told = (lamp: string) =>
      driveAdvice(four, [rough, { finding: "lamp", answer: lamp }]).cautions;
    expect(driveAdvice(four, [rough]).cautions).toContain("blinking-lamp");
    expect(told("steady")).toContain("blinking-lamp");
    expect(told("blinking")).toContain("blinking-lamp");
    expect(told("off")).not.toContain("blinking-lamp");
  });
});

describe("for any findings", () => {
  const profile = fc.constantFrom(...allProfiles(), four);
  const withFindings = profile.chain((engine) =>
    fc.record({ engine: fc.constant(engine), findings: findingsFor(engine, 10) }),
  );

  it("one more alarming answer never makes the advice less cautious", () => {
    const rule = fc.constantFrom(...DRIVE_RULES.filter(({ level }) => level !== "normal-care"));
    fc.assert(
      fc.property(withFindings, rule, fc.nat(), ({ engine, findings }, { when }, pick) => {
        const ways = waysTo(when).filter((way) => way.every((each) => fits(engine, each)));
        fc.pre(ways.length > 0);
        const way = ways[pick % ways.length] as readonly Finding[];
        const added = way.filter((each) => !findings.some((known) => isSameQuestion(known, each)));
        const before = driveAdvice(engine, findings);
        const after = driveAdvice(engine, [...findings, ...added]);
        expect(rankOf(after)).toBeLessThanOrEqual(rankOf(before));
        expect(rulesOf(after)).toEqual(expect.arrayContaining(rulesOf(before)));
      }),
      { seed: 627, numRuns: 400 },
    );
  });

  it("one more option of a list never makes it less cautious", () => {
    fc.assert(
      fc.property(
        withFindings,
        fc.constantFrom("petrol", "scorch", "sweet"),
        ({ engine, findings }, option) => {
          const before = findings.find(({ finding }) => finding === "smell");
          const options = (before?.answer ?? []) as readonly string[];
          const more = said("smell", [...new Set([...options, option])]);
          const after = driveAdvice(engine, [...findings, more]);
          expect(rankOf(after)).toBeLessThanOrEqual(rankOf(driveAdvice(engine, findings)));
        },
      ),
      { seed: 627, numRuns: 200 },
    );
  });

  it("the order of different questions does not matter", () => {
    const shuffled = withFindings.chain(({ engine, findings }) =>
      fc.record({
        engine: fc.constant(engine),
        findings: fc.constant(findings),
        other: fc.shuffledSubarray(findings, { minLength: findings.length }),
      }),
    );
    fc.assert(
      fc.property(shuffled, ({ engine, findings, other }) => {
        expect(driveAdvice(engine, other)).toEqual(driveAdvice(engine, findings));
      }),
      { seed: 627, numRuns: 200 },
    );
  });

  it("the most cautious rule decides, and the answer asks for a look only when it must", () => {
    fc.assert(
      fc.property(withFindings, ({ engine, findings }) => {
        const advice = driveAdvice(engine, findings);
        const ranks = advice.rules.map(({ level }) => DRIVE_LEVELS.indexOf(level));
        expect(rankOf(advice)).toBe(Math.min(DRIVE_LEVELS.length, ...ranks));
        const isOpen = (id: string): boolean => !findings.some(({ finding }) => finding === id);
        const smells = advice.rules.some(({ id }) => id === "drive.petrol-smell");
        const looks = ["alarm", ...(hasDiagnosticPort(engine) ? ["lamp"] : [])];
        const asked = (smells ? looks : looks.slice(-1)).find(isOpen);
        expect(advice.ask).toBe(levelOf(advice) === "stop-now" ? undefined : asked);
      }),
      { seed: 627, numRuns: 200 },
    );
  });
});

describe("the writer of findings", () => {
  it("makes codes of families, and lists", () => {
    expect(findingWith("codes", "timing")).toEqual({ finding: "codes", answer: ["P0008"] });
    expect(findingWith("smell", "petrol")).toEqual({ finding: "smell", answer: ["petrol"] });
  });
});

function said(finding: string, answer: Finding["answer"]): Finding {
  return { finding, answer };
}

function isSameQuestion(a: Finding, b: Finding): boolean {
  return a.finding === b.finding && a.cylinder === b.cylinder;
}

/** Can it be found on this engine? Counts and codes of cylinders it lacks cannot. */
function fits(engine: EngineProfile, finding: Finding): boolean {
  try {
    driveAdvice(engine, [finding]);
    return true;
  } catch (error) {
    if (error instanceof InputError) return false;
    throw error;
  }
}
