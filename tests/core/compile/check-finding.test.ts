// Findings that cannot be used are refused all at once, each at its place.
import { describe, expect, it } from "vitest";
import {
  checkFindings,
  type EngineProfile,
  type Finding,
} from "../../../packages/core/src/index.ts";

const six: EngineProfile = {
  cylinders: 6,
  layout: "v",
  firingOrder: [1, 2, 3, 4, 5, 6],
  ignition: "rail",
};

interface Refused {
  readonly why: string;
  readonly finding: unknown;
  readonly code: string;
  readonly path: string;
  readonly says: RegExp;
}

const REFUSED: readonly Refused[] = [
  {
    why: "an unknown finding",
    finding: { finding: "plug.looks", answer: "tan" },
    code: "finding-unknown",
    path: "/0/finding",
    says: /"plug\.look"/,
  },
  {
    why: "one that this ignition does not have",
    finding: { finding: "lead.age", answer: "3-6" },
    code: "finding-not-here",
    path: "/0/finding",
    says: /rail/,
  },
  {
    why: "a cylinder that is missing",
    finding: { finding: "plug.look", answer: "tan" },
    code: "cylinder-missing",
    path: "/0/cylinder",
    says: /1, 2, 3, 4, 5, 6/,
  },
  {
    why: "a cylinder that the engine has not",
    finding: { finding: "plug.look", answer: "tan", cylinder: 7 },
    code: "cylinder-unknown",
    path: "/0/cylinder",
    says: /no cylinder 7/,
  },
  {
    why: "a cylinder where none is asked for",
    finding: { finding: "lamp", answer: "off", cylinder: 1 },
    code: "cylinder-not-asked",
    path: "/0/cylinder",
    says: /whole engine/,
  },
  {
    why: "an option that does not exist",
    finding: { finding: "lamp", answer: "green" },
    code: "answer-wrong",
    path: "/0/answer",
    says: /"steady"/,
  },
  {
    why: "a name that every object has",
    finding: { finding: "lamp", answer: "constructor" },
    code: "answer-wrong",
    path: "/0/answer",
    says: /"steady"/,
  },
  {
    why: "a number where nothing is measured",
    finding: { finding: "lamp", answer: 3 },
    code: "answer-wrong",
    path: "/0/answer",
    says: /not measured/,
  },
  {
    why: "a reading that is no number",
    finding: { finding: "voltage", answer: Number.NaN },
    code: "answer-wrong",
    path: "/0/answer",
    says: /"normal"/,
  },
  {
    why: "maybe, where yes or no is asked",
    finding: { finding: "mist", answer: "maybe" },
    code: "answer-wrong",
    path: "/0/answer",
    says: /yes/,
  },
  {
    why: "one word where a list is asked",
    finding: { finding: "work", answer: "wash" },
    code: "answer-wrong",
    path: "/0/answer",
    says: /list/,
  },
  {
    why: "one of a list that does not exist",
    finding: { finding: "work", answer: ["wash", "paint"] },
    code: "answer-wrong",
    path: "/0/answer/1",
    says: /"paint"/,
  },
  {
    why: "codes that are no list",
    finding: { finding: "codes", answer: "P0302" },
    code: "answer-wrong",
    path: "/0/answer",
    says: /list/,
  },
  {
    why: "a code that is none",
    finding: { finding: "codes", answer: ["P0302", "P03G1"] },
    code: "answer-wrong",
    path: "/0/answer/1",
    says: /P03G1/,
  },
  {
    why: "a code of a cylinder that the engine has not",
    finding: { finding: "codes", answer: ["P0308"] },
    code: "answer-wrong",
    path: "/0/answer/0",
    says: /cylinder 8/,
  },
  {
    why: "counts that are a list",
    finding: { finding: "counts", answer: [1, 2, 3] },
    code: "answer-wrong",
    path: "/0/answer",
    says: /by cylinder/,
  },
  {
    why: "counts of a cylinder that the engine has not",
    finding: { finding: "counts", answer: { "9": 3 } },
    code: "answer-wrong",
    path: "/0/answer/9",
    says: /no cylinder 9/,
  },
  {
    why: "a count that is not whole",
    finding: { finding: "counts", answer: { "1": 2.5 } },
    code: "answer-wrong",
    path: "/0/answer/1",
    says: /whole number/,
  },
  {
    why: "a gap as wide as a hand",
    finding: { finding: "plug.gap", answer: 110, cylinder: 1 },
    code: "reading-impossible",
    path: "/0/answer",
    says: /0 and 5 mm.*decimal point/,
  },
  {
    why: "a pressure below nothing",
    finding: { finding: "compression", answer: -3, cylinder: 1 },
    code: "reading-impossible",
    path: "/0/answer",
    says: /kPa/,
  },
  {
    why: "a trim of thousands",
    finding: { finding: "trim.idle", answer: 1e300 },
    code: "reading-impossible",
    path: "/0/answer",
    says: /-100 and 100 %/,
  },
  {
    why: "a count that no counter holds",
    finding: { finding: "counts", answer: { "1": 1e300 } },
    code: "answer-wrong",
    path: "/0/answer/1",
    says: /65535/,
  },
  {
    why: "a count below zero",
    finding: { finding: "counts", answer: { "1": -2 } },
    code: "answer-wrong",
    path: "/0/answer/1",
    says: /whole number/,
  },
];

const check = (...findings: readonly unknown[]) =>
  checkFindings(six, findings as readonly Finding[]);

describe("a finding is refused", () => {
  it.each(REFUSED)("with $why", ({ finding, code, path, says }) => {
    const [problem, ...others] = check(finding);
    expect(others).toEqual([]);
    expect(problem).toMatchObject({ code, path });
    expect(`${problem?.message} ${problem?.hint}`).toMatch(says);
    expect(problem?.hint).not.toBe("");
  });

  it("with all others that are wrong, each by its place in the list", () => {
    const problems = check(
      { finding: "lamp", answer: "off" },
      { finding: "nonsense", answer: "off" },
      { finding: "plug.look", answer: "green" },
    );
    expect(problems.map(({ path }) => path)).toEqual(["/1/finding", "/2/cylinder", "/2/answer"]);
  });
});

describe("a finding is accepted", () => {
  it.each([
    { finding: "lamp", answer: "off" },
    { finding: "plug.look", answer: "tan", cylinder: 3 },
    { finding: "plug.look", answer: "tan", cylinder: "3" },
    { finding: "voltage", answer: 14.1 },
    { finding: "plug.gap", answer: 1.1, cylinder: 2 },
    { finding: "trim.load", answer: -100 },
    { finding: "counts", answer: { "1": 65535 } },
    { finding: "work", answer: [] },
    { finding: "codes", answer: [] },
    { finding: "codes", answer: [" p0302 ", "P0171", "P1301"] },
    { finding: "counts", answer: { "1": 0, "5": 40 } },
  ])("as $finding $answer", (finding) => {
    expect(check(finding)).toEqual([]);
  });
});
