// Does the screen that tells how firm the first place is say what the library found, for any case?
import {
  type EngineProfile,
  type Finding,
  profileById,
  type RankedFault,
  rank,
  sensitivity,
  why,
} from "@half-order/core";
import { describe, expect, it } from "vitest";
import type { Question, Thought } from "../../packages/web/src/state/thinker.ts";
import { keyOf } from "../../packages/web/src/state/view.ts";
import { decides, sayFlip, sayTimes, verdictOf } from "../../packages/web/src/sure/words.ts";
import { type Sureness, workOut } from "../../packages/web/src/sure/work-out.ts";
import { answer } from "../../packages/web/src/thread.ts";

const wagtail = profileById("demo.wagtail") as EngineProfile;
const findings: readonly Finding[] = [
  { finding: "codes", answer: ["P0302"] },
  { finding: "plug.age", answer: "over-100" },
  { finding: "plug.gap", cylinder: 2, answer: "wide" },
];

/** All that is told on the way, the last one whole. */
async function told(
  profile: EngineProfile,
  given: readonly Finding[],
  ask: (question: Question) => Promise<Thought> = answer,
): Promise<readonly Sureness[]> {
  const all: Sureness[] = [];
  await workOut({ profile, findings: given, repairs: [] }, ask, (now) => all.push(now));
  return all;
}

const last = (all: readonly Sureness[]): Sureness => all.at(-1) as Sureness;

describe("how firm the first place is", async () => {
  const all = await told(wagtail, findings);
  const whole = last(all);
  const library = sensitivity(wagtail, findings);

  it("is what the library says, with the same shakes as the command", () => {
    expect(whole.leading).toEqual(library.leading);
    expect(whole.stability).toEqual(library.stability);
    expect(whole.priors).toEqual(library.flips.filter(({ of }) => of === "prior"));
    for (const { finding, cylinder, flip } of whole.answers ?? []) {
      const nearest = library.flips.find(
        (each) => each.finding === finding && each.cylinder === cylinder,
      );
      expect(flip).toEqual(nearest);
    }
    expect(whole.answers?.filter(({ flip }) => flip)).not.toHaveLength(0);
  });

  it("tells of each answer what the ledger says that the first fault would lose", () => {
    const [fault = "", place = ""] = library.leading[0]?.split("@") ?? [];
    const { lines } = why(wagtail, findings, { fault, place });
    for (const { finding, carriesDb } of whole.answers ?? []) {
      expect(carriesDb).toBe(lines.find((line) => line.finding === finding)?.withoutDb);
    }
  });

  it("tells which answer brings another part to the first place when it is taken back", () => {
    const firstOf = (given: readonly Finding[]): RankedFault => {
      const { components, ranking } = rank(wagtail, given);
      return ranking.find(({ component }) => component === components[0]?.component) as RankedFault;
    };
    const first = firstOf(findings);
    for (const own of whole.answers ?? []) {
      const then = firstOf(findings.filter(({ finding }) => finding !== own.finding));
      const isOther = then.component !== first.component;
      expect(own.without).toBe(isOther ? keyOf(then) : undefined);
    }
    expect(whole.answers?.some(({ without }) => without !== undefined)).toBe(true);
  });

  it("has the weakest link first, and comes part by part", () => {
    const near = (whole.answers ?? []).map(({ flip }) =>
      Math.abs(flip?.moveDb ?? Number.MAX_VALUE),
    );
    expect(near).toEqual([...near].sort((a, b) => a - b));
    const done = all.map((now) => now.done);
    expect(done).toEqual([...done].sort((a, b) => a - b));
    expect([done[0], done.at(-1)]).toEqual([expect.closeTo(1 / 7), 1]);
    expect(all.findIndex((now) => now.answers)).toBeLessThan(all.findIndex((now) => now.stability));
  });
});

describe("how firm it is where little is known", () => {
  it("says so before any answer", async () => {
    const whole = last(await told(wagtail, []));
    expect(whole.answers).toEqual([]);
    expect(whole.leading).toEqual(sensitivity(wagtail, [], { shakes: 0 }).leading);
    expect(whole.priors).not.toHaveLength(0);
    expect(whole.stability).toHaveLength(2);
  });

  it("takes the likeliest of several firing orders, and names every fault", async () => {
    const v6: EngineProfile = { cylinders: 6, layout: "v", ignition: "rail" };
    const given = [{ finding: "codes", answer: ["P0302", "P0305"] }];
    const whole = last(await told(v6, given));
    const orders = rank(v6, given).orders ?? [];
    const chances = orders.map(({ probability }) => probability);
    expect(whole.order?.probability).toBeCloseTo(Math.max(...chances), 4);
    expect(orders.length).toBeGreaterThan(1);
    const known = new Set(whole.ranking?.ranking.map(keyOf));
    const named = (whole.answers ?? []).flatMap(({ flip }) => flip?.first ?? []);
    for (const key of [...(whole.leading ?? []), ...named]) expect(known).toContain(key);
  });

  it("goes on where nothing of the catalogue fits", async () => {
    const nothing: readonly Finding[] = [
      { finding: "regime.worst", answer: "all" },
      { finding: "trend", answer: "better" },
    ];
    const { ranking, somethingElse } = rank(wagtail, nothing);
    expect(somethingElse).toBeGreaterThan(ranking[0]?.probability ?? 1);
    const whole = last(await told(wagtail, nothing));
    expect(whole.done).toBe(1);
    expect(whole.leading).toHaveLength(2);
    expect(whole.answers).toHaveLength(2);
  });

  it("tells what is wrong with a case that cannot be ranked", async () => {
    const broken = { cylinders: 4, ignition: "rail", firingOrder: [1, 2, 3, 3] } as EngineProfile;
    const whole = last(await told(broken, []));
    expect(whole.problems).not.toHaveLength(0);
    expect(whole.leading).toBeUndefined();
  });

  it("asks nothing more once it is not answered any more", async () => {
    let asked = 0;
    const ask = (question: Question): Promise<Thought> => {
      asked++;
      return asked < 3 ? answer(question) : new Promise(() => undefined);
    };
    const all: Sureness[] = [];
    void workOut({ profile: wagtail, findings, repairs: [] }, ask, (now) => all.push(now));
    await expect.poll(() => asked, { timeout: 20_000 }).toBe(3);
    expect(last(all).answers).toBeUndefined();
  });
});

describe("a number that would change the first place", () => {
  const flip = { fault: "a@1", from: 0.5, to: 0.2, moveDb: -6, first: "b@1" } as const;
  const name = (key: string): string => key.toUpperCase();

  it("is told with how far it may be off, and what comes first then", () => {
    expect(sayFlip({ ...flip, of: "answer", finding: "lamp" }, name)).toBe(
      "May be off by 6.0 dB, 4.0 times the odds. “B@1” would be first if “A@1” brought this answer in only 20 % of cases, not in 50 %.",
    );
    expect(sayFlip({ ...flip, of: "answer", finding: "lamp", moveDb: 0.04 }, name)).toBe(
      `“${name(flip.first)}” is level with the first place: the smallest error decides between them.`,
    );
    expect(sayFlip({ ...flip, of: "prior" }, name)).toBe(
      "“B@1” would be first if “A@1” were 4.0 times as rare.",
    );
    expect(sayFlip({ ...flip, of: "prior", moveDb: 6, first: "a@1" }, name)).toBe(
      "“A@1” would be first if it were 4.0 times as common.",
    );
    const rising = { ...flip, of: "answer", moveDb: 2, to: 0.6, first: "a@1" } as const;
    expect(sayFlip(rising, name)).toMatch(/1.6 times the odds. That is no more than estimates/);
    expect(sayFlip(rising, name)).toMatch(/“A@1” would be first if it brought/);
  });

  it("decides nothing beyond a factor of a thousand, unless the answer itself does", () => {
    const far = { ...flip, of: "answer", moveDb: -31 } as const;
    expect(decides({ flip: { ...flip, of: "prior" } })).toBe(true);
    expect(decides({ flip: far })).toBe(false);
    expect(decides({})).toBe(false);
    expect(decides({ flip: far, without: "b@1" })).toBe(true);
  });

  it.each([
    [0.95, "firm"],
    [0.8, "fair"],
    [0.7, "loose"],
  ] as const)("that holds in %d of the small shakes is %s", (first, verdict) => {
    expect(verdictOf({ first })).toBe(verdict);
  });

  it("is rounded as little as it deserves", () => {
    expect([sayTimes(1.64), sayTimes(12.4)]).toEqual(["1.6", "12"]);
  });
});
