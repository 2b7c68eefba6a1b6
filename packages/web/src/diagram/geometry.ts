// Where everything on the firing dial lies: crank angles to points, no markup.
// One full cycle of 720 crank degrees is one turn of the dial, 0° on top, clockwise, so companions
// (360° apart) face one another across the centre.
import type { Engine } from "@half-order/core";

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Half the width of the square that the dial is drawn in, in its own units. */
export const DIAL_HALF = 206;
export const DIAL_BOX = `${-DIAL_HALF} ${-DIAL_HALF} ${2 * DIAL_HALF} ${2 * DIAL_HALF}`;

export const RADIUS = {
  /** Ring of degrees: the whole engine. */
  scale: 174,
  /** Where ties between neighbours run, between the discs and the ring of degrees. */
  tie: 165,
  /** Circle through the discs: a set of like parts. */
  pitch: 132,
  /** Ring of the plug-in connectors. */
  hub: 46,
  /** End of the coils that lie inside the hub. */
  coil: 35,
  label: 190,
} as const;

/** Circle through the discs while they are asked for: further out, so that fingers find them. */
export const PITCH_ASKED = 168;

const DISC_LARGEST = 24;
/** Discs closer together than this are set on two circles. */
const CHORD_SMALLEST = 34;
const INNER_STEP = 46;
const CYCLE_DEG = 720;

export interface Seat {
  /** Crank degrees at which the cylinder fires. */
  readonly angle: number;
  readonly at: Point;
  /** Distance of the disc from the centre. */
  readonly reach: number;
}

/** The point at a crank angle (degrees of 720) and a distance from the centre. */
export function pointAt(angle: number, radius: number): Point {
  const turn = (angle / CYCLE_DEG) * 2 * Math.PI;
  return { x: round(radius * Math.sin(turn)), y: round(-radius * Math.cos(turn)) };
}

/**
 * Seats by cylinder, on a circle of the given radius. Firings too close for two discs side by side
 * are set on an inner circle, every second one.
 */
export function seats(angles: readonly number[], pitch: number = RADIUS.pitch): readonly Seat[] {
  const byAngle = angles.map((_, c) => c).sort((a, b) => (angles[a] ?? 0) - (angles[b] ?? 0));
  const reach = new Array<number>(angles.length).fill(pitch);
  byAngle.forEach((cylinder, i) => {
    const before = byAngle[(i + byAngle.length - 1) % byAngle.length] ?? cylinder;
    const isClose =
      before !== cylinder &&
      chord(gap(angles[before] ?? 0, angles[cylinder] ?? 0), pitch) < CHORD_SMALLEST;
    if (isClose && reach[before] === pitch) reach[cylinder] = pitch - INNER_STEP;
  });
  return angles.map((angle, c) => {
    const radius = reach[c] ?? pitch;
    return { angle, reach: radius, at: pointAt(angle, radius) };
  });
}

/** The largest radius at which no two of the discs touch. */
export function discRadius(all: readonly Seat[]): number {
  const distances = all.flatMap(({ at: a }, i) =>
    all.slice(i + 1).map(({ at: b }) => Math.hypot(a.x - b.x, a.y - b.y)),
  );
  return round(Math.min(DISC_LARGEST, ...distances.map((distance) => distance * 0.42)));
}

/** Crank degrees from one firing to another, the shorter way round, 0..360. */
export function gap(a: number, b: number): number {
  const apart = Math.abs(a - b) % CYCLE_DEG;
  return Math.min(apart, CYCLE_DEG - apart);
}

/** How a coil lies on the dial. */
export type CoilLie =
  /** Inside the hub, from one leg to the other; through the centre only for exact companions. */
  | { readonly kind: "bar"; readonly from: Point; readonly to: Point }
  /** In the centre: one coil for all, behind a distributor. */
  | { readonly kind: "centre" }
  /** Beside the discs of the cylinders that carry it, across the leg. */
  | { readonly kind: "cross"; readonly ends: readonly (readonly [Point, Point])[] };

/** Where the coil of a firing group lies. */
export function coilLie(engine: Engine, group: readonly number[], disc: number): CoilLie {
  if (engine.ignition === "distributor") return { kind: "centre" };
  if (engine.ignition === "pack" || engine.ignition === "rail") {
    const [a, b] = group.map((c) => pointAt(engine.angles[c] ?? 0, RADIUS.coil));
    return { kind: "bar", from: a ?? CENTRE, to: b ?? CENTRE };
  }
  const carriers = group.filter((c) => !engine.hasLead[c]);
  return { kind: "cross", ends: carriers.map((c) => across(engine.angles[c] ?? 0, disc)) };
}

export const CENTRE: Point = { x: 0, y: 0 };

/** A short stroke across a leg, just inside its disc. */
function across(angle: number, disc: number): readonly [Point, Point] {
  const middle = pointAt(angle, RADIUS.pitch - disc - 10);
  const turn = (angle / CYCLE_DEG) * 2 * Math.PI;
  const side = { x: Math.cos(turn) * 11, y: Math.sin(turn) * 11 };
  return [
    { x: round(middle.x - side.x), y: round(middle.y - side.y) },
    { x: round(middle.x + side.x), y: round(middle.y + side.y) },
  ];
}

/**
 * The path from the coil to the plug of one cylinder. A hybrid's cable starts at the coil on the
 * companion's disc and crosses the dial; all others start at the hub.
 */
export function legLine(
  engine: Engine,
  cylinder: number,
  seat: Seat,
  disc: number,
): readonly [Point, Point] {
  const end = pointAt(seat.angle, seat.reach - disc);
  const hub = pointAt(seat.angle, RADIUS.hub);
  if (engine.ignition !== "hybrid" || !engine.hasLead[cylinder]) return [hub, end];
  const group = engine.groups[engine.groupOf[cylinder] ?? -1] ?? [];
  const carrier = group.find((c) => !engine.hasLead[c]);
  if (carrier === undefined) return [hub, end];
  return [pointAt(engine.angles[carrier] ?? 0, RADIUS.pitch - disc - 10), end];
}

/** An arc of a circle round the centre, centred on a crank angle, as an SVG path. */
export function arc(angle: number, halfWidth: number, radius: number): string {
  const from = pointAt(angle - halfWidth, radius);
  const to = pointAt(angle + halfWidth, radius);
  const isLarge = halfWidth > CYCLE_DEG / 4 ? 1 : 0;
  return `M${from.x} ${from.y}A${radius} ${radius} 0 ${isLarge} 1 ${to.x} ${to.y}`;
}

/** A tie outside the discs from one neighbour to the other, the shorter way round. */
export function tie(a: Seat, b: Seat, disc: number): string {
  const ahead = (((b.angle - a.angle) % CYCLE_DEG) + CYCLE_DEG) % CYCLE_DEG;
  const [from, to] = ahead <= CYCLE_DEG / 2 ? [a, b] : [b, a];
  const [foot, other] = [from, to].map((seat) => pointAt(seat.angle, seat.reach + disc));
  const [start, end] = [from, to].map((seat) => pointAt(seat.angle, RADIUS.tie));
  const r = RADIUS.tie;
  return (
    `M${foot?.x} ${foot?.y}L${start?.x} ${start?.y}` +
    `A${r} ${r} 0 0 1 ${end?.x} ${end?.y}L${other?.x} ${other?.y}`
  );
}

/** The part of a disc that is full up to a share of its height, as an SVG path. */
export function filled({ x, y }: Point, radius: number, share: number): string {
  const level = Math.min(1, Math.max(0, share));
  if (level === 0) return "";
  if (level === 1) {
    return `M${x - radius} ${y}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0`;
  }
  const depth = radius - 2 * radius * level;
  const half = round(Math.sqrt(radius * radius - depth * depth));
  const isLarge = level > 0.5 ? 1 : 0;
  const height = round(y + depth);
  return `M${round(x - half)} ${height}A${radius} ${radius} 0 ${isLarge} 0 ${round(x + half)} ${height}Z`;
}

/** Crank angles that get a number on the ring: every firing, or the quarters when there are many. */
export function labelledAngles(angles: readonly number[]): readonly number[] {
  const firings = [...new Set(angles.map((angle) => Math.round(angle)))].sort((a, b) => a - b);
  const isRoomy = firings.every((angle, i) => gap(angle, firings[i - 1] ?? angle + 360) >= 60);
  return firings.length <= 8 && isRoomy ? firings : [0, 180, 360, 540];
}

function chord(degrees: number, radius: number): number {
  return 2 * radius * Math.sin(((degrees / CYCLE_DEG) * 2 * Math.PI) / 2);
}

function round(value: number): number {
  return Math.round(value * 100) / 100 || 0;
}
