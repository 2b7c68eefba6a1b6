// At which of the 720 crank degrees of a cycle each cylinder fires, and which cylinders can share a
// coil. Companions reach top dead centre together, one on compression and one on exhaust, so they
// fire 360° apart (J. D. Halderman & J. Linder, Automotive Fuel and Emissions Control Systems,
// p. 361).
//
//   order   1  3  4  2  |  1 ...        one full cycle: 720°
//   angle   0 180 360 540               1 and 4 are companions, so are 3 and 2

/** Crank degrees of a full four-stroke cycle. */
export const CYCLE_DEG = 720;
/** Crank degrees from one top dead centre of a cylinder to its next. */
const REVOLUTION_DEG = 360;

/** Rounding errors of added intervals stay far below this; real mismatches far above, degrees. */
const SLACK_DEG = 1e-6;

/**
 * By cylinder: crank degrees in 0..720 at which it fires, the first of the order at 0.
 * `order` holds each of the indices 0..n−1 once; `intervals`, degrees, are even unless given, and
 * are stretched to fill 720, so that rounded ones do not spoil exact companions.
 */
export function firingAngles(
  order: readonly number[],
  intervals?: readonly number[],
): readonly number[] {
  const angles = new Array<number>(order.length).fill(0);
  const total = intervals?.reduce((a, b) => a + b, 0) ?? order.length;
  let sum = 0;
  order.forEach((cylinder, i) => {
    angles[cylinder] = (sum * CYCLE_DEG) / total;
    sum += intervals?.[i] ?? 1;
  });
  return angles;
}

/** How far from 360° apart two firing angles are, degrees in 0..360; 0 for exact companions. */
export function mismatchDeg(angleA: number, angleB: number): number {
  return Math.abs(Math.abs(angleA - angleB) - REVOLUTION_DEG);
}

/** True when two firing angles are a revolution apart, give or take the tolerance in degrees. */
export function areCompanions(angleA: number, angleB: number, toleranceDeg = 0): boolean {
  return mismatchDeg(angleA, angleB) <= toleranceDeg + SLACK_DEG;
}

/**
 * By cylinder: the cylinder that fires 360° away within the tolerance in degrees, or `undefined`.
 * Always mutual. When all cylinders can be paired within the tolerance, they are.
 */
export function companionsOf(
  angles: readonly number[],
  toleranceDeg = 0,
): readonly (number | undefined)[] {
  const isNear = (a: number, b: number | undefined): boolean =>
    b !== undefined && areCompanions(angles[a] ?? 0, angles[b] ?? 0, toleranceDeg);
  const opposite = oppositeOf(angles);
  if (opposite.every((b, a) => isNear(a, b))) return opposite;
  const nearest = angles.map((_, a) => nearestTo(a, angles));
  return nearest.map((b, a) =>
    b !== undefined && nearest[b] === a && isNear(a, b) ? b : undefined,
  );
}

/**
 * The largest mismatch, degrees, left when the cylinders are paired as well as they can be; 0 when
 * all have exact companions. An odd cylinder count leaves one over: then the distance of each
 * cylinder to its nearest partner counts, half an interval when the engine fires evenly.
 */
export function pairingMismatchDeg(angles: readonly number[]): number {
  const isOdd = angles.length % 2 === 1;
  const opposite = oppositeOf(angles);
  const mismatches = angles.map((angle, a) => {
    const others = angles.filter((_, b) => b !== a && (isOdd || b === opposite[a]));
    return Math.min(REVOLUTION_DEG, ...others.map((other) => mismatchDeg(angle, other)));
  });
  const worst = Math.max(...mismatches);
  return worst <= SLACK_DEG ? 0 : worst;
}

/** Why no coil of this engine can serve two cylinders, in words; `undefined` when all pair. */
export function pairingObstacle(angles: readonly number[]): string | undefined {
  const mismatch = pairingMismatchDeg(angles);
  if (mismatch === 0) return undefined;
  if (angles.length === 1) return "A single cylinder has no other to share a coil with.";
  const degrees = sayDegrees(mismatch);
  if (angles.length % 2 === 1) {
    return (
      `${angles.length} cylinders cannot all be paired, because the count is odd, and the nearest ` +
      `firings miss the 360° apart that a shared coil needs by ${degrees}. Each cylinder has a ` +
      "coil of its own, or one coil serves all through a distributor."
    );
  }
  const pattern = shortestPeriod(intervalsOf(angles)).map(sayDegrees).join(", ");
  return (
    `The engine fires unevenly (intervals of ${pattern}), so even the best pairs miss the 360° ` +
    `apart that a shared coil needs by up to ${degrees}: its second spark would come that far ` +
    "from top dead centre of the exhaust stroke. Each cylinder has a coil of its own, or one " +
    "coil serves all through a distributor, unless the maker pairs them anyway."
  );
}

/** The shortest run of numbers that, repeated, gives the whole: 90 150 90 150 gives 90 150. */
export function shortestPeriod(values: readonly number[]): readonly number[] {
  for (let length = 1; length < values.length; length++) {
    if (values.length % length !== 0) continue;
    const repeats = values.every((v, i) => Math.abs(v - (values[i % length] ?? v)) <= SLACK_DEG);
    if (repeats) return values.slice(0, length);
  }
  return values;
}

/** An angle as people read it: at most one decimal, with its sign. */
export function sayDegrees(degrees: number): string {
  return `${Math.round(degrees * 10) / 10}°`;
}

/** Degrees from each firing to the next, from the firing angles by cylinder. */
function intervalsOf(angles: readonly number[]): readonly number[] {
  const sorted = [...angles].sort((a, b) => a - b);
  return sorted.map((angle, i) => (sorted[i + 1] ?? CYCLE_DEG + (sorted[0] ?? 0)) - angle);
}

/**
 * By cylinder: the one half the order away; `undefined` throughout when the count is odd. No other
 * way to pair has a smaller largest mismatch: where two pairs do not cross on the circle of angles,
 * exchanging their ends so that they do never makes the worse of them worse.
 */
function oppositeOf(angles: readonly number[]): readonly (number | undefined)[] {
  const count = angles.length;
  const opposite = new Array<number | undefined>(count).fill(undefined);
  if (count % 2 === 1) return opposite;
  const order = angles.map((_, c) => c).sort((a, b) => (angles[a] ?? 0) - (angles[b] ?? 0));
  order.forEach((cylinder, i) => {
    opposite[cylinder] = order[(i + count / 2) % count];
  });
  return opposite;
}

/** The cylinder whose firing is closest to 360° away; `undefined` when two are equally close. */
function nearestTo(cylinder: number, angles: readonly number[]): number | undefined {
  const own = angles[cylinder] ?? 0;
  const [first, second] = angles
    .map((angle, other) => ({ other, distance: mismatchDeg(own, angle) }))
    .filter(({ other }) => other !== cylinder)
    .sort((a, b) => a.distance - b.distance);
  const isTie = first && second && second.distance - first.distance <= SLACK_DEG;
  return isTie ? undefined : first?.other;
}
