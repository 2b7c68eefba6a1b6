// The firing end of a plug as lines and points: what its look, its damage and its gap do to the shape.
// Drawn from the side, firing end up: shell below, porcelain nose, centre pin, strap over it.
import type { Point } from "./geometry.ts";

export const PLUG_LOOKS = [
  "tan",
  "pale",
  "dry-black",
  "wet-petrol",
  "wet-oil",
  "wet",
  "crust",
  "steam-clean",
] as const;
export type PlugLook = (typeof PLUG_LOOKS)[number];

export const PLUG_DAMAGES = ["none", "crack", "track", "worn-round", "bent"] as const;
export type PlugDamage = (typeof PLUG_DAMAGES)[number];

export const PLUG_GAPS = ["closed", "in-limit", "wide", "very-wide"] as const;
export type PlugGap = (typeof PLUG_GAPS)[number];

/** Left, top, width and height of the drawing. */
export const PLUG_BOX = { x: 0, y: -8, width: 120, height: 150 } as const;

/** Gap between pin and strap in units of the drawing; wider than true, so that it can be told apart. */
const GAP: Readonly<Record<PlugGap, number>> = {
  closed: 1.5,
  "in-limit": 9,
  wide: 15,
  "very-wide": 22,
};
const PIN = { left: 55, right: 65, top: 34, foot: 50 } as const;
const STRAP = { tip: 50, outer: 96, inner: 85, thick: 11 } as const;
const RIM_Y = 92;
/** Tip of a bent strap below where it should be. */
const BENT = 12;

export interface PlugShape {
  readonly shell: string;
  readonly threads: string;
  readonly nose: string;
  readonly pin: string;
  readonly strap: string;
  /** Where the edges were when the plug was new; empty unless worn round. */
  readonly worn: string;
  /** From the pin to the strap, beside the gap. */
  readonly gapLine: readonly [Point, Point];
}

export function plugShape(damage: PlugDamage, gap: PlugGap): PlugShape {
  const isRound = damage === "worn-round";
  const under = PIN.top - GAP[gap];
  return {
    shell: `M22 142V98L28 ${RIM_Y}H92L98 98V142`,
    threads: [106, 116, 126, 136].map((y) => `M22 ${y}L98 ${y + 5}`).join(""),
    nose: `M40 ${RIM_Y}L50 54Q51 48 56 48H64Q69 48 70 54L80 ${RIM_Y}Z`,
    pin: isRound
      ? `M55 ${PIN.foot}V44Q55 37 60 37Q65 37 65 44V${PIN.foot}Z`
      : `M55 ${PIN.foot}V${PIN.top}H65V${PIN.foot}Z`,
    strap: strapPath(under, damage),
    worn: isRound ? `M55 43V${PIN.top}H65V43M50 ${under - 6}V${under}H70` : "",
    gapLine: [
      { x: 44, y: PIN.top },
      { x: 44, y: under },
    ],
  };
}

/** The strap from the rim up, over, and to its tip; `under` is the height of its lower face. */
function strapPath(under: number, damage: PlugDamage): string {
  const top = under - STRAP.thick;
  const up = `M${STRAP.outer} ${RIM_Y}V${top + 13}Q${STRAP.outer} ${top} 83 ${top}`;
  const down = `Q${STRAP.inner} ${under} ${STRAP.inner} ${under + 6}V${RIM_Y}Z`;
  if (damage === "bent") {
    return `${up}L49 ${top + BENT - 6}L46 ${under + BENT - 8}L80 ${under}${down}`;
  }
  if (damage === "worn-round") {
    const hollow = `Q50 ${under - 4} 54 ${under - 4}Q62 ${under - 6} 71 ${under - 1}L80 ${under}`;
    return `${up}H57Q50 ${top} 50 ${top + 5}${hollow}${down}`;
  }
  return `${up}H${STRAP.tip}V${under}H80${down}`;
}

/** A jagged line down the porcelain. */
export const CRACK = "M57 49L63 57L56 64L66 72L59 79L67 91";
/** A piece that broke off the edge of the porcelain. */
export const CHIP = "M69.5 52L72 62L66 57Z";
/** The way of a stray spark over the porcelain, with its side shoots. */
export const TRACK = "M63 49C57 56 66 61 60 68S66 79 58 91M61 60L68 64M60 69L52 74M63 77L71 82";

/** Points scattered evenly but without rows over the nose, the pin and the strap; always the same. */
export function sootDots(gap: PlugGap): readonly Point[] {
  const under = PIN.top - GAP[gap];
  const onNose = scatter(60, (u, v) => {
    const y = 50 + 44 * v;
    const half = 10 + 12 * v;
    return { x: 60 + (2 * u - 1) * half, y };
  });
  const onStrap = scatter(40, (u, v) => ({ x: 51 + 40 * u, y: under - 10 + 9 * v }));
  const onRim = scatter(44, (u, v) => ({ x: 27 + 66 * u, y: 93.5 + 9 * v }));
  return [...onNose, ...onStrap, ...onRim];
}

/** Blisters of the porcelain: places and sizes chosen so that none looks like a row. */
export const BLISTERS: readonly (Point & { readonly r: number })[] = [
  { x: 55, y: 57, r: 2.2 },
  { x: 65, y: 61, r: 3 },
  { x: 57, y: 68, r: 3.4 },
  { x: 69, y: 74, r: 2.4 },
  { x: 60, y: 79, r: 2.6 },
  { x: 50, y: 80, r: 3 },
  { x: 68, y: 85, r: 3.2 },
  { x: 54, y: 89, r: 2.2 },
];

/** Metal that melted and froze again in beads on the edge of the pin. */
export const BEADS: readonly Point[] = [
  { x: 55, y: 35 },
  { x: 60, y: 33.5 },
  { x: 65, y: 36 },
];

/** A drop hanging from a point, as a path; `size` is its width. */
export function drop({ x, y }: Point, size: number): string {
  const [half, long] = [size / 2, size * 1.7];
  return `M${x} ${y}C${x + half * 0.4} ${y + long * 0.4} ${x + half} ${y + long * 0.6} ${x + half} ${y + long * 0.8}A${half} ${half} 0 1 1 ${x - half} ${y + long * 0.8}C${x - half} ${y + long * 0.6} ${x - half * 0.4} ${y + long * 0.4} ${x} ${y}Z`;
}

/** Where drops of petrol hang. */
export const DROPS: readonly (Point & { readonly size: number })[] = [
  { x: 47, y: 62, size: 5 },
  { x: 60, y: 70, size: 5.5 },
  { x: 72, y: 66, size: 6 },
  { x: 57, y: 54, size: 4 },
  { x: 36, y: 94, size: 6.5 },
  { x: 82, y: 95, size: 6 },
];

/** Vapour of petrol, rising beside the nose. */
export const VAPOUR = "M20 78c-5-6 5-10 0-16s5-10 0-16M31 70c-4-5 4-9 0-14s4-9 0-14";

/** A question mark beside a plug that is wet with nobody knows what. */
export const ASKED = "M21 58C21 49 34 49 34 57C34 63 27.5 62 27.5 69M27.5 75V76";

/** Oil that runs over the rim and down the threads in thick tongues. */
export const OIL_TONGUES =
  "M26 92V106Q26 112 31 112Q36 112 36 106V98Q39 95 42 98V119Q42 126 48 126Q54 126 54 119V99Q58 95 62 99V108Q62 114 67 114Q72 114 72 108V98Q76 95 79 99V116Q79 122 84 122Q89 122 89 116V92Z";
/** Light on the oil. */
export const OIL_GLEAM = "M51 60L46 84M30 96V104M47 102V117M83 100V113M66 58L69 72";

/** Lumps of crust along the sides of the nose and on the strap. */
export function crustLumps(gap: PlugGap): readonly (Point & { readonly r: number })[] {
  const under = PIN.top - GAP[gap];
  const sides = [54, 62, 71, 80, 88].flatMap((y, i) => {
    const half = 9 + ((y - 50) / 42) * 11;
    return [
      { x: 60 - half, y, r: 4 + (i % 2) },
      { x: 60 + half, y: y + 2, r: 3.6 + ((i + 1) % 2) },
    ];
  });
  const front = [
    { x: 60, y: 58, r: 5 },
    { x: 56, y: 69, r: 5.5 },
    { x: 66, y: 76, r: 5.5 },
    { x: 58, y: 85, r: 6 },
  ];
  const strap = [56, 66, 77].map((x, i) => ({ x, y: under - 10, r: 3.6 + (i % 2) }));
  return [...sides, ...front, ...strap];
}

/** A gleam of four points, as a path. */
export function gleam({ x, y }: Point, size: number): string {
  const waist = size * 0.18;
  return `M${x} ${y - size}L${x + waist} ${y - waist}L${x + size} ${y}L${x + waist} ${y + waist}L${x} ${y + size}L${x - waist} ${y + waist}L${x - size} ${y}L${x - waist} ${y - waist}Z`;
}

export const GLEAMS: readonly (Point & { readonly size: number })[] = [
  { x: 36, y: 56, size: 9 },
  { x: 26, y: 76, size: 6 },
  { x: 73, y: 44, size: 6 },
];

/** Points of the plane's least regular lattice, mapped to a shape by its share of width and height. */
function scatter(count: number, place: (u: number, v: number) => Point): readonly Point[] {
  const [stepU, stepV] = [0.7548776662466927, 0.5698402909980532];
  return Array.from({ length: count }, (_, i) => {
    const { x, y } = place((0.5 + stepU * (i + 1)) % 1, (0.5 + stepV * (i + 1)) % 1);
    return { x: Math.round(x * 10) / 10, y: Math.round(y * 10) / 10 };
  });
}
