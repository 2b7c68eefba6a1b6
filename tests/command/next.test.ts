// Do `half-order next`, `drive` and `mend` say to people and to programs what the library found?
import { CHECKS, driveAdvice, FINDINGS, mend, profileById, REPAIRS } from "@half-order/core";
import { parseCase } from "@half-order/core/wire";
import { describe, expect, it } from "vitest";
import { commandLine } from "../helper/command-line.ts";

const profile = profileById("generic.i4.1342.rail");
if (!profile) throw new Error("generic.i4.1342.rail is gone");
const findings = [
  { finding: "lamp", answer: "blinking" },
  { finding: "codes", answer: ["P0302", "P0303"] },
];
const text = JSON.stringify({ engine: "generic.i4.1342.rail", title: "Hill", findings });
const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

describe("half-order next", () => {
  it("says the step, its cautions before its steps, and what each outcome would mean", async () => {
    const { code, out } = await commandLine(["next", "--think", "20"], text);
    expect(code).toBe(0);
    expect(out).toMatch(/^Hill: /);
    expect(out).toMatch(/Next: /);
    expect(out.indexOf("DO NOT DRIVE")).toBeGreaterThan(0);
    expect(out.indexOf("DO NOT DRIVE")).toBeLessThan(out.indexOf("Next: "));
    expect(out).toMatch(/Expected from here until it runs right/);
    const caution = out.indexOf("CAUTION");
    if (caution >= 0 && out.includes("  1. ")) expect(caution).toBeLessThan(out.indexOf("  1. "));
  });

  it("prints all of it for programs", async () => {
    const { code, out } = await commandLine(["next", "--json", "--think", "20"], text);
    expect(code).toBe(0);
    const advice = JSON.parse(out);
    expect(advice.checks.length).toBeGreaterThan(0);
    expect(advice.expectedMinutes).toBeGreaterThan(0);
  });

  it("names the finding behind every outcome, so that the case can be written from it", async () => {
    const { out } = await commandLine(["next", "--think", "20"], text);
    const questions = [...out.matchAll(/^ {2}([a-z]) {2}(\{ "finding": .*\})$/gm)];
    expect(questions.length).toBeGreaterThan(0);
    const written = new Map(questions.map(([, letter = "", line = ""]) => [letter, line]));
    for (const line of written.values()) {
      const { ask } = FINDINGS.find(({ id }) => line.includes(JSON.stringify(id))) ?? {};
      expect(out.replace(/\s+/g, " ")).toContain(ask?.replace(/\s+/g, " "));
    }
    const outcomes = [...out.matchAll(/^ +[\d.]+ % {2}([a-z] .*)$/gm)].map(
      ([, codes = ""]) => codes,
    );
    expect(outcomes.length).toBeGreaterThan(1);
    for (const codes of outcomes) {
      const answers = codes.split(/, (?=[a-z] )/).map((code) => {
        const line = written.get(code.slice(0, 1)) ?? "";
        return JSON.parse(line.replace("…", code.slice(2))) as object;
      });
      const reading = parseCase({ engine: "generic.i4.1342.rail", findings: answers });
      expect(reading, codes).toHaveProperty("case");
    }
  });

  it("prints ids of the step, of other checks and of repairs", async () => {
    const { out } = await commandLine(["next", "--think", "20"], text);
    expect(out).toMatch(/^Next: [\s\S]*?\((?:[\d.]+ (?:min|h)),\s(?:check|repair)\.[\w.-]+\)/m);
    const listed = [...out.matchAll(/^ {2}((?:check|repair)\.\S+) {2}/gm)].map(([, id]) => id);
    expect(listed.length).toBeGreaterThan(3);
    const known = new Set<string | undefined>([...CHECKS, ...REPAIRS].map(({ id }) => id));
    expect(listed.filter((id) => !known.has(id))).toEqual([]);
    const [, step] = /^Next: [^(]*\([^,]*,\s(check\.\S+)\)/m.exec(out) ?? [];
    expect(listed).not.toContain(step);
  });

  it("says after something was pushed home to start the engine, and how to write what came of it", async () => {
    const seat = { finding: "boot.seat", cylinder: 2, answer: "high" };
    const high = JSON.stringify({ engine: "generic.i4.1342.rail", findings: [...findings, seat] });
    const { out } = await commandLine(["next", "--think", "20"], high);
    expect(out).toMatch(
      /^Next: Start the engine for a minute at most, without driving, and see whether it runs right/m,
    );
    expect(out).toContain('{ "repair": "repair.boots-home", "result": "cured" }');
    expect(out).not.toMatch(/Other checks that pay/);
  });

  it("calls for help at the roadside where nothing pays, as the drive rules have it", async () => {
    const atHand = { tools: [], where: "roadside", skill: 0 };
    const bare = (lamp: string) =>
      JSON.stringify({
        engine: "generic.i4.1342.rail",
        findings: [{ finding: "lamp", answer: lamp }],
        atHand,
      });
    const towed = await commandLine(["next", "--think", "20"], bare("blinking"));
    const driven = await commandLine(["next", "--think", "20"], bare("steady"));
    for (const { out } of [towed, driven]) expect(out).toMatch(/^Next: call for help\./m);
    const say = (lamp: string) =>
      driveAdvice(profile, [{ finding: "lamp", answer: lamp }]).level?.say ?? "no level";
    expect(towed.out.replace(/\s+/g, " ")).toContain(say("blinking"));
    expect(driven.out.replace(/\s+/g, " ")).toContain(say("steady"));
    expect(say("steady")).toMatch(/gently/);
  });

  it("names the hour rate, and whose it is", async () => {
    const usual = await commandLine(["next", "--think", "20"], text);
    expect(usual.out.replace(/\s+/g, " ")).toMatch(/an hour of yours at 25 \(an estimate; give/);
    const own = JSON.stringify({ ...JSON.parse(text), atHand: { hourRate: 60 } });
    const { out } = await commandLine(["next", "--think", "20"], own);
    expect(out.replace(/\s+/g, " ")).toContain("an hour of yours at 60 (as given)");
  });

  it("leaves the caution about traffic out in a workshop", async () => {
    const only = (where: string) =>
      JSON.stringify({
        engine: "generic.i4.1342.rail",
        findings: [],
        atHand: { tools: ["code reader"], where },
      });
    const [road, shop] = [
      await commandLine(["rank", "--top", "40"], only("roadside")),
      await commandLine(["rank", "--top", "40"], only("workshop")),
    ];
    expect(road.out).toContain("Away from traffic first");
    expect(shop.out).not.toContain("Away from traffic first");
  });

  it("refuses a thinking time that is none", async () => {
    const { code, err } = await commandLine(["next", "--think", "soon"], text);
    expect(code).toBe(2);
    expect(err).toMatch(/--think needs a whole number/);
  });
});

describe("half-order drive", () => {
  it("says what to do first, then why", async () => {
    const { code, out } = await commandLine(["drive"], text);
    const { level, rules } = driveAdvice(profile, findings);
    expect(code).toBe(0);
    expect(out.startsWith((level?.say ?? "").toUpperCase())).toBe(true);
    expect(out.replace(/\s+/g, " ")).toContain(rules[0]?.reason ?? "no reason");
  });

  it("prints all of it for programs", async () => {
    const { out } = await commandLine(["drive", "--json"], text);
    expect(JSON.parse(out)).toEqual(plain(driveAdvice(profile, findings)));
  });

  it("asks for the lamp when nobody has looked", async () => {
    const none = JSON.stringify({ engine: "generic.i4.1342.rail", findings: [] });
    const { out } = await commandLine(["drive"], none);
    expect(out).toMatch(/at this first\. The engine warning lamp/);
  });
});

describe("half-order mend", () => {
  it("prints all of it for programs", async () => {
    const { out } = await commandLine(["mend", "repair.plug-one", "--at", "2", "--json"], text);
    const wanted = { repair: "repair.plug-one", cylinder: 2 };
    expect(JSON.parse(out)).toEqual(plain(mend(profile, findings, wanted)));
  });

  it("says the put-back list and the proof", async () => {
    const { code, out } = await commandLine(["mend", "repair.rail"], text);
    expect(code).toBe(0);
    expect(out).toMatch(/Putting it back:\n {2}1\. /);
    expect(out).toMatch(/Proof: \d+ clean drive/);
  });

  it("says once what comes off first, with every place of it", async () => {
    const plugs = JSON.stringify({ engine: "generic.i4.1342.coil-per-plug", findings: [] });
    const { out } = await commandLine(["mend", "repair.plug-set"], plugs);
    const firsts = out.match(/^ +First: .*$/gm) ?? [];
    expect(firsts).toHaveLength(1);
    expect(firsts[0]).toMatch(/at 1, 2, 3, 4 \(\d+ min\); .* at 1, 2, 3, 4 \(\d+ min\)\./);
  });

  it("names a repair that there is not by its path", async () => {
    const { code, err } = await commandLine(["mend", "repair.plugset"], text);
    expect(code).toBe(2);
    expect(err).toMatch(/^\/repair: There is no repair "repair.plugset"\./);
  });

  it("asks for the repair, and for the cylinder where it has one", async () => {
    const nameless = await commandLine(["mend"], text);
    expect(nameless.code).toBe(2);
    expect(nameless.err).toMatch(/Name a repair/);
    const placeless = await commandLine(["mend", "repair.plug-one"], text);
    expect(placeless.code).toBe(2);
    expect(placeless.err).toMatch(/needs the cylinder/);
  });
});
