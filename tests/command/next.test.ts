// Do `half-order next`, `drive` and `mend` say to people and to programs what the library found?
import { driveAdvice, mend, profileById } from "@half-order/core";
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
    expect(out).toMatch(/warning lamp first/);
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

  it("asks for the repair, and for the cylinder where it has one", async () => {
    const nameless = await commandLine(["mend"], text);
    expect(nameless.code).toBe(2);
    expect(nameless.err).toMatch(/Name a repair/);
    const placeless = await commandLine(["mend", "repair.plug-one"], text);
    expect(placeless.code).toBe(2);
    expect(placeless.err).toMatch(/needs the cylinder/);
  });
});
