// A record of plugs while it is written: what may still be missing, and what it is when it is whole.
import type { CylinderName, Finding, PlugEntry, PlugRecord, Problem } from "@half-order/core";

/** A record of which the odometer may not have been read yet. */
export type Draft = Omit<PlugRecord, "odometerKm"> &
  Partial<Pick<PlugRecord, "odometerKm">> & {
    /** The day of the record that is being changed; left out for a new one. */
    readonly was?: string;
  };

/** What is changed in a draft. */
export type Edit = (now: Draft) => Draft;

/** A new record of a day; these plugs went in when the last ones came out, unless the same went back then. */
export function newDraft(day: string, records: readonly PlugRecord[]): Draft {
  const last = records.at(-1);
  const fittedAtKm = last?.course?.wentIn === "same" ? last.fittedAtKm : last?.odometerKm;
  return { when: day, plugs: [], ...(fittedAtKm === undefined ? {} : { fittedAtKm }) };
}

/** An earlier record, to change it. */
export function draftOf(record: PlugRecord): Draft {
  return { ...record, was: record.when };
}

/** An object with a field set, or without it for `undefined`. */
export function setField<T extends object, K extends keyof T>(
  of: T,
  field: K,
  value: T[K] | undefined,
): T {
  const { [field]: _, ...rest } = of;
  return (value === undefined ? rest : { ...rest, [field]: value }) as T;
}

export function plugOf(draft: Draft, cylinder: CylinderName): PlugEntry {
  return draft.plugs.find((plug) => plug.cylinder === cylinder) ?? { cylinder };
}

/** The draft with one plug changed; a plug of which nothing is known any more goes out. */
export function withPlug(draft: Draft, plug: PlugEntry): Draft {
  const others = draft.plugs.filter(({ cylinder }) => cylinder !== plug.cylinder);
  const isBare = Object.keys(plug).length === 1;
  return { ...draft, plugs: isBare ? others : [...others, plug] };
}

/** Torque and part number of one plug, for all cylinders. */
export function withSameForAll(
  draft: Draft,
  of: CylinderName,
  cylinders: readonly CylinderName[],
): Draft {
  const { torqueNm, part } = plugOf(draft, of);
  return cylinders.reduce((next, cylinder) => {
    const plug = setField(plugOf(next, cylinder), "torqueNm", torqueNm);
    return withPlug(next, setField(plug, "part", part));
  }, draft);
}

/** True while nothing has been entered that could be lost. */
export function isEmpty(draft: Draft): boolean {
  return draft.was === undefined && draft.odometerKm === undefined && draft.plugs.length === 0;
}

export type DraftReading =
  | { readonly record: PlugRecord }
  | { readonly problems: readonly Problem[] };

/**
 * The record that a draft makes, plugs in the order of the engine; problems of its own are what is missing
 * and a day that has a record already.
 */
export function recordOf(
  { was, odometerKm, ...rest }: Draft,
  records: readonly PlugRecord[],
  names: readonly CylinderName[],
  words: { readonly missing: Problem; readonly sameDay: Problem },
): DraftReading {
  const isTaken = rest.when !== was && records.some(({ when }) => when === rest.when);
  if (isTaken || odometerKm === undefined) {
    return {
      problems: [
        ...(odometerKm === undefined ? [words.missing] : []),
        ...(isTaken ? [words.sameDay] : []),
      ],
    };
  }
  const place = ({ cylinder }: PlugEntry): number => names.indexOf(cylinder);
  const plugs = [...rest.plugs].sort((a, b) => place(a) - place(b));
  return { record: { ...rest, odometerKm, plugs } };
}

/** All records with one put in, in the place of the one of the day `was`, in the order of time. */
export function withRecord(
  records: readonly PlugRecord[],
  record: PlugRecord,
  was: string | undefined,
): readonly PlugRecord[] {
  const others = records.filter(({ when }) => when !== (was ?? record.when));
  return [...others, record].sort((a, b) => (a.when < b.when ? -1 : 1));
}

/** What was seen on each plug is also the answer to the question of it, in the place of an earlier one. */
export function withFindings(
  findings: readonly Finding[],
  plugs: readonly PlugEntry[],
  when: string,
): readonly Finding[] {
  const given = plugs.flatMap(({ cylinder, gapMm, look }): readonly Finding[] => [
    ...(gapMm === undefined ? [] : [{ finding: "plug.gap", answer: gapMm, cylinder, when }]),
    ...(look === undefined ? [] : [{ finding: "plug.look", answer: look, cylinder, when }]),
  ]);
  const isGiven = (other: Finding): boolean =>
    given.some((own) => own.finding === other.finding && own.cylinder === other.cylinder);
  return [...findings.filter((finding) => !isGiven(finding)), ...given];
}
