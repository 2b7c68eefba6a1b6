// Where the parts of a double coil's circuit lie on its drawing: the winding on top, a leg on either side, the
// head below.

export const CIRCUIT = { width: 360, height: 236, top: 34, head: 196 } as const;

/** Across: the leg of the first cylinder of the coil, and of the second. */
export const LEG_X = [84, 276] as const;

const BREAK = { from: 62, to: 84 } as const;
const GAP = { from: 142, to: 164 } as const;
/** How far beside the plug a leak goes. */
const ASIDE = 34;

/** The metal of the head, and the way of the current through it. */
export const HEAD = { x: 20, y: CIRCUIT.head - 5, width: CIRCUIT.width - 40, height: 10 } as const;
export const HEAD_WAY = `M${LEG_X[0]} ${CIRCUIT.head}H${LEG_X[1]}`;

/** Half a turn of the winding after the other. */
export const WINDING = `M132 ${CIRCUIT.top}${"a8 9 0 0 1 16 0".repeat(6)}`;

/** From the winding down to the gap of the plug, and from there to the head; interrupted by a break. */
export function legPath(side: 0 | 1, isBroken: boolean): string {
  const x = LEG_X[side];
  const start = side === 0 ? 132 : 228;
  const down = isBroken ? `V${BREAK.from}M${x} ${BREAK.to}V${GAP.from}` : `V${GAP.from}`;
  return `M${start} ${CIRCUIT.top}H${x}${down}M${x} ${GAP.to}V${CIRCUIT.head}`;
}

/** Past the gap, to the head. */
export function leakPath(side: 0 | 1): string {
  const x = LEG_X[side];
  const aside = x + (side === 0 ? -ASIDE : ASIDE);
  return `M${x} ${GAP.from - 22}L${aside} ${GAP.from - 8}V${CIRCUIT.head}`;
}

/** A spark over the gap of the plug, or over the break in its leg. */
export function sparkPath(side: 0 | 1, over: "gap" | "break"): string {
  const x = LEG_X[side];
  const { from, to } = over === "gap" ? GAP : BREAK;
  const third = (to - from) / 3;
  return `M${x} ${from}l-6 ${third}h12l-6 ${2 * third}`;
}

/** The way of the current beside the plug: down through a positive centre electrode, up through a negative one. */
export function arrowPath(side: 0 | 1, isDown: boolean): string {
  const x = LEG_X[side] + (side === 0 ? 16 : -16);
  const [tail, tip, wing] = isDown ? [GAP.from - 6, GAP.to + 6, -7] : [GAP.to + 6, GAP.from - 6, 7];
  return `M${x} ${tail}V${tip}M${x - 5} ${tip + wing}L${x} ${tip}L${x + 5} ${tip + wing}`;
}
