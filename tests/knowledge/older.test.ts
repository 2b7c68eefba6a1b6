// Is an older engine, with contact breaker and carburettor, asked and told only of parts that it has?
import { describe, expect, it } from "vitest";
import { instancesOf } from "../../packages/core/src/compile/prior.ts";
import {
  CHECKS,
  DRIVE_RULES,
  type EngineProfile,
  FAULTS,
  FINDINGS,
  findingFor,
  KNOWLEDGE,
  LIMP_HOME,
  LIMP_HOME_OLDER,
  profileById,
  putBackAfter,
  REPAIRS,
  rank,
  resolveEngine,
  suitsEngine,
} from "../../packages/core/src/index.ts";
import { distributorDwell, sparkPeriod } from "../../packages/core/src/physics/coil.ts";
import { simulatedFaults } from "../../packages/core/src/physics/simulate.ts";
import { builds } from "../helper/build.ts";
import { holds, type Looked } from "../helper/rule.ts";

const LAPWING = profileById("demo.lapwing") as EngineProfile;
const all = builds("distributor");
const older = all.filter(({ fuelling }) => fuelling === "carburettor");

/** Words for parts that such an engine has not got. */
const NOT_THERE =
  /\b(?:injectors?|injection|sensors?|coil drivers?|control units?|air meters?|fuel rails?|throttle body|live data|code readers?|oxygen)\b/i;

/** Everything in words that is said of an engine, with its address. */
function* said(profile: EngineProfile): Generator<readonly [string, string]> {
  const fits = (row: Parameters<typeof suitsEngine>[1]) => suitsEngine(profile, row);
  for (const { id, name, about, part, mend } of faultsOf(profile)) {
    for (const text of [name, about, part.name, mend]) yield [id, text];
  }
  for (const row of FINDINGS.filter(fits)) {
    const { id, ask, help = "", options } = findingFor(profile, row);
    for (const text of [ask, help]) yield [id, text];
    for (const { say, more = "" } of Object.values(options)) yield [id, `${say} ${more}`];
  }
  for (const row of CHECKS.filter(fits)) {
    for (const text of [row.name, ...row.steps]) yield [row.id, text];
  }
  for (const row of REPAIRS.filter(fits)) yield [row.id, row.name];
  for (const row of [...CHECKS, ...REPAIRS].filter(fits)) {
    for (const { id, say } of putBackAfter(profile, row)) yield [`${row.id}/${id}`, say];
    for (const access of KNOWLEDGE.access.filter(({ id }) => row.access?.includes(id))) {
      yield [`${row.id}/${access.id}`, access.say];
    }
  }
  for (const { id, reason, lifts, never } of DRIVE_RULES.filter(fits)) {
    for (const text of [reason, lifts, ...never]) yield [id, text];
  }
  const { steps, never, towInstead, afterwards, fuelCut } =
    profile.fuelling === "carburettor" ? LIMP_HOME_OLDER : LIMP_HOME;
  const cut = fuelCut ? [...fuelCut.steps, ...fuelCut.never] : [];
  for (const text of [...steps, ...never, ...towInstead, ...afterwards, ...cut]) {
    yield ["limp home", text];
  }
}

function faultsOf(profile: EngineProfile) {
  const there = new Set(instancesOf(resolveEngine(profile), KNOWLEDGE).map(({ fault }) => fault));
  return FAULTS.filter((fault) => there.has(fault));
}

const nameOf = ({ switching, fuelling }: EngineProfile): string => `${switching} ${fuelling}`;

holds({
  name: "nothing said of an engine with a carburettor speaks of an injector, a sensor or a control unit",
  why: "Who looks for a part that is not there looks at nothing that is.",
  *check(): Generator<Looked> {
    for (const profile of older) {
      for (const [id, text] of said(profile)) {
        const found = NOT_THERE.exec(text)?.[0];
        yield { at: `${nameOf(profile)}/${id}`, breach: found && `speaks of ${found}` };
      }
    }
  },
  exceptions: {},
});

holds({
  name: "every fault of a distributor engine, however built, has a first check and a repair that suit it",
  why: "What stands first is useless when nothing looks at it and nothing mends it.",
  *check(): Generator<Looked> {
    for (const profile of all) {
      for (const { fault, firstCheck } of rank(profile, []).ranking) {
        const check = CHECKS.find(({ id }) => id === firstCheck);
        const isMade = check !== undefined && suitsEngine(profile, check);
        yield { at: `${nameOf(profile)}/${fault}`, breach: isMade ? undefined : firstCheck };
        const works = REPAIRS.filter((row) => suitsEngine(profile, row)).flatMap(({ mends }) =>
          mends.flatMap((mend) => (mend.fault === fault ? [mend.works] : [])),
        );
        const best = Math.max(0, ...works);
        const breach = best >= 0.5 ? undefined : `best repair ${best}`;
        yield { at: `${nameOf(profile)}/${fault}/repair`, breach };
      }
    }
  },
  exceptions: {},
});

holds({
  name: "what is looked for, measured or tried on a distributor engine, however built, a check there answers",
  why: "A question nobody is told how to answer stays unanswered.",
  *check(): Generator<Looked> {
    const topics = ["plugs and wells", "live data", "measured", "tried"];
    for (const profile of all) {
      const yielded = new Set(
        CHECKS.filter((row) => suitsEngine(profile, row)).flatMap((row) => row.yields),
      );
      for (const row of FINDINGS.filter((each) => suitsEngine(profile, each))) {
        if (!topics.includes(row.topic)) continue;
        const breach = yielded.has(row.id) ? undefined : "no check answers it";
        yield { at: row.id, breach };
      }
    }
  },
  exceptions: {
    command:
      "The valves are there without a code reader; closed by hand, one of them may clear the idle.",
  },
});

describe("the older demo engine", () => {
  it("suspects breaker and carburettor, where the same engine of later build suspects neither", () => {
    const { switching: _, fuelling: __, ...later } = LAPWING;
    const families = (profile: EngineProfile) =>
      new Set(rank(profile, []).ranking.map(({ fault }) => fault.split(".")[0]));
    for (const family of ["breaker", "condenser", "carburettor", "choke"]) {
      expect(families(LAPWING).has(family), family).toBe(true);
      expect(families(later).has(family), family).toBe(false);
    }
    for (const family of ["injector", "driver", "module", "crank-sensor", "air-meter"]) {
      expect(families(LAPWING).has(family), family).toBe(false);
      expect(families(later).has(family), family).toBe(true);
    }
  });

  it("is told nothing by what only later engines can be asked", () => {
    const plain = rank(LAPWING, []).ranking;
    const asked = [
      { finding: "lamp", answer: "blinking" },
      { finding: "injector.tick", cylinder: 1, answer: "silent" },
      { finding: "work", answer: ["injectors"] },
    ];
    const [lamp, tick, work] = asked;
    if (!lamp || !tick || !work) throw new Error("nothing asked");
    expect(rank(LAPWING, [lamp, tick]).ranking).toEqual(plain);
    expect(rank(LAPWING, [work]).ranking).toEqual(rank(LAPWING, [{ ...work, answer: [] }]).ranking);
  });

  it.each([
    [[{ finding: "breaker.dwell", answer: "long" }], "breaker.gap-closed"],
    [[{ finding: "breaker.look", answer: ["burnt"] }], "breaker.burnt"],
    [[{ finding: "carburettor.look", answer: ["choke-open"] }], "choke.stuck-open"],
    [[{ finding: "mixture.screw", answer: "dead" }], "carburettor.idle-blocked"],
  ])("puts first what %j points at: %s", (findings, fault) => {
    expect(rank(LAPWING, findings).ranking[0]?.fault).toBe(fault);
  });

  it("hides nothing in practice that it has not got", () => {
    const hidden = simulatedFaults(resolveEngine(LAPWING));
    expect(hidden).toContain("cap.cracked");
    const there = new Set<string>(faultsOf(LAPWING).map(({ id }) => id));
    expect(hidden.filter((id) => !there.has(id))).toEqual([]);
  });

  it("sets dwell before timing, and names the dwell's own faults apart", () => {
    const renew = REPAIRS.find(({ id }) => id === "repair.breaker");
    if (!renew) throw new Error("nobody renews the contacts");
    const ids = putBackAfter(LAPWING, renew).map(({ id }) => id);
    const order = ["breaker.gap", "distributor.cap", "first-start", "timing.base"];
    expect(ids.filter((id) => order.includes(id))).toEqual(order);
    expect(putBackAfter(LAPWING, renew).at(-1)?.say).toMatch(/first read the dwell, then/);
  });
});

// The angles are those of ordinary textbooks of the trade: 38° of 60° also stands in an encyclopedia (see
// `physics/coil.ts`), the others are remembered. The time is theirs too: t = dwell / (3 · rpm) at half speed.
describe("the dwell angle", () => {
  const help = FINDINGS.find(({ id }) => id === "breaker.dwell")?.help ?? "";
  const told = [...help.matchAll(/(\d+)° of (\d+)°/g)].map(([, dwell, cam]) => [
    Number(dwell),
    Number(cam),
  ]);

  it.each([
    [4, 50, 90],
    [6, 38, 60],
    [8, 30, 45],
  ])(
    "of %i cylinders is said as %i of %i degrees, and charges the coil for its share",
    (...row) => {
      const [cylinders, dwell, cam] = row;
      expect(cam).toBe(360 / cylinders);
      expect(told).toContainEqual([dwell, cam]);
      for (const rpm of [800, 3000, 6000]) {
        const period = sparkPeriod({ ignition: "distributor", cylinders, rpm });
        expect(distributorDwell(dwell, rpm)).toBeCloseTo((period * dwell) / cam, 12);
      }
    },
  );

  it("that grows as the gap closes charges longer, and less of it is left at speed with more cylinders", () => {
    expect(distributorDwell(56, 800)).toBeGreaterThan(distributorDwell(50, 800));
    // 5 ms of 30° at 2,000 rpm, worked out by hand: 30 / (3 · 2000).
    expect(distributorDwell(30, 2000)).toBeCloseTo(0.005, 12);
    expect(distributorDwell(30, 6000)).toBeLessThan(distributorDwell(50, 6000));
  });
});
