// Is it a profile at all? What a program without types may hand over, told instead of a crash.
import { type Problem, pointer } from "../units/problem.ts";

/** Fields that hold a list, where they are given, and what it is a list of; of objects, their own list. */
const LISTS = {
  firingOrder: "plain",
  firingIntervals: "plain",
  coilOn: "plain",
  banks: "lists",
  neighbours: "lists",
  firingGroups: "lists",
  connectors: { with: "feeds" },
  covers: { with: "cylinders" },
} as const;

/**
 * Problems of something that should be a profile, as far as its sense could not be judged at all; paths
 * are within it, and `/profile` when it is no object.
 */
export function checkShape(profile: unknown): readonly Problem[] {
  if (!isObject(profile)) {
    const hint = 'Give an engine profile, for example profileById("demo.tern").';
    return [kindWrong("/profile", profile, hint)];
  }
  const { figures } = profile;
  return [
    ...Object.entries(LISTS).flatMap(([field, of]) => checkList(field, profile[field], of)),
    ...(figures === undefined || isObject(figures)
      ? []
      : [kindWrong("/figures", figures, "Give an object of figures, or leave it out.")]),
  ];
}

function checkList(
  field: string,
  value: unknown,
  of: (typeof LISTS)[keyof typeof LISTS],
): readonly Problem[] {
  if (value === undefined) return [];
  const path = pointer(field);
  if (!Array.isArray(value)) return [kindWrong(path, value, "Give a list, or leave it out.")];
  return value.flatMap((entry: unknown, i): readonly Problem[] => {
    if (of === "plain") return [];
    const at = typeof of === "string" ? `${path}/${i}` : `${path}/${i}/${of.with}`;
    const list = typeof of === "string" ? entry : isObject(entry) ? entry[of.with] : undefined;
    return Array.isArray(list) ? [] : [kindWrong(at, list, "Give a list of cylinders.")];
  });
}

/** Problems of something that should be a list of objects, each with a text in one field. */
export function checkEntries(name: string, value: unknown, field: string): readonly Problem[] {
  if (!Array.isArray(value)) {
    return [kindWrong(pointer(name), value, `Give a list of ${name}; [] when there are none.`)];
  }
  return value.flatMap((entry: unknown, i): readonly Problem[] => {
    if (isObject(entry) && typeof entry[field] === "string") return [];
    const hint = `Give an object with "${field}", an id in text.`;
    return [kindWrong(pointer(i), entry, hint)];
  });
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function kindWrong(path: string, value: unknown, hint: string): Problem {
  const said = Array.isArray(value) ? "A list" : isObject(value) ? "An object" : String(value);
  return { code: "kind-wrong", path, message: `${said} was not expected here.`, hint };
}
