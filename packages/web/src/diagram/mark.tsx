// What a mark on a drawing shows: how likely its place is at fault, and whether it is looked at.
import type { CylinderName, Engine, FaultRow } from "@half-order/core";
import type { ComponentChildren, VNode } from "preact";

/** What the drawings show of a ranking. */
export interface Look {
  /** 0..1 by place id: that a part at this place is at fault. */
  readonly places: ReadonlyMap<string, number>;
  /** 0..1 by cylinder: that it misses. */
  readonly misses: readonly number[];
  /** Places that are pointed at. */
  readonly active: ReadonlySet<string>;
}

export const BARE: Look = { places: new Map(), misses: [], active: new Set() };

/** From this chance on a mark takes the signal colour. */
const SUSPECT = 0.15;
/** Marks that would clutter the drawing are left out below this chance. */
const WORTH_DRAWING = 0.015;

/** The id of a place as the library writes it: `coil 2+5`, `leg 3`, `engine`. */
export function placeId(
  engine: Engine,
  kind: FaultRow["at"],
  cylinders: readonly number[],
): string {
  if (kind === "engine" || kind === "set") return kind;
  return `${kind} ${cylinders.map((c) => engine.names[c]).join("+")}`;
}

/** The kind that a place id begins with. */
export function placeKind(id: string): string {
  return id.split(" ", 1)[0] ?? id;
}

export function isDrawn(id: string, look: Look): boolean {
  return look.active.has(id) || (look.places.get(id) ?? 0) >= WORTH_DRAWING;
}

/** Widths in units of the drawing: as a line of a technical drawing, and when surely at fault. */
export interface Width {
  readonly thin: number;
  readonly thick: number;
}

/** The width of a mark at a chance of 0..1. Half the way is gone at one in four. */
function widthAt({ thin, thick }: Width, chance: number): number {
  return Math.round((thin + (thick - thin) * Math.sqrt(Math.min(1, chance))) * 100) / 100;
}

interface MarkProps {
  readonly id: string;
  readonly look: Look;
  readonly width: Width;
  /** The shape, drawn with a given class and width; called again for its halo and its finger room. */
  readonly draw: (className: string, strokeWidth: number) => ComponentChildren;
}

/** One place on a drawing. */
export function Mark({ id, look, width, draw }: MarkProps): VNode {
  const chance = look.places.get(id) ?? 0;
  const stroke = widthAt(width, chance);
  const isActive = look.active.has(id);
  const state = chance >= SUSPECT || isActive ? "mark is-suspect" : "mark";
  return (
    <g data-place={id}>
      {isActive && draw("halo", stroke + 12)}
      {draw(state, stroke)}
      {draw("touch", Math.max(18, stroke))}
    </g>
  );
}

/** The name of a cylinder by its index. */
export function nameOf(engine: Engine, cylinder: number): CylinderName {
  return engine.names[cylinder] ?? cylinder;
}
