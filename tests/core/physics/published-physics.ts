// The published numbers that the tests of this room compare with, each by its id; every one must be used.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect } from "vitest";

interface PublishedNumber {
  readonly id: string;
  readonly what: string;
  readonly value?: number;
  readonly within?: number;
  readonly share?: number;
  readonly from?: number;
  readonly to?: number;
  readonly unit: string;
  readonly source: string;
  readonly grounds: "published" | "worked out" | "from memory";
}

const path = join(import.meta.dirname, "../../../fixtures/published/physics.json");
const { checks } = JSON.parse(readFileSync(path, "utf8")) as {
  readonly checks: Readonly<Record<string, readonly PublishedNumber[]>>;
};

/** Holds a number, in the unit of the fixture, against the published one of that id. */
type Compare = (id: string, actual: number | undefined) => void;

/** The comparison for one topic of the fixture, and the ids that were not compared so far. */
export function published(topic: string): {
  readonly compare: Compare;
  readonly left: () => readonly string[];
} {
  const rows = new Map((checks[topic] ?? []).map((row) => [row.id, row]));
  const left = new Set(rows.keys());
  const compare: Compare = (id, actual) => {
    const row = rows.get(id);
    if (!row) throw new Error(`No published number ${topic} ${id}.`);
    const says = `${row.what}, ${row.unit} (${row.source}; ${row.grounds})`;
    const [low, high] = bounds(row);
    expect(actual, says).toBeGreaterThanOrEqual(low);
    expect(actual, says).toBeLessThanOrEqual(high);
    left.delete(id);
  };
  return { compare, left: () => [...left] };
}

/** Rounding of a double, so that a tolerance of nothing still passes. */
const SLACK = 1e-12;

function bounds({ id, value, within, share, from, to }: PublishedNumber): [number, number] {
  if (from !== undefined && to !== undefined) return [from, to];
  const tolerance = within ?? (share === undefined ? undefined : share * Math.abs(value ?? 0));
  if (value === undefined || tolerance === undefined) throw new Error(`${id} has no tolerance.`);
  const room = tolerance + SLACK * Math.abs(value);
  return [value - room, value + room];
}
