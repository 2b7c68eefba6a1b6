// A place as a small sign beside its name: the dial with that one mark drawn.
import type { Engine } from "@half-order/core";
import type { VNode } from "preact";
import { useMemo } from "preact/hooks";
import { arc, coilLie, pointAt, seats, tie } from "./geometry.ts";
import { placeKind } from "./mark.tsx";

const BOX = "-190 -190 380 380";
const DISC = 30;
const HUB = 62;
const RING = 172;

export interface GlyphProps {
  readonly engine: Engine;
  readonly place: string;
  readonly cylinders: readonly (string | number)[];
}

/** Made once for a place: most rows of a ranking are rows of the one before. */
export function Glyph(props: GlyphProps): VNode {
  return useMemo(() => drawGlyph(props), [props.engine, props.place, props.cylinders.join()]);
}

function drawGlyph({ engine, place, cylinders }: GlyphProps): VNode {
  const own = cylinders.map((name) => engine.names.indexOf(name)).filter((c) => c >= 0);
  const places = seats(engine.angles);
  return (
    <svg class="glyph" viewBox={BOX} aria-hidden="true">
      <circle class="line" r={RING} />
      {places.map(({ at }, c) => (
        <circle key={engine.names[c]} class="dot" cx={at.x} cy={at.y} r={14} />
      ))}
      <path class="sign" d={signOf(engine, placeKind(place), own)} />
    </svg>
  );
}

/** The path of the sign of a place. */
function signOf(engine: Engine, kind: string, own: readonly number[]): string {
  const all = seats(engine.angles);
  const angles = own.map((c) => engine.angles[c] ?? 0);
  const [a, b] = own.map((c) => all[c]);
  // Wider than on the dial, or it would be a speck.
  const crossing = (c: number): string => {
    const angle = engine.angles[c] ?? 0;
    const [middle, along] = [pointAt(angle, 88), pointAt(angle + 180, 46)];
    return stroke(
      { x: middle.x - along.x, y: middle.y - along.y },
      { x: middle.x + along.x, y: middle.y + along.y },
    );
  };
  switch (kind) {
    case "leg":
    case "lead":
      return angles.map((angle) => stroke(pointAt(angle, 20), pointAt(angle, 132))).join("");
    case "coil": {
      const lie = coilLie(engine, own, DISC);
      if (lie.kind === "centre") return circle(26);
      if (lie.kind === "cross")
        return own
          .filter((c) => !engine.hasLead[c])
          .map(crossing)
          .join("");
      return angles.map((angle) => `M0 0L${pointAt(angle, 84).x} ${pointAt(angle, 84).y}`).join("");
    }
    case "connector":
      return own.length === engine.names.length
        ? circle(HUB)
        : angles.map((angle) => arc(angle, 40, HUB)).join("");
    case "cylinder":
      return own.map((c) => circle(DISC, all[c]?.at)).join("");
    case "neighbours":
      return a && b ? tie(a, b, 0) : "";
    case "bank":
      return angles.map((angle) => arc(angle, 30, RING)).join("");
    case "set":
      return circle(132);
    default:
      return circle(RING);
  }
}

function stroke(from: { x: number; y: number }, to: { x: number; y: number }): string {
  return `M${from.x} ${from.y}L${to.x} ${to.y}`;
}

function circle(r: number, { x, y } = { x: 0, y: 0 }): string {
  return `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;
}
