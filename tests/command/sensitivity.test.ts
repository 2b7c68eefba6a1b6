// Does `half-order sensitivity` say what the library found, in words and for programs?
import { profileById, sensitivity } from "@half-order/core";
import { describe, expect, it } from "vitest";
import { commandLine } from "../helper/command-line.ts";

const findings = [
  { finding: "codes", answer: ["P0302"] },
  { finding: "plug.age", answer: "over-100" },
  { finding: "plug.gap", cylinder: 2, answer: "wide" },
];
const text = JSON.stringify({ engine: "demo.wagtail", title: "Café run", findings });
const profile = profileById("demo.wagtail");
if (!profile) throw new Error("demo.wagtail is gone");

describe("half-order sensitivity", () => {
  it("--json prints what the library tells, with the engine beside it", async () => {
    const words = ["sensitivity", "--json", "--shakes", "8", "--seed", "3"];
    const { code, out } = await commandLine(words, text);
    expect(code).toBe(0);
    const told = sensitivity(profile, findings, { shakes: 8, seed: 3 });
    const engine = { id: "demo.wagtail", name: profile.name };
    expect(JSON.parse(out)).toEqual(JSON.parse(JSON.stringify({ engine, ...told })));
  });

  it("names the two that lead, each number with its move, and how often the place holds", async () => {
    const { code, out } = await commandLine(["sensitivity", "--shakes", "8"], text);
    expect(code).toBe(0);
    const told = sensitivity(profile, findings, { shakes: 8 });
    expect(out).toContain("Café run: ");
    expect(out).toMatch(
      /^First and second\n +[\d.]+ % +Plug of cylinder 2: gap worn wide +its part in whatever way [\d.]+ %\n/m,
    );
    const moves = [...out.matchAll(/^ *([+-][\d.]+) dB /gm)].map(([, db]) => Number(db));
    const near = told.flips.filter(({ moveDb }) => Math.abs(moveDb) <= 30);
    expect(moves).toEqual(near.map(({ moveDb }) => Math.round(moveDb * 10) / 10));
    const line = out.replaceAll(/\s+/g, " ");
    expect(line).toMatch(
      / would be first if "Plug of cylinder 2: gap worn wide" were [\d.]+ times as rare\./,
    );
    expect(line).toMatch(
      / would be first if .* brought the answer ".*\(cylinder 2\) .*" in [\d.]+ % of cases, not in/,
    );
    const held =
      /first part +[\d.<>]+ % +likeliest fault +[\d.<>]+ % +first three +[\d.<>]+ % +of 8/g;
    expect(out.match(held)).toHaveLength(2);
    expect(out).not.toContain("@");
  });

  it.each([
    ["--shakes nothing", ["--shakes", "few"], "--shakes needs a whole number from 1 up"],
    ["two pipes", ["-", "--knowledge", "-"], "cannot both come from standard input"],
    ["two files", ["a.json", "b.json"], '"b.json" is one name too many.'],
  ])("refuses %s", async (_, words, message) => {
    const { code, err } = await commandLine(["sensitivity", ...words], text);
    expect(code).toBe(2);
    expect(err).toContain(message);
  });
});
