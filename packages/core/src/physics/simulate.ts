// A made-up engine with one broken part: the independent witness. Knows physics and the construction of the
// engine, and shares no number with the tables that rank faults.
import type { Engine } from "../engine/engine.ts";
import { type Place, places } from "../engine/place.ts";
import type { Random } from "../units/random.ts";
import { SIMULATED_BREAKS, type SimulatedBreak, type SimulatedFaultId } from "./simulated-break.ts";
import { frameOf, observe } from "./simulated-check.ts";
import { storeCodes } from "./simulated-code.ts";
import { drive, type SimulatedDrive } from "./simulated-drive.ts";
import { type SimulatedEngine, soundEngine } from "./simulated-engine.ts";
import { driverFindings, lost, type SimulatedFinding } from "./simulated-sense.ts";
import type { SimulatedState } from "./simulated-state.ts";
import { drawHistory, type SimulatedHistory } from "./simulated-story.ts";

/** Which fault, and where; the place is drawn when it is left out. */
export interface SimulatedFault {
  readonly fault: SimulatedFaultId;
  readonly place?: Place;
}

/** One broken engine. */
export interface SimulatedCase {
  readonly fault: SimulatedFaultId;
  readonly place: Place;
  /** What driver and reader of codes have at the first visit; cylinders by index. */
  readonly findings: readonly SimulatedFinding[];
  /** The answer to one more finding, at a cylinder where it asks for one; `undefined` when not seen. */
  readonly observeCheck: (
    finding: string,
    cylinder?: number,
  ) => SimulatedFinding["answer"] | undefined;
  readonly parts: SimulatedEngine;
  readonly drive: SimulatedDrive;
  /** The same engine before it broke. */
  readonly soundDrive: SimulatedDrive;
}

/** A car comes in when this share of all strokes is lost in some way of driving: felt by most people. */
const NOTICED = 0.04;
/** With more than this lost at idle or cruise it could not have been driven in. */
const DRIVABLE = 0.75;
/** A sound engine may lose this share of its strokes. */
export const SOUND_LOSS = 0.015;
const MOST_TRIES = 200;

/**
 * Fault ids that this engine can have, as catalogue and physics name them. An older engine is simulated with the
 * parts that it shares with later ones: contact breaker and carburettor do not break here.
 */
export function simulatedFaults(engine: Engine): readonly SimulatedFaultId[] {
  const { switching = "electronic", fuelling = "injection" } = engine.profile;
  return (Object.keys(SIMULATED_BREAKS) as SimulatedFaultId[]).filter((id) => {
    const row: SimulatedBreak = SIMULATED_BREAKS[id];
    const isBuilt =
      (row.switching ?? switching) === switching && (row.fuelling ?? fuelling) === fuelling;
    const suits = row.suits?.includes(engine.ignition) ?? true;
    return isBuilt && suits && places(engine, row.at).length > 0;
  });
}

/**
 * Breaks one part of an engine and drives it. The size of the break is drawn again while nobody would notice
 * it. Throws when the engine has no such part, or when no break was noticed and let the engine run.
 */
export function simulate(engine: Engine, fault: SimulatedFault, random: Random): SimulatedCase {
  const broken = simulateIfRuns(engine, fault, random);
  if (broken) return broken;
  throw new Error(`simulate: no break of ${fault.fault} was noticed in ${MOST_TRIES} tries.`);
}

/** The same; `undefined` when no break was noticed and let the engine run. */
export function simulateIfRuns(
  engine: Engine,
  fault: SimulatedFault,
  random: Random,
): SimulatedCase | undefined {
  const row: SimulatedBreak = SIMULATED_BREAKS[fault.fault];
  const all = places(engine, row.at);
  const place = fault.place ?? all[random.choice(all.map(() => 1))];
  if (!place) throw new Error(`simulate: ${fault.fault} has no place on this engine.`);
  const found = noticed(engine, row, place, random);
  if (!found) return undefined;
  const { history, parts, driven, soundDrive } = found;
  const codes = storeCodes(parts, driven, random);
  const state: SimulatedState = { parts, drive: driven, codes, random };
  const frame = frameOf(codes);
  return {
    fault: fault.fault,
    place,
    findings: [
      { finding: "lamp", answer: codes.lamp },
      { finding: "codes", answer: codes.codes },
      ...(frame ? [{ finding: "codes.frame", answer: frame }] : []),
      ...driverFindings(driven, random),
      { finding: "onset", answer: history.onset },
      { finding: "work", answer: history.work },
      { finding: "plug.age", answer: ageOf(history.plugKm) },
      { finding: "oil.use", answer: observe(state, "oil.use") ?? "none" },
    ],
    observeCheck: (finding, cylinder) => observe(state, finding, cylinder),
    parts,
    drive: driven,
    soundDrive,
  };
}

interface Noticed {
  readonly history: SimulatedHistory;
  readonly parts: SimulatedEngine;
  readonly driven: SimulatedDrive;
  readonly soundDrive: SimulatedDrive;
}

/** Draws lives, sound engines and breaks until a car comes in that was sound but for the one part. */
function noticed(
  engine: Engine,
  row: SimulatedBreak,
  place: Place,
  random: Random,
): Noticed | undefined {
  for (let i = 0; i < MOST_TRIES; i++) {
    const history = drawHistory(row.story, random);
    const parts = soundEngine(engine, history.plugKm, random);
    const soundDrive = drive(parts, random);
    if (Object.values(soundDrive).some((stretch) => lost(stretch) > SOUND_LOSS)) continue;
    row.apply(parts, place.cylinders, random);
    const driven = drive(parts, random);
    if (isBroughtIn(driven)) return { history, parts, driven, soundDrive };
  }
  return undefined;
}

function isBroughtIn({ coldStart, hotRestart, ...driven }: SimulatedDrive): boolean {
  const { coldIdle, hotIdle, cruise } = driven;
  const isNoticed =
    Object.values(driven).some((stretch) => lost(stretch) > NOTICED) ||
    lost(coldStart) > 0.5 ||
    lost(hotRestart) > 0.2;
  const isDriven = Math.max(lost(coldIdle), lost(hotIdle), lost(cruise)) < DRIVABLE;
  return isNoticed && isDriven;
}

function ageOf(plugKm: number): string {
  if (plugKm < 10_000) return "under-10";
  if (plugKm < 40_000) return "10-40";
  return plugKm < 100_000 ? "40-100" : "over-100";
}
