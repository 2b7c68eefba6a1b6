// Can these findings be used on this engine? Every problem at once, with the path to the bad field.

import { checkEntries, checkShape } from "../engine/check-shape.ts";
import { cylinderNames } from "../engine/cylinder-name.ts";
import type { CylinderName, EngineProfile } from "../engine/profile.ts";
import { needsNoCylinder } from "../engine/served-by.ts";
import type { Finding } from "../knowledge/answer.ts";
import { COUNTS_FROM_MISFIRE } from "../knowledge/code.ts";
import { KNOWLEDGE, type Knowledge } from "../knowledge/knowledge.ts";
import type { FindingRow, ReadingRule } from "../knowledge/schema.ts";
import { nearest } from "../units/nearest.ts";
import { type Problem, pointer } from "../units/problem.ts";
import { normalCode, readCodes } from "./code.ts";

/** Problems of a list of findings; paths begin with the position in the list, `/3/answer`. */
export function checkFindings(
  profile: EngineProfile,
  findings: readonly Finding[],
  knowledge: Knowledge = KNOWLEDGE,
): readonly Problem[] {
  const shape = [...checkShape(profile), ...checkEntries("findings", findings, "finding")];
  if (shape.length > 0) return shape;
  const names = cylinderNames(profile);
  return findings.flatMap((finding, i) => {
    const row = knowledge.findings.get(finding.finding);
    if (!row) return [unknownFinding(i, finding, knowledge)];
    return [
      ...checkCylinder(i, finding, row, { profile, names }),
      ...checkSuits(i, row, profile),
      ...checkAnswer(i, finding, row, names),
    ];
  });
}

function unknownFinding(i: number, { finding }: Finding, knowledge: Knowledge): Problem {
  const known = [...knowledge.findings.keys()];
  const near = nearest(finding, known, Number.POSITIVE_INFINITY).slice(0, 2);
  return {
    code: "finding-unknown",
    path: pointer(i, "finding"),
    message: `There is no finding "${finding}".`,
    hint: `Did you mean ${near.map((id) => `"${id}"`).join(" or ")}?`,
  };
}

function checkSuits(i: number, row: FindingRow, { ignition }: EngineProfile): readonly Problem[] {
  if (!row.suits || row.suits.includes(ignition)) return [];
  return [
    {
      code: "finding-not-here",
      path: pointer(i, "finding"),
      message: `"${row.id}" cannot be found on an engine with ignition "${ignition}".`,
      hint: "Leave it out, or correct the engine's ignition.",
    },
  ];
}

const WHICH_CYLINDER = {
  cylinder: "the cylinder",
  coil: "any cylinder that the coil fires",
  connector: "any cylinder that the connector feeds",
} as const;

function checkCylinder(
  i: number,
  { cylinder }: Finding,
  row: FindingRow,
  { profile, names }: { readonly profile: EngineProfile; readonly names: readonly CylinderName[] },
): readonly Problem[] {
  const path = pointer(i, "cylinder");
  if (row.scope === "engine") {
    if (cylinder === undefined) return [];
    return [
      {
        code: "cylinder-not-asked",
        path,
        message: `"${row.id}" is about the whole engine.`,
        hint: "Leave the cylinder out.",
      },
    ];
  }
  if (cylinder === undefined && needsNoCylinder(profile, row.scope)) return [];
  if (names.some((name) => String(name) === String(cylinder))) return [];
  const what = WHICH_CYLINDER[row.scope];
  return [
    {
      code: cylinder === undefined ? "cylinder-missing" : "cylinder-unknown",
      path,
      message:
        cylinder === undefined
          ? `"${row.id}" needs ${what}.`
          : `This engine has no cylinder ${cylinder}.`,
      hint: `Write "cylinder": one of ${names.join(", ")}.`,
    },
  ];
}

function checkAnswer(
  i: number,
  { answer }: Finding,
  row: FindingRow,
  names: readonly CylinderName[],
): readonly Problem[] {
  const path = pointer(i, "answer");
  switch (row.kind) {
    case "presence":
      if (answer === "yes" || answer === "no") return [];
      return [wrong(path, `"${row.id}" is answered yes or no.`, 'Write "yes" or "no".')];
    case "choice":
      return checkChoice(path, answer, row);
    case "several":
      return checkSeveral(path, answer, row);
    case "codes":
      return checkCodes(path, answer, names);
    case "counts":
      return checkCounts(path, answer, names);
  }
}

function checkChoice(path: string, answer: Finding["answer"], row: FindingRow): readonly Problem[] {
  if (typeof answer === "number" && !Number.isNaN(answer)) {
    if (row.reading) return checkPossible(path, answer, row.reading);
    return [wrong(path, `"${row.id}" is not measured in numbers.`, `Write ${optionList(row)}.`)];
  }
  if (typeof answer === "string" && Object.hasOwn(row.options, answer)) return [];
  const number = row.reading ? `, or a number in ${row.reading.unit}` : "";
  return [
    wrong(
      path,
      `${shown(answer)} is no answer to "${row.id}".`,
      `Write ${optionList(row)}${number}.`,
    ),
  ];
}

/** A reading that no engine and no meter gives is a slip of the pen, or is in another unit. */
function checkPossible(
  path: string,
  value: number,
  { unit, possible: [lowest, highest] }: ReadingRule,
): readonly Problem[] {
  if (value >= lowest && value <= highest) return [];
  return [
    {
      code: "reading-impossible",
      path,
      message: `${value} ${unit} cannot be: readings lie between ${lowest} and ${highest} ${unit}.`,
      hint: `Look whether the decimal point is right and the number is in ${unit}.`,
    },
  ];
}

function checkSeveral(
  path: string,
  answer: Finding["answer"],
  row: FindingRow,
): readonly Problem[] {
  if (!Array.isArray(answer)) {
    return [
      wrong(path, `"${row.id}" takes a list.`, `Write a list of ${optionList(row)}; [] for none.`),
    ];
  }
  return (answer as readonly unknown[]).flatMap((option, k) =>
    typeof option === "string" && Object.hasOwn(row.options, option)
      ? []
      : [
          wrong(
            path + pointer(k),
            `${JSON.stringify(option)} is no answer to "${row.id}".`,
            `Write ${optionList(row)}.`,
          ),
        ],
  );
}

function checkCodes(
  path: string,
  answer: Finding["answer"],
  names: readonly CylinderName[],
): readonly Problem[] {
  if (!Array.isArray(answer)) {
    return [
      wrong(
        path,
        "Codes are given as a list.",
        'Write ["P0302", "P0305"]; [] when none is stored.',
      ),
    ];
  }
  return (answer as readonly unknown[]).flatMap((text, k) => {
    const at = path + pointer(k);
    const code = typeof text === "string" ? normalCode(text) : undefined;
    if (code === undefined) {
      return [
        wrong(
          at,
          `${JSON.stringify(text)} is not a trouble code.`,
          "Write a letter and four characters, such as P0302.",
        ),
      ];
    }
    const [cylinder] = readCodes([code]).misfire;
    if (cylinder === undefined || names.includes(cylinder)) return [];
    return [
      wrong(
        at,
        `${code} names cylinder ${cylinder}, but this engine's cylinders are ${names.join(", ")}.`,
        "Correct the code, or number the cylinders of the profile as its maker does.",
      ),
    ];
  });
}

function checkCounts(
  path: string,
  answer: Finding["answer"],
  names: readonly CylinderName[],
): readonly Problem[] {
  // What comes from outside may be null.
  if (typeof answer !== "object" || !answer || Array.isArray(answer)) {
    return [wrong(path, "Counts are given by cylinder.", 'Write {"1": 0, "2": 131, …}.')];
  }
  return Object.entries(answer as Readonly<Record<string, unknown>>).flatMap(([name, count]) => {
    const at = path + pointer(name);
    if (!names.some((known) => String(known) === name)) {
      return [wrong(at, `This engine has no cylinder ${name}.`, `Use ${names.join(", ")}.`)];
    }
    const isWhole = Number.isInteger(count) && (count as number) >= 0;
    if (isWhole && (count as number) <= COUNTS_FROM_MISFIRE.mostCounted) return [];
    const hint = `Write a whole number from 0 to ${COUNTS_FROM_MISFIRE.mostCounted}, where counters end.`;
    return [wrong(at, `${shown(count)} is not a count.`, hint)];
  });
}

function wrong(path: string, message: string, hint: string): Problem {
  return { code: "answer-wrong", path, message, hint };
}

function optionList(row: FindingRow): string {
  const options = Object.keys(row.options).map((option) => `"${option}"`);
  return options.length < 2
    ? options.join("")
    : `${options.slice(0, -1).join(", ")} or ${options.at(-1)}`;
}

/** As JSON, but for the numbers that JSON does not have. */
function shown(value: unknown): string {
  return typeof value === "number" ? `${value}` : JSON.stringify(value);
}
