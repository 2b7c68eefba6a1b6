// A hidden fault: who looks for it, what that costs, and what the planner would have done from the same story.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { next } from "../../packages/core/src/advice/next.ts";
import { fits } from "../../packages/core/src/compile/fits.ts";
import { shareOf } from "../../packages/core/src/compile/prior.ts";
import type { CylinderName } from "../../packages/core/src/engine/profile.ts";
import { IGNITION_KINDS } from "../../packages/core/src/engine/profile.ts";
import { allProfiles, profileById } from "../../packages/core/src/engine/profile-library.ts";
import { resolveEngine } from "../../packages/core/src/engine/resolve-engine.ts";
import { sayProbability } from "../../packages/core/src/explain/phrase.ts";
import { rank } from "../../packages/core/src/explain/rank.ts";
import { type HiddenFault, hideFault } from "../../packages/core/src/instrument/hidden-fault.ts";
import {
  type PracticeAct,
  type PracticeCheck,
  practise,
} from "../../packages/core/src/instrument/practice.ts";
import { comparePaths, type Path } from "../../packages/core/src/instrument/practice-path.ts";
import type { Finding, RepairDone } from "../../packages/core/src/knowledge/answer.ts";
import { LEAST_MENDABLE } from "../../packages/core/src/knowledge/at-hand.ts";
import { exchangesFirst } from "../../packages/core/src/knowledge/exchange.ts";
import { FAULTS, KNOWLEDGE } from "../../packages/core/src/knowledge/knowledge.ts";
import { TOOLS } from "../../packages/core/src/knowledge/tool.ts";
import { InputError } from "../../packages/core/src/units/problem.ts";

function engineOf(id: string) {
  const profile = profileById(id);
  if (!profile) throw new Error(`no profile ${id}`);
  return profile;
}

const FOUR = engineOf("generic.i4.1342.coil-per-plug");
/** One small engine of each kind of ignition. */
const KINDS = IGNITION_KINDS.map((kind) => {
  const found = allProfiles().find((each) => each.ignition === kind && each.cylinders === 4);
  if (!found) throw new Error(`no four with ${kind}`);
  return [kind, found] as const;
});

const seeds = fc.integer({ min: 0, max: 1_000_000 });
const kinds = fc.constantFrom(...KINDS.map(([, profile]) => profile));

function checksOf(hidden: HiddenFault, acts: readonly PracticeAct[]): readonly PracticeCheck[] {
  return practise(hidden, acts).steps.filter((step) => step.kind === "check");
}

/** Every check that is offered, at its last place. */
function everyCheck(hidden: HiddenFault): readonly PracticeAct[] {
  return practise(hidden, []).checks.map(({ id, places }) => {
    const [cylinder] = places.at(-1)?.cylinders ?? [];
    return { kind: "check", check: id, ...(cylinder === undefined ? {} : { cylinder }) };
  });
}

function isExchange(act: PracticeAct): boolean {
  const row = KNOWLEDGE.checks.find(({ id }) => act.kind === "check" && id === act.check);
  return row !== undefined && exchangesFirst(row, (id) => KNOWLEDGE.findings.get(id));
}

/** Whether a cylinder that the check looks at loses one stroke in twenty in some way of driving. */
function missesAt(hidden: HiddenFault, act: PracticeAct): boolean {
  const at = checksOf(hidden, [act])[0]?.cylinders ?? [];
  return at.some((name) => lostBy(hidden, name) >= 0.05);
}

/** The most that a cylinder loses of its strokes in any way of driving. */
function lostBy({ broken, engine }: HiddenFault, name: CylinderName): number {
  const c = engine.names.indexOf(name);
  return Math.max(...Object.values(broken.drive).map(({ share }) => share[c] ?? 0));
}

/** The checks of a way, as they can be chosen. */
function actsOf(steps: Path["steps"]): readonly PracticeAct[] {
  return steps.flatMap((step): readonly PracticeAct[] => {
    if (step.kind !== "check") return [];
    const [cylinder] = step.cylinders;
    return [{ kind: "check", check: step.id, ...(cylinder === undefined ? {} : { cylinder }) }];
  });
}

/** The repairs of a way. */
function repairsOf({ steps }: Path) {
  return steps.filter((step) => step.kind === "repair");
}

function problemsOf(act: () => unknown): readonly string[] {
  try {
    act();
  } catch (error) {
    if (error instanceof InputError)
      return error.problems.map(({ code, path }) => `${path} ${code}`);
    throw error;
  }
  return [];
}

describe("what is hidden", () => {
  it("is the same for the same seed, in the story and in every answer", () => {
    fc.assert(
      fc.property(kinds, seeds, (profile, seed) => {
        const [a, b] = [hideFault(profile, seed), hideFault(profile, seed)];
        expect(b.truth).toEqual(a.truth);
        const acts = everyCheck(a).slice(0, 12);
        expect(practise(b, acts)).toEqual(practise(a, acts));
      }),
      { seed: 4, numRuns: 5 },
    );
  });

  it("is drawn by the shares of the catalogue, and no fault that such engines never have", () => {
    const drawn = Array.from({ length: 80 }, (_, seed) => hideFault(FOUR, seed).truth.fault);
    const share = (id: string): number => {
      const row = FAULTS.find((fault) => fault.id === id);
      return row ? shareOf(row, FOUR.ignition) : 0;
    };
    expect(drawn.filter((id) => share(id) === 0)).toEqual([]);
    const often = drawn.filter((id) => share(id) >= 50).length;
    const seldom = drawn.filter((id) => share(id) < 5).length;
    expect(new Set(drawn).size).toBeGreaterThan(8);
    expect(often).toBeGreaterThan(2 * seldom);
  });

  it("is told as an owner would tell it: the story is what the simulator's driver and reader have", () => {
    const { broken, start, engine } = hideFault(FOUR, 11);
    expect(start.findings.map(({ finding }) => finding)).toEqual(
      broken.findings.map(({ finding }) => finding),
    );
    expect(start.findings).toContainEqual(broken.findings.find((each) => each.finding === "codes"));
    expect(() => rank(engine.profile, start.findings)).not.toThrow();
  });

  it("says in which form it was hidden: a coil dead always, or more of it when hot", () => {
    const forms = Array.from({ length: 60 }, (_, seed) => hideFault(FOUR, seed)).flatMap(
      ({ truth, broken, engine }) => {
        if (truth.fault !== "coil.single-dead") return [];
        const [at = 0] = broken.place.cylinders;
        const { offCold, offHot } = broken.parts.coils[engine.groupOf[at] ?? 0] ?? {};
        const value = (name: string) =>
          truth.figures.find(({ figure, cylinders }) => figure === name && cylinders[0] === at)
            ?.value;
        if (offCold === offHot) expect(value("coil.off")).toBe(offHot);
        else expect([value("coil.offCold"), value("coil.offHot")]).toEqual([offCold, offHot]);
        return [offCold === offHot];
      },
    );
    expect(new Set(forms)).toEqual(new Set([true, false]));
  });

  it("wants a whole number", () => {
    expect(problemsOf(() => hideFault(FOUR, 0.5))).toEqual(["/seed seed-wrong"]);
  });
});

describe("a check", () => {
  it.each(KINDS)(
    "of the catalogue can be asked on an engine with %s, each of them",
    (_, profile) => {
      const hidden = hideFault(profile, 3);
      const acts = everyCheck(hidden);
      const made = checksOf(hidden, acts);
      const suited = KNOWLEDGE.checks.filter((row) => fits(hidden.engine, row));
      expect(made.map(({ id }) => id)).toEqual(suited.map(({ id }) => id));
      // One by one as well: what is known from the others does not answer in their place. An exchange of what serves
      // no cylinder that misses says nothing of how it went.
      for (const act of acts) {
        const shows = checksOf(hidden, [act]).flatMap((check) => check.shows);
        const isIdle = isExchange(act) && !missesAt(hidden, act);
        const exchanged = shows.filter(({ finding }) => KNOWLEDGE.findings.get(finding)?.travels);
        expect((isIdle ? exchanged : shows).length > 0, JSON.stringify(act)).toBe(!isIdle);
      }
      const findings = made.flatMap(({ shows }) => shows);
      expect(() => rank(profile, [...hidden.start.findings, ...findings])).not.toThrow();
    },
  );

  it("is one of some engine, each of the catalogue", () => {
    const engines = allProfiles().map(resolveEngine);
    const suited = KNOWLEDGE.checks
      .filter((row) => engines.some((engine) => fits(engine, row)))
      .map(({ id }) => id);
    const all = KNOWLEDGE.checks.map(({ id }) => id);
    expect(all.filter((id) => !suited.includes(id))).toEqual([]);
  });

  it("shows what the simulator answers, whatever was asked before", () => {
    fc.assert(
      fc.property(kinds, seeds, fc.integer({ min: 0, max: 60 }), (profile, seed, skip) => {
        const hidden = hideFault(profile, seed);
        const acts = everyCheck(hidden);
        const act = acts[skip % acts.length] as PracticeAct;
        const alone = checksOf(hidden, [act])[0] as PracticeCheck;
        const last = checksOf(hidden, [...acts.slice(0, 5), act]).at(-1) as PracticeCheck;
        const others = acts.slice(0, 5).flatMap((before) => checksOf(hidden, [before])[0]?.shows);
        const told = [...hidden.start.findings, ...others];
        for (const { finding, answer, cylinder } of last.shows) {
          const isTold = told.some((each) => each?.finding === finding);
          const index = hidden.engine.names.indexOf(cylinder ?? "");
          const seen = hidden.broken.observeCheck(finding, index < 0 ? undefined : index);
          if (!isTold) expect(answer).toEqual(seen);
        }
        expect(last.shows.map(({ answer }) => answer)).toEqual(
          alone.shows.map(({ answer }) => answer),
        );
      }),
      { seed: 9, numRuns: 12 },
    );
  });

  it("costs its minutes each time, and what is off already costs nothing more", () => {
    const hidden = hideFault(FOUR, 5);
    const act: PracticeAct = { kind: "check", check: "check.plugs-out", cylinder: 2 };
    const { steps, minutes } = practise(hidden, [act, act]);
    const [first, again] = steps as readonly PracticeCheck[];
    const row = KNOWLEDGE.checks.find(({ id }) => id === "check.plugs-out");
    expect(again?.minutes).toBe(row?.minutes);
    expect(first?.minutes).toBeGreaterThan(again?.minutes ?? 0);
    expect(first?.opens.length).toBeGreaterThan(0);
    expect(again).toMatchObject({ opens: [], isKnown: true });
    expect(again?.shows).toEqual(first?.shows);
    expect(minutes).toBe((first?.minutes ?? 0) + (again?.minutes ?? 0));
  });

  it("is refused with its reason where there is none such", () => {
    const hidden = hideFault(FOUR, 5);
    const asked = (check: string, cylinder?: number) =>
      problemsOf(() =>
        practise(hidden, [
          { kind: "check", check, ...(cylinder === undefined ? {} : { cylinder }) },
        ]),
      );
    expect(asked("check.nothing")).toEqual(["/check check-unknown"]);
    expect(asked("check.rail-swap")).toEqual(["/check check-not-here"]);
    expect(asked("check.plugs-out")).toEqual(["/cylinder cylinder-missing"]);
    expect(asked("check.plugs-out", 9)).toEqual(["/cylinder cylinder-unknown"]);
    expect(asked("check.plugs-out", 4)).toEqual([]);
  });

  it("looks at what shares a coil together", () => {
    const rail = engineOf("generic.i4.1342.rail");
    const hidden = hideFault(rail, 2);
    const plugs = practise(hidden, []).checks.find(({ id }) => id === "check.plugs-out");
    expect(plugs?.places.map(({ cylinders }) => cylinders)).toEqual([
      [1, 4],
      [2, 3],
    ]);
    const home = practise(hidden, []).checks.find(({ id }) => id === "check.connector-home");
    expect(home?.places.map(({ cylinders }) => cylinders)).toEqual([[]]);
  });
});

describe("a look at the ranking", () => {
  it("tells its first places as they stand, and costs no minute", () => {
    const hidden = hideFault(FOUR, 7);
    const counts: PracticeAct = { kind: "check", check: "check.counts" };
    const { steps, minutes } = practise(hidden, [{ kind: "peek" }, counts, { kind: "peek" }]);
    const [before, made, after] = steps;
    const shows = made?.kind === "check" ? made.shows : [];
    const leaders = (findings: readonly Finding[]) => rank(FOUR, findings).ranking.slice(0, 3);
    expect(before).toEqual({ kind: "peek", leaders: leaders(hidden.start.findings) });
    expect(after).toEqual({ kind: "peek", leaders: leaders([...hidden.start.findings, ...shows]) });
    expect(minutes).toBe(10);
  });
});

describe("both ways", () => {
  const PLUGS = { repair: "repair.plug-set" };
  const atHand = { tools: TOOLS };

  it("add up: the minutes of all checks, and of all repairs", () => {
    fc.assert(
      fc.property(kinds, seeds, (profile, seed) => {
        const hidden = hideFault(profile, seed);
        const acts = everyCheck(hidden).slice(3, 8);
        const { learner, library } = comparePaths(hidden, acts, PLUGS);
        expect(learner.checkMinutes).toBe(practise(hidden, acts).minutes);
        for (const way of [learner, library]) {
          const sum = (kind: string) =>
            way.steps.reduce(
              (all, step) => all + (step.kind === kind && step.kind !== "peek" ? step.minutes : 0),
              0,
            );
          expect(way.checkMinutes).toBe(sum("check"));
          expect(way.minutes).toBe(sum("check") + sum("repair"));
        }
      }),
      { seed: 2, numRuns: 3 },
    );
  });

  it.each([2, 4])("the library's is what the planner says, seed %i", (seed) => {
    const hidden = hideFault(FOUR, seed);
    const { library, truth, belief } = comparePaths(hidden, [], PLUGS);
    const known: Finding[] = [...hidden.start.findings];
    const believed = (): number =>
      rank(FOUR, known).ranking.find(
        ({ fault, place }) => fault === truth.fault && place === truth.place,
      )?.probability ?? 0;
    expect(belief).toBe(believed());
    const open: string[] = [];
    const repairs: RepairDone[] = [];
    for (const made of library.steps) {
      const { step } = next(FOUR, known, { open, atHand, repairs });
      if (step.kind === "repair" && made.kind === "repair") {
        expect([made.id, made.minutes]).toEqual([step.repair, step.minutes]);
        const [cylinder] = step.cylinders;
        const at = cylinder === undefined ? {} : { cylinder };
        repairs.push({ repair: step.repair, ...at, result: "same" });
        open.push(...step.opens.map(({ id }) => id));
        continue;
      }
      if (step.kind !== "check" || made.kind !== "check") throw new Error("a check was due");
      expect([made.id, made.minutes]).toEqual([step.check, step.minutes]);
      const rows = KNOWLEDGE.checks.find(({ id }) => id === step.check)?.yields ?? [];
      const act = { kind: "check", check: step.check } as const;
      const [cylinder] = step.cylinders;
      const [{ shows } = { shows: [] }] = checksOf(hidden, [
        { ...act, ...(cylinder === undefined ? {} : { cylinder }) },
      ]);
      expect(shows.every(({ finding }) => rows.includes(finding))).toBe(true);
      known.push(...shows);
      open.push(...step.opens.map(({ id }) => id));
      expect(made.shows).toEqual(shows);
      expect(made.belief).toBeCloseTo(believed(), 12);
    }
    expect(library.end).toBe("runs");
    expect(repairs.length).toBeGreaterThan(0);
  });

  const ways = Array.from({ length: 12 }, (_, seed) => {
    const hidden = hideFault(FOUR, seed);
    return { hidden, library: comparePaths(hidden, [], PLUGS).library };
  });

  it("the library's goes on after a repair that does not cure, until it runs right or is handed over", () => {
    for (const { library } of ways) {
      const repairs = repairsOf(library);
      const cures = repairs.map((step) => step.cures > 0.5);
      // Only the last one cures, and none is made twice.
      expect(cures).toEqual(cures.map((_, i) => library.end === "runs" && i === cures.length - 1));
      const made = repairs.map(({ id, cylinders }) => [id, ...cylinders].join(" "));
      expect(made).toEqual([...new Set(made)]);
      expect(library.end).not.toBe("misses");
      for (const step of repairs.slice(0, -1)) expect(step.belief).toBeGreaterThan(0);
    }
    expect(ways.filter(({ library }) => repairsOf(library).length > 1).length).toBeGreaterThan(1);
  });

  it("the learner's that ends with a repair that does not reach it misses as before, and that is where they part", () => {
    const found = ways.flatMap(({ hidden, library }) => {
      const first = library.steps.findIndex(({ kind }) => kind === "repair");
      const repair = library.steps[first];
      const inVain = repair?.kind === "repair" && repair.cures === 0;
      return inVain && library.steps.length > first + 1 ? [{ hidden, library, first, repair }] : [];
    });
    const [one] = found;
    if (!one) throw new Error("the library's first repair never fails");
    const { hidden, library, first, repair } = one;
    const [cylinder] = repair.cylinders;
    const wanted = { repair: repair.id, ...(cylinder === undefined ? {} : { cylinder }) };
    const { learner, parting } = comparePaths(
      hidden,
      actsOf(library.steps.slice(0, first)),
      wanted,
    );
    expect(learner.end).toBe("misses");
    expect(parting).toMatchObject({ together: first + 1, learner: { kind: "end" } });
    expect(learner.minutes).toBeLessThan(library.minutes);
  });

  it("the library's says why it hands over, and what would have mended it", () => {
    const profile = engineOf("demo.dunlin");
    const hidden = hideFault(profile, 41);
    const { library, mends } = comparePaths(hidden, [], PLUGS);
    expect(repairsOf(library)).toEqual([]);
    expect(library.minutes).toBe(library.checkMinutes);
    expect(mends.map(({ id }) => id)).toEqual(["repair.head-gasket"]);
    const acts = actsOf(library.steps);
    const { parting } = comparePaths(hidden, acts, PLUGS);
    expect(parting?.library).toEqual({ kind: "call", why: library.end });
    const known = checksOf(hidden, acts).flatMap(({ shows }) => shows);
    const { step, mendable } = next(profile, [...hidden.start.findings, ...known], { atHand });
    expect(step.kind).toBe("call");
    expect(library.end).toBe(mendable < LEAST_MENDABLE ? "little-mends" : "costs-more");
  });

  it("the library's says that hardly anything mends it, where only that is why it hands over", () => {
    const profile = engineOf("demo.dunlin");
    const hidden = hideFault(profile, 41);
    // Bare hands at the roadside: nearly every repair is out of reach.
    const bare = { tools: ["none"], where: "roadside", skill: 0 } as const;
    const stranded = { ...hidden, start: { ...hidden.start, atHand: bare } };
    const { library, parting } = comparePaths(stranded, [], PLUGS);
    const shown = library.steps.flatMap((step) => (step.kind === "check" ? step.shows : []));
    const { step, mendable } = next(profile, [...hidden.start.findings, ...shown], {
      atHand: bare,
    });
    expect(step.kind).toBe("call");
    expect(mendable).toBeLessThan(LEAST_MENDABLE);
    expect(library).toMatchObject({ end: "little-mends", minutes: library.checkMinutes });
    expect(repairsOf(library)).toEqual([]);
    if (library.steps.length === 0) {
      expect(parting?.library).toEqual({ kind: "call", why: "little-mends" });
    }
    // The same fault with every tool: then it is the price of going on.
    expect(comparePaths(hidden, [], PLUGS).library.end).toBe("costs-more");
  });

  it("the learner's shows at each check what the log of it shows", () => {
    const hidden = hideFault(FOUR, 4);
    const acts = everyCheck(hidden).slice(0, 10);
    const { learner } = comparePaths(hidden, acts, PLUGS);
    const shown = learner.steps.flatMap((step) => (step.kind === "check" ? [step.shows] : []));
    expect(shown).toEqual(checksOf(hidden, acts).map(({ shows }) => shows));
    expect(shown.flat().length).toBeGreaterThan(10);
  });

  it("name what mends it, the surest first, with the chance that the repair itself then has", () => {
    fc.assert(
      fc.property(kinds, seeds, (profile, seed) => {
        const hidden = hideFault(profile, seed);
        const { fault } = hidden.truth;
        const { mends } = comparePaths(hidden, [], PLUGS);
        const works = KNOWLEDGE.repairs
          .filter((row) => fits(hidden.engine, row))
          .flatMap((row) => row.mends.filter((mend) => mend.fault === fault))
          .map((mend) => mend.works)
          .sort((a, b) => b - a);
        const said = (chances: readonly number[]) => chances.map(sayProbability);
        expect(said(mends.map(({ cures }) => cures))).toEqual(said(works.slice(0, 2)));
        const [first, second] = mends;
        if (first && second && sayProbability(first.cures) === sayProbability(second.cures))
          expect(first.minutes).toBeLessThanOrEqual(second.minutes);
        expect(mends.length).toBeGreaterThan(0);
        for (const { id, cures, cylinders } of mends) {
          const at = cylinders[0] === undefined ? {} : { cylinder: cylinders[0] };
          const { learner } = comparePaths(hidden, [], { repair: id, ...at });
          expect(learner.steps).toMatchObject([{ kind: "repair", id, cures }]);
          expect(learner.end).toBe(cures > 0.5 ? "runs" : "misses");
        }
      }),
      { seed: 6, numRuns: 8 },
    );
  });

  it("a repair cures only what it reaches", () => {
    const hidden = hideFault(FOUR, 3);
    const { fault, cylinders } = hidden.truth;
    expect(fault).toBe("coil.single-dead");
    const other = hidden.engine.names.find((name) => !cylinders.includes(name));
    const cures = (wanted: Parameters<typeof comparePaths>[2]) =>
      repairsOf(comparePaths(hidden, [], wanted).learner)[0]?.cures;
    const [own = 0] = cylinders;
    expect(cures({ repair: "repair.coil-single", cylinder: own })).toBeGreaterThan(0.9);
    expect(cures({ repair: "repair.coil-single", cylinder: other ?? 0 })).toBe(0);
    expect(cures(PLUGS)).toBe(0);
    expect(problemsOf(() => cures({ repair: "repair.rail" }))).toEqual(["/repair repair-not-here"]);
    expect(problemsOf(() => cures({ repair: "repair.coil-single" }))).toEqual([
      "/cylinder cylinder-missing",
    ]);
  });

  it("part nowhere when the learner does what the library does, looks at the ranking aside", () => {
    const hidden = hideFault(FOUR, 3);
    const { library } = comparePaths(hidden, [], PLUGS);
    const checks = actsOf(library.steps);
    const acts = checks.flatMap((act): readonly PracticeAct[] => [{ kind: "peek" }, act]);
    const [repair, ...more] = repairsOf(library);
    if (!repair || more.length > 0) throw new Error("the library mends it at once");
    const [cylinder] = repair.cylinders;
    const wanted = { repair: repair.id, ...(cylinder === undefined ? {} : { cylinder }) };
    const same = comparePaths(hidden, acts, wanted);
    expect(same.parting).toBeUndefined();
    expect(same.learner.minutes).toBe(library.minutes);
    const other = comparePaths(hidden, acts, PLUGS);
    expect(other.parting).toMatchObject({
      together: checks.length,
      learner: { kind: "repair", id: PLUGS.repair },
      library: { kind: "repair", id: repair.id },
    });
  });

  it("part where the first check differs, with what the planner thought of each there", () => {
    const hidden = hideFault(FOUR, 3);
    const { step, checks } = next(FOUR, hidden.start.findings, { atHand });
    const other = checks.find((each) => step.kind === "check" && each.check !== step.check);
    if (step.kind !== "check" || !other) throw new Error("two checks are weighed");
    const [cylinder] = other.cylinders;
    const { parting } = comparePaths(
      hidden,
      [{ kind: "check", check: other.check, ...(cylinder === undefined ? {} : { cylinder }) }],
      PLUGS,
    );
    expect(parting).toMatchObject({
      together: 0,
      library: { kind: "check", id: step.check, worthMinutes: step.worthMinutes },
      learner: { kind: "check", id: other.check, worthMinutes: other.worthMinutes },
    });
  });
});
