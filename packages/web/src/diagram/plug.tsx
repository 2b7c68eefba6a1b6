// A plug as it came out, close up at its firing end. Shape and pattern tell the look as well as colour,
// so that it reads in both schemes, on paper and by eyes that see no colours.
import type { VNode } from "preact";
import { PLUG } from "../text/en-plug.ts";
import {
  ASKED,
  BEADS,
  BLISTERS,
  CHIP,
  CRACK,
  crustLumps,
  DROPS,
  drop,
  GLEAMS,
  gleam,
  OIL_GLEAM,
  OIL_TONGUES,
  PLUG_BOX,
  type PlugDamage,
  type PlugGap,
  type PlugLook,
  plugShape,
  sootDots,
  TRACK,
  VAPOUR,
} from "./plug-geometry.ts";
import "../style/plug.css";

/** What is known of a plug; what was not looked at is left out and drawn as new, in outline. */
export interface PlugState {
  readonly look?: PlugLook | undefined;
  readonly damage?: PlugDamage | undefined;
  readonly gap?: PlugGap | undefined;
}

interface PlugDrawingProps {
  readonly of: PlugState;
  /** True where words beside it say the same. */
  readonly isDecoration?: boolean;
}

export function PlugDrawing({ of, isDecoration = false }: PlugDrawingProps): VNode {
  const { look, damage = "none", gap = "in-limit" } = of;
  const shape = plugShape(damage, gap);
  const { x, y, width, height } = PLUG_BOX;
  return (
    <svg
      class={`plug-drawing is-${look ?? "unseen"}`}
      viewBox={`${x} ${y} ${width} ${height}`}
      role="img"
      aria-label={sayPlug(of)}
      aria-hidden={isDecoration}
    >
      <path class="plug-shell" d={shape.shell} />
      <path class="plug-thread" d={shape.threads} />
      <path class="plug-nose" d={shape.nose} />
      <path class="plug-metal" d={shape.pin} />
      <path class="plug-metal" d={shape.strap} />
      {look && <Deposit look={look} gap={gap} />}
      {shape.worn && <path class="plug-was" d={shape.worn} />}
      {damage === "crack" && <Scar kind="plug-crack" d={CRACK + CHIP} />}
      {damage === "track" && <Scar kind="plug-track" d={TRACK} />}
      {of.gap && <GapLine line={shape.gapLine} />}
    </svg>
  );
}

/** The look in words, for who does not see the drawing. */
export function sayPlug({ look, damage, gap }: PlugState): string {
  const parts = [
    look && PLUG.looks[look].drawn,
    damage && PLUG.damages[damage],
    gap && PLUG.gaps[gap],
  ].filter((part) => part !== undefined);
  return parts.length > 0 ? parts.join(" ") : PLUG.unseen;
}

function Deposit({ look, gap }: { look: PlugLook; gap: PlugGap }): VNode {
  switch (look) {
    case "tan":
      return (
        <path class="plug-dust" d="M52 62h5M62 66h6M49 73h6M60 76h7M47 84h7M63 86h9M55 90h6" />
      );
    case "pale":
      return (
        <>
          {BLISTERS.map(({ x, y, r }) => (
            <circle key={`${x} ${y}`} class="plug-blister" cx={x} cy={y} r={r} />
          ))}
          {BEADS.map(({ x, y }) => (
            <circle key={x} class="plug-bead" cx={x} cy={y} r={2.6} />
          ))}
        </>
      );
    case "dry-black":
      return (
        <>
          {sootDots(gap).map(({ x, y }) => (
            <circle key={`${x} ${y}`} class="plug-dot" cx={x} cy={y} r={1.3} />
          ))}
        </>
      );
    case "wet-petrol":
      return (
        <>
          <path class="plug-vapour" d={VAPOUR} />
          <path class="plug-drop" d={DROPS.map((at) => drop(at, at.size)).join("")} />
        </>
      );
    case "wet":
      return (
        <>
          <path class="plug-asked" d={ASKED} />
          <path class="plug-drop" d={DROPS.map((at) => drop(at, at.size)).join("")} />
        </>
      );
    case "wet-oil":
      return (
        <>
          <path class="plug-oil" d={OIL_TONGUES} />
          <path class="plug-gleam-line" d={OIL_GLEAM} />
        </>
      );
    case "crust":
      return (
        <>
          {crustLumps(gap).map(({ x, y, r }) => (
            <circle key={`${x} ${y}`} class="plug-lump" cx={x} cy={y} r={r} />
          ))}
        </>
      );
    case "steam-clean":
      return <path class="plug-gleam" d={GLEAMS.map((at) => gleam(at, at.size)).join("")} />;
  }
}

/** A dark line with a light edge, so that it shows on soot as well as on porcelain. */
function Scar({ kind, d }: { kind: string; d: string }): VNode {
  return (
    <>
      <path class="plug-casing" d={d} />
      <path class={kind} d={d} />
    </>
  );
}

/** Two ticks and the way between them. */
function GapLine({ line: [from, to] }: { line: ReturnType<typeof plugShape>["gapLine"] }): VNode {
  const tick = ({ x, y }: { x: number; y: number }): string => `M${x - 5} ${y}H${x + 5}`;
  return <path class="plug-gap" d={`${tick(from)}${tick(to)}M${from.x} ${from.y}V${to.y}`} />;
}
