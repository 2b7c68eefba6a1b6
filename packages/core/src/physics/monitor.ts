// When does a control unit call a misfire, and which code does it store? Arithmetic of the misfire monitor
// as California's rule has it (13 CCR 1968.2 (e)(3), text of 2007).

/** A stretch over which misfires are counted. */
export interface MonitorWindow {
  readonly revolutions: number;
  /** The maker need not set its limit below this share of firing events. */
  readonly floor: number;
}

/** Heat that can damage the catalyst; the floor of 5 % is from memory. */
export const CATALYST_WINDOW: MonitorWindow = { revolutions: 200, floor: 0.05 };
/** Excess emissions; the floor of 1 % is from memory. */
export const EMISSION_WINDOW: MonitorWindow = { revolutions: 1000, floor: 0.01 };

/** More of all misfires than this in one cylinder: its own code alone will do, (e)(3.1.3). */
export const ONE_CYLINDER_SHARE = 0.9;
/** Two cylinders that each have more than this: the code for several is a must, (e)(3.1.3). */
export const SEVERAL_SHARE = 0.1;

/** The code for several or random cylinders. */
export const SEVERAL_CODE = "P0300";
const LAST_CODED_CYLINDER = 12;

/** Firing events of a four-stroke engine in so many revolutions. */
export function firingEvents(cylinders: number, revolutions: number): number {
  return (cylinders * revolutions) / 2;
}

/** Seconds that so many revolutions take. */
export function windowSeconds(revolutions: number, rpm: number): number {
  return (revolutions * 60) / rpm;
}

/** Share of a window's firing events that missed, 0..1 unless more are counted than there were. */
export function missShare(misses: number, cylinders: number, window: MonitorWindow): number {
  return misses / firingEvents(cylinders, window.revolutions);
}

/** Misses in a window at the lowest limit a maker may be asked for. */
export function floorMisses(cylinders: number, window: MonitorWindow): number {
  return window.floor * firingEvents(cylinders, window.revolutions);
}

/** True when a window has more misses than a limit, a share; the window's floor unless given. */
export function exceedsLimit(
  misses: number,
  cylinders: number,
  window: MonitorWindow,
  limit: number = window.floor,
): boolean {
  return missShare(misses, cylinders, window) > limit;
}

/** Share of all firing events lost when so many cylinders never fire. */
export function deadShare(dead: number, cylinders: number): number {
  return dead / cylinders;
}

/** Code of a cylinder by its number from 1, as the control unit counts; `undefined` above 12. */
export function cylinderCode(cylinderNumber: number): string | undefined {
  if (!Number.isInteger(cylinderNumber)) return undefined;
  if (cylinderNumber < 1 || cylinderNumber > LAST_CODED_CYLINDER) return undefined;
  return `P03${String(cylinderNumber).padStart(2, "0")}`;
}

/** Which codes a set of counts asks for. */
export interface MonitorVerdict {
  /**
   * - `none`: nothing missed
   * - `one`: nearly all in one cylinder, its code alone will do
   * - `several`: the code for several cylinders is a must; single codes may stand beside it
   */
  readonly rule: "none" | "one" | "several";
  /** What must be stored. */
  readonly codes: readonly string[];
  /** What may be stored beside it. */
  readonly optional: readonly string[];
  /** Indices of cylinders with over a tenth of all misses, the most first. */
  readonly main: readonly number[];
}

/**
 * The 90/10 rule on misfire counts by cylinder, index 0 being cylinder 1. A cylinder with no code of its
 * own is covered by the code for several.
 */
export function misfireCodes(counts: readonly number[]): MonitorVerdict {
  const total = counts.reduce((a, b) => a + b, 0);
  if (total <= 0) return { rule: "none", codes: [], optional: [], main: [] };
  const share = (c: number): number => (counts[c] ?? 0) / total;
  const main = [...counts.keys()]
    .filter((c) => share(c) > SEVERAL_SHARE)
    .sort((a, b) => share(b) - share(a));
  const own = main.flatMap((c) => cylinderCode(c + 1) ?? []);
  const [first] = main;
  const isOne = first !== undefined && share(first) > ONE_CYLINDER_SHARE && own.length === 1;
  return isOne
    ? { rule: "one", codes: own, optional: [SEVERAL_CODE], main }
    : { rule: "several", codes: [SEVERAL_CODE], optional: own, main };
}
