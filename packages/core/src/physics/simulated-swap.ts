// What does an exchange of parts show? The part really changes its place, and the car is driven again.
import { drive as driveAgain, type SimulatedDrive } from "./simulated-drive.ts";
import type { SimulatedControl, SimulatedEngine, SimulatedPath } from "./simulated-engine.ts";
import { lost } from "./simulated-sense.ts";
import type { CylinderLook, EngineLook, SimulatedState } from "./simulated-state.ts";

export const CYLINDER_SWAPS: Readonly<Record<string, CylinderLook>> = {
  "swap.plug": (state, c) => swapped(state, c, "plugs"),
  "swap.boot": (state, c) => swapped(state, c, "boots"),
  "swap.lead": (state, c) => swapped(state, c, "leads"),
  "swap.injector": (state, c) => swapped(state, c, "injectors"),
  "swap.coil": (state, c) => swappedCoil(state, c),
  "swap.towers": (state, c) => swappedTowers(state, c),
};

export const ENGINE_SWAPS: Readonly<Record<string, EngineLook>> = {
  "swap.rail": (state) => otherRail(state),
};

type Swappable = "plugs" | "boots" | "leads" | "injectors";

/** Exchanges the part with that of a cylinder on another coil and drives again. */
function swapped({ parts, drive, random }: SimulatedState, c: number, kind: Swappable): string {
  const other = parts.engine.names.findIndex(
    (_, d) =>
      d !== c &&
      (parts.engine.groups.length === 1 || parts.engine.groupOf[d] !== parts.engine.groupOf[c]),
  );
  const list = exchanged<unknown>(parts[kind], c, other);
  const after = driveAgain({ ...parts, [kind]: list } as SimulatedEngine, random);
  return hasMoved(drive, after, c, other) ? "moved" : "stayed";
}

function swappedCoil({ parts, drive, random }: SimulatedState, c: number): string | undefined {
  const g = parts.engine.groupOf[c] ?? 0;
  const h = parts.coils.findIndex((_, each) => each !== g);
  if (h < 0) return undefined;
  const coils = [...parts.coils];
  [coils[g], coils[h]] = [coils[h] as (typeof coils)[0], coils[g] as (typeof coils)[0]];
  const coilLegs = [...parts.coilLegs];
  const [from = [], to = []] = [parts.engine.groups[g], parts.engine.groups[h]];
  from.forEach((a, i) => {
    const b = to[i];
    if (b === undefined) return;
    [coilLegs[a], coilLegs[b]] = [coilLegs[b] as SimulatedPath, coilLegs[a] as SimulatedPath];
  });
  const after = driveAgain({ ...parts, coils, coilLegs }, random);
  return hasMoved(drive, after, from[0] ?? c, to[0] ?? 0) ||
    hasMoved(drive, after, from[1] ?? c, to[1] ?? 0)
    ? "moved"
    : "stayed";
}

function hasMoved(
  before: SimulatedDrive,
  after: SimulatedDrive,
  from: number,
  to: number,
): boolean {
  const sum = (of: SimulatedDrive, c: number): number =>
    Object.values(of).reduce((total, { share }) => total + (share[c] ?? 0), 0);
  const had = sum(before, from);
  return sum(after, from) < 0.5 * had && sum(after, to) > sum(before, to) + 0.3 * had;
}

/** The two cables of one double coil the other way round: what sits in the coil then fires the companion. */
function swappedTowers({ parts, drive, random }: SimulatedState, c: number): string | undefined {
  const coil = parts.engine.groups[parts.engine.groupOf[c] ?? 0] ?? [];
  const mate = coil.find((each) => each !== c);
  if (mate === undefined) return undefined;
  const after = driveAgain(
    {
      ...parts,
      towers: exchanged(parts.towers, c, mate),
      coilLegs: exchanged(parts.coilLegs, c, mate),
    },
    random,
  );
  return hasMoved(drive, after, c, mate) ? "moved" : "stayed";
}

function exchanged<Part>(list: readonly Part[], a: number, b: number): Part[] {
  return list.map((part, i) => (list[i === a ? b : i === b ? a : i] ?? part) as Part);
}

/** Gone when no more than this part of the lost strokes is left. */
const GONE = 0.2;

/** A sound part with all coils in it; a rail brings its boots. Its connector is pressed home with it. */
function otherRail({ parts, drive, random }: SimulatedState): string {
  const sound = (): SimulatedPath => ({ arcV: Infinity, wetShare: 1, breakV: 0 });
  const isRail = parts.engine.ignition === "rail";
  const after = driveAgain(
    {
      ...parts,
      coils: parts.coils.map(() => ({ strength: 1, offCold: 0, offHot: 0 })),
      coilLegs: parts.coilLegs.map(sound),
      towers: parts.towers.map(sound),
      boots: isRail ? parts.boots.map(sound) : parts.boots,
      controls: parts.controls.map(pressedHome),
      feeds: parts.feeds.map(pressedHome),
    },
    random,
  );
  return total(after) < GONE * total(drive) ? "cured" : "stayed";
}

function pressedHome(control: SimulatedControl): SimulatedControl {
  return control.at === "pin" ? { still: 0, shaken: 0 } : control;
}

function total(drive: SimulatedDrive): number {
  return Object.values(drive).reduce((sum, stretch) => sum + lost(stretch), 0);
}
