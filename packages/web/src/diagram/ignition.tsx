// How the plugs get their spark, seen from the side as the eye meets it under the cover: what sits where,
// and where there are cables. Four plugs stand for any number.
import type { IgnitionKind } from "@half-order/core";
import type { VNode } from "preact";

const PLUGS = [20, 60, 100, 140];
const TOP = 62;

export function Ignition({ kind }: { kind: IgnitionKind }): VNode {
  return (
    <svg class="ignition" viewBox="0 0 160 100" aria-hidden="true">
      <path class="part" d="M4 84H156" />
      {PLUGS.map((x) => (
        <path key={x} class="plug" d={`M${x} ${TOP}V96M${x - 5} 80H${x + 5}`} />
      ))}
      {DRAW[kind]}
    </svg>
  );
}

/** A cable that hangs from one point to the top of a plug. */
function cable(fromX: number, fromY: number, toX: number): string {
  return `M${fromX} ${fromY}C${fromX} ${fromY - 16} ${toX} ${fromY - 12} ${toX} ${TOP}`;
}

const cap = PLUGS.map((x, i) => cable(62 + 12 * i, 24, x)).join("");
const block = PLUGS.map((x, i) => cable(56 + 16 * i, 26, x)).join("");

/** As in a row of four that fires 1-3-4-2: the plug under the coil, and its companion, which the cable feeds. */
export const HYBRID_PAIRS = [
  [0, 3],
  [2, 1],
] as const;

const at = (plug: number): number => PLUGS[plug] ?? 0;

const DRAW: Readonly<Record<IgnitionKind, VNode>> = {
  distributor: (
    <>
      <path class="cable" d={cap} />
      <path class="solid" d="M54 46A26 26 0 0 1 106 46Z" />
      <path class="part" d="M72 46V58H88V46" />
    </>
  ),
  pack: (
    <>
      <path class="cable" d={block} />
      <path class="solid" d="M44 30H116V52H44Z" />
      {PLUGS.map((x, i) => (
        <path key={x} class="solid" d={`M${51 + 16 * i} 30V22H${61 + 16 * i}V30Z`} />
      ))}
    </>
  ),
  rail: (
    <>
      <path class="solid" d="M8 38H152V54H8Z" />
      <path class="part" d="M152 42H158V50H152" />
      <path class="boot" d={PLUGS.map((x) => `M${x} 54V${TOP + 6}`).join("")} />
    </>
  ),
  hybrid: (
    <>
      <path
        class="cable"
        d={HYBRID_PAIRS.map(([from, to]) => cable(at(from), 36, at(to))).join("")}
      />
      {HYBRID_PAIRS.map(([c]) => (
        <path key={c} class="solid" d={`M${at(c) - 12} 36H${at(c) + 12}V56H${at(c) - 12}Z`} />
      ))}
      <path class="boot" d={HYBRID_PAIRS.map(([c]) => `M${at(c)} 56V${TOP + 6}`).join("")} />
    </>
  ),
  "coil-per-plug": (
    <>
      {PLUGS.map((x) => (
        <path key={x} class="solid" d={`M${x - 10} 34H${x + 10}V50H${x - 10}Z`} />
      ))}
      <path class="boot" d={PLUGS.map((x) => `M${x} 50V${TOP + 6}`).join("")} />
    </>
  ),
};
