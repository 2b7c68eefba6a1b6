// Drive conditions taken apart, and written out as the findings that fulfil them.
import type { DriveCondition, Finding } from "../../packages/core/src/index.ts";
import { KNOWLEDGE } from "../../packages/core/src/index.ts";
import { CODE_FAMILIES } from "../../packages/core/src/knowledge/code.ts";

/** Every finding that a condition asks about, with the answers it wants. */
export function* asked(
  when: DriveCondition,
): Generator<{ finding: string; is: readonly string[] }> {
  if ("all" in when) for (const each of when.all) yield* asked(each);
  if ("any" in when) for (const each of when.any) yield* asked(each);
  if ("finding" in when) yield when;
}

/** Every way to fulfil a condition on a four-cylinder engine numbered 1 to 4. */
export function waysTo(when: DriveCondition): readonly (readonly Finding[])[] {
  if ("any" in when) return when.any.flatMap(waysTo);
  if ("all" in when) {
    return when.all.reduce<readonly (readonly Finding[])[]>(
      (ways, each) => ways.flatMap((way) => waysTo(each).map((more) => [...way, ...more])),
      [[]],
    );
  }
  if ("finding" in when) return when.is.map((option) => [findingWith(when.finding, option)]);
  const { atLeast, share = 0 } = when.missing;
  const cylinders = Array.from(
    { length: Math.max(atLeast, Math.ceil(share * 4)) },
    (_, i) => i + 1,
  );
  return [
    [{ finding: "codes", answer: cylinders.map((n) => `P030${n}`) }],
    [{ finding: "counts", answer: Object.fromEntries(cylinders.map((n) => [String(n), 200])) }],
    cylinders.map((n) => ({ finding: "cancel", cylinder: n, answer: "no-drop" })),
  ];
}

/** A finding with an answer that holds this option. */
export function findingWith(id: string, option: string): Finding {
  const row = KNOWLEDGE.findings.get(id);
  if (!row) throw new Error(`There is no finding ${id}.`);
  const place = row.scope === "engine" ? {} : { cylinder: 1 };
  if (row.kind === "several") return { finding: id, ...place, answer: [option] };
  if (row.kind !== "codes") return { finding: id, ...place, answer: option };
  const code = CODE_FAMILIES.find((family) => family.option === option)?.codes[0]?.slice(0, 5);
  return { finding: id, answer: code === undefined ? [] : [code] };
}
