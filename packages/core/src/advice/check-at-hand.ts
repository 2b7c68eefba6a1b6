// Can what is said to be at hand be used? Every problem at once, with the path to the bad field.
import type { AtHand } from "../knowledge/answer.ts";
import { PLACE_LIMITS } from "../knowledge/at-hand.ts";
import { FORMER_TOOLS, TOOLS } from "../knowledge/tool.ts";
import { type Problem, pointer } from "../units/problem.ts";

const KNOWN_TOOLS: readonly string[] = [...TOOLS, ...Object.keys(FORMER_TOOLS)];

/** Dearer things are slips of the pen. */
const MOST_MONEY = 1e9;
const SKILLS: readonly unknown[] = [0, 1, 2, 3, 4];

/** Problems of what is at hand; paths begin with `/atHand`. */
export function checkAtHand(atHand: AtHand): readonly Problem[] {
  if (typeof atHand !== "object" || atHand === null) {
    return [problem([], `${atHand} is nothing that can be at hand.`, "Write {} for no limits.")];
  }
  const { tools = [], where, skill, hourRate, partsPrice = {}, callPrice } = atHand;
  const places = Object.keys(PLACE_LIMITS);
  return [
    ...tools.flatMap((tool, i) =>
      KNOWN_TOOLS.includes(tool)
        ? []
        : [problem(["tools", i], `There is no tool ${said(tool)}.`, `Write ${list(TOOLS)}.`)],
    ),
    ...(where === undefined || Object.hasOwn(PLACE_LIMITS, where)
      ? []
      : [problem(["where"], `There is no place ${said(where)}.`, `Write ${list(places)}.`)]),
    ...(skill === undefined || SKILLS.includes(skill)
      ? []
      : [problem(["skill"], `${said(skill)} is no skill.`, "Write 0 for anyone to 4.")]),
    ...checkMoney(["hourRate"], hourRate),
    ...Object.entries(partsPrice).flatMap(([of, price]) => checkMoney(["partsPrice", of], price)),
    ...checkMoney(["callPrice"], callPrice),
  ];
}

function checkMoney(at: readonly string[], price: unknown): readonly Problem[] {
  const isMoney = typeof price === "number" && price >= 0 && price <= MOST_MONEY;
  if (price === undefined || isMoney) return [];
  const hint = `Write an amount from 0 to ${MOST_MONEY} in your money, or leave it out.`;
  return [problem(at, `${price} is no price.`, hint)];
}

function problem(at: readonly (string | number)[], message: string, hint: string): Problem {
  return { code: "at-hand-wrong", path: pointer("atHand", ...at), message, hint };
}

function said(value: unknown): string {
  return JSON.stringify(value) ?? String(value);
}

function list(words: readonly string[]): string {
  return words.map((word) => JSON.stringify(word)).join(", ");
}
