// The likely parts in words: each part once, with the ways in which it may have failed beneath it. Places
// of which all figures are alike (six coils, before any finding) share one entry.
import {
  type AtHand,
  type CheckRow,
  type CylinderName,
  type Knowledge,
  type RankedComponent,
  type RankedFault,
  type Ranking,
  refusal,
  sayProbability,
} from "@half-order/core";
import { REASONS } from "./next-text.ts";
import { percent, wrapped } from "./text.ts";

/** One way to fail at one or more places of which the figures are alike. */
interface Mode {
  /** Places in the ranking, from 1. */
  readonly numbers: readonly number[];
  readonly faults: readonly RankedFault[];
}

/** What is printed as one: a part at one or more places. */
export interface PartEntry {
  readonly components: readonly RankedComponent[];
  readonly modes: readonly Mode[];
  /** Ways to fail that are too rare for a line. */
  readonly rarer: number;
}

/** A way to fail is worth a line from this part of its part's likeliest on, */
const WORTH_A_LINE = 0.15;
/** and so many places in the ranking get one. */
const MOST_PLACES = 4;

/** The first entries of the list, likeliest first. */
export function partEntries({ components, ranking }: Ranking, top: number): readonly PartEntry[] {
  const numbered = ranking.map((fault, i) => ({ fault, number: i + 1 }));
  const byComponent = groupsOf(numbered, ({ fault }) => fault.component);
  const parts = components.map((component) => {
    const all = byComponent.get(component.component) ?? [];
    const least = WORTH_A_LINE * (all[0]?.fault.probability ?? 0);
    const modes = all.filter(({ fault }, i) => i < MOST_PLACES && fault.probability >= least);
    return { component, modes, rarer: all.length - modes.length };
  });
  const alike = groupsOf(parts, ({ component: { part, probability }, modes }) =>
    [part, percent(probability), ...modes.map(looksOf).sort()].join(),
  );
  return [...alike.values()].slice(0, top).map((group) => {
    const modes = groupsOf(
      group.flatMap((each) => each.modes),
      looksOf,
    );
    return {
      components: byCylinder(group.map(({ component }) => component)),
      modes: byFirstCheck(
        [...modes.values()].map((same) => ({
          numbers: same.map(({ number }) => number),
          faults: byCylinder(same.map(({ fault }) => fault)),
        })),
      ),
      rarer: group.reduce((sum, { rarer }) => sum + rarer, 0),
    };
  });
}

/** Ways to fail that are looked at first by one check, together; likeliest first otherwise. */
function byFirstCheck(modes: readonly Mode[]): readonly Mode[] {
  return [...groupsOf(modes, firstCheckOf).values()].flat();
}

function firstCheckOf({ faults }: Mode): string {
  return faults[0]?.firstCheck ?? "";
}

/** Of equals none is the first, so they stand as people count cylinders. */
function byCylinder<Placed extends { readonly cylinders: readonly CylinderName[] }>(
  placed: readonly Placed[],
): readonly Placed[] {
  const key = ({ cylinders }: Placed): string => cylinders.join(" ");
  return [...placed].sort((a, b) => key(a).localeCompare(key(b), "en", { numeric: true }));
}

/** Entries by key, keys and entries in the order in which they are met. */
function groupsOf<Entry>(
  entries: readonly Entry[],
  keyOf: (entry: Entry) => string,
): ReadonlyMap<string, readonly Entry[]> {
  const groups = new Map<string, Entry[]>();
  for (const entry of entries) {
    const key = keyOf(entry);
    const group = groups.get(key) ?? [];
    groups.set(key, group);
    group.push(entry);
  }
  return groups;
}

interface Numbered {
  readonly fault: RankedFault;
  readonly number: number;
}

function looksOf({ fault: { fault, probability } }: Numbered): string {
  return `${fault} ${percent(probability)}`;
}

/** An entry as lines; `all` is how many cylinders the engine has. */
export function sayPart(
  { components, modes, rarer }: PartEntry,
  all: number,
  { checks, faults }: Pick<Knowledge, "checks" | "faults">,
  atHand: AtHand,
): string {
  const [{ part, probability }] = components as [RankedComponent];
  const each = components.length > 1 ? "each " : "";
  const said = `${each}${sayProbability(probability)}`.padEnd(24);
  const head = `${said} ${percent(probability).padStart(7)}  ${capital(part)}, ${sayPlaces(components, all)}\n`;
  const lines = [...groupsOf(modes, firstCheckOf)].flatMap(([id, group]) => {
    const first = group.length > 1 ? "First for each" : "First";
    const check = wrapped(`${first}: ${sayCheck(id, checks, atHand)}.`, MORE);
    return [...group.map((mode) => sayMode(mode, faults)), check];
  });
  return [head, ...lines, rarer > 0 ? wrapped(`and ${rarer} rarer`, MORE) : ""].join("");
}

/** Below the words of a line that begins with a number and a probability. */
const MORE = " ".repeat(22);

function sayMode({ numbers, faults }: Mode, rows: Knowledge["faults"]): string {
  const [{ fault, probability, name }] = faults as [RankedFault];
  const row = rows.find(({ id }) => id === fault);
  const at = faults.map(({ cylinders }) => sayNames(cylinders)).join(" / ");
  const whole = faults.length === 1 || !row ? name : row.name.replace("{at}", at);
  const number = `${runs(numbers)}.`.padStart(10);
  const [first = "", ...rest] = wrapped(whole, MORE).split("\n");
  const head = `${number} ${percent(probability).padStart(8)}   ${first.trimStart()}`;
  return [head, ...rest].join("\n");
}

/** "2 and 5" */
function sayNames(names: readonly CylinderName[]): string {
  return [names.slice(0, -1).join(", "), names.at(-1)].filter((part) => part !== "").join(" and ");
}

/** The check, and why it cannot be made with what is at hand where it cannot. */
function sayCheck(id: string, checks: readonly CheckRow[], atHand: AtHand): string {
  const check = checks.find((row) => row.id === id);
  if (!check) return id;
  const { name, minutes, tool } = check;
  const why = refusal(atHand, check);
  const not = why === undefined ? "" : `; ${why === "tool" ? "not at hand" : REASONS[why]}`;
  return `${name} (${minutes} min, ${tool === "none" ? "no tool" : tool}${not})`;
}

/** "all cylinders", "cylinder 2", "cylinders 1 and 4 / 2 and 3" */
function sayPlaces(components: readonly RankedComponent[], all: number): string {
  const [{ cylinders }] = components as [RankedComponent];
  if (cylinders.length === all && all > 1) return "all cylinders";
  const isOne = components.length === 1 && cylinders.length === 1;
  const names = components.map((component) => sayNames(component.cylinders)).join(" / ");
  return `cylinder${isOne ? "" : "s"} ${names}`;
}

/** "3-5, 9" */
function runs(numbers: readonly number[]): string {
  const sorted = [...numbers].sort((a, b) => a - b);
  const pieces: [number, number][] = [];
  for (const number of sorted) {
    const last = pieces.at(-1);
    if (last && number === last[1] + 1) last[1] = number;
    else pieces.push([number, number]);
  }
  return pieces.map(([from, to]) => (from === to ? `${from}` : `${from}-${to}`)).join(", ");
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
