// What does the driver notice over the mixed drive? Everything here is read off the misses; a driver who is
// unsure errs now and then.
import type { Random } from "../units/random.ts";
import type { SimulatedDrive, SimulatedStretch } from "./simulated-drive.ts";

/** A finding as a case holds it; the cylinder by its index. */
export interface SimulatedFinding {
  readonly finding: string;
  readonly answer: string | number | readonly string[] | Readonly<Record<string, number>>;
  readonly cylinder?: number;
}

/** Below this share of all strokes lost nobody feels anything (from memory: two or three in a hundred). */
const FELT = 0.02;
/** A cylinder that misses this often, where the engine misses most, feels dead. */
const DEAD = 0.6;
const UNSURE = 0.12;

/** The answers of the driver. */
export function driverFindings(drive: SimulatedDrive, random: Random): readonly SimulatedFinding[] {
  const choices: Readonly<Record<string, string | undefined>> = {
    "complaint.main": complaint(drive, random),
    "regime.worst": worst(drive),
    "regime.smooths": smooths(drive),
    "regime.warmth": warmth(drive),
    "regime.weather": weather(drive),
    "regime.bumps": lost(drive.bumps) > 2 * lost(drive.cruise) + FELT ? "yes" : "no",
    "complaint.dead-cylinders": deadCylinders(drive, random),
    "complaint.rhythm": rhythm(drive),
    "exhaust.sound": exhaustSound(drive),
  };
  return [
    ...Object.entries(choices).flatMap(([finding, answer]) =>
      answer === undefined ? [] : [{ finding, answer }],
    ),
    { finding: "smell", answer: smell(drive, random) },
  ];
}

/** Share of all strokes of a stretch that were lost. */
export function lost({ share }: SimulatedStretch): number {
  return share.reduce((a, b) => a + b, 0) / share.length;
}

function feltMost(drive: SimulatedDrive): number {
  return Math.max(...Object.values(drive).map(lost));
}

function complaint(drive: SimulatedDrive, random: Random): string {
  const idle = (lost(drive.hotIdle) + lost(drive.coldIdle)) / 2;
  const pull = lost(drive.pull);
  const onRoad = Math.max(drive.bumps.blackout, drive.cruise.blackout, drive.pull.blackout);
  if (feltMost(drive) < FELT) return "lamp-only";
  if (onRoad > 0.03) return drive.hotIdle.blackout > 0.3 ? "stalls" : "cuts-out";
  if (lost(drive.coldStart) > 0.5 && idle < 0.15) return "hard-start";
  // An engine that lost a third of its strokes at idle stands still at times.
  if (idle > 0.6) return "stalls";
  if (pull > 0.15 && random.uniform() < 0.3) return "lacks-power";
  const jerks = Math.max(pull, lost(drive.wet), lost(drive.bumps), lost(drive.cruise));
  return idle * 1.2 >= jerks * (0.8 + 0.4 * random.uniform())
    ? "shakes-at-idle"
    : "jerks-under-load";
}

function worst(drive: SimulatedDrive): string | undefined {
  const idle = Math.max(lost(drive.hotIdle), lost(drive.coldIdle));
  const cruise = lost(drive.cruise);
  const pull = Math.max(lost(drive.pull), lost(drive.wet) * 0.8);
  const most = Math.max(idle, cruise, pull);
  if (most < FELT) return undefined;
  if (Math.min(idle, cruise, pull) > most * 0.6) return "all";
  if (most === idle) return "idle";
  return most === pull ? "pull" : "cruise";
}

/** From idle to a light run at 2,000 rpm, which is cruise with some pulling. */
function smooths(drive: SimulatedDrive): string | undefined {
  const idle = lost(drive.hotIdle);
  const above = 0.75 * lost(drive.cruise) + 0.25 * lost(drive.pull);
  if (Math.max(idle, above) < FELT / 2) return undefined;
  if (above > idle * 1.5 + FELT / 2) return "worse";
  if (above < idle * 0.15) return "yes";
  return above < idle * 0.6 ? "partly" : "no";
}

function warmth(drive: SimulatedDrive): string | undefined {
  const cold = Math.max(lost(drive.coldIdle), 0.7 * lost(drive.coldStart));
  const hot = Math.max(lost(drive.hotIdle), lost(drive.cruise), lost(drive.pull));
  if (Math.max(cold, hot, lost(drive.hotRestart)) < FELT) return undefined;
  if (lost(drive.hotRestart) > 3 * Math.max(lost(drive.hotIdle), cold) + FELT) return "hot-restart";
  if (hot < 0.15 * cold) return "cold-only";
  // Only with the engine idling can cold and warm be told apart; pulling cold is avoided.
  if (lost(drive.hotIdle) > FELT && cold < 0.2 * lost(drive.hotIdle)) return "hot-only";
  return hot < 0.4 * cold ? "clears-later" : "always";
}

function weather(drive: SimulatedDrive): string {
  const wet = lost(drive.wet);
  return wet > FELT && lost(drive.climb) < 0.35 * wet ? "wet-only" : "no-link";
}

/** Felt by the gap that a cylinder leaves among those that fire: where none fires, none stands out. */
function deadCylinders(drive: SimulatedDrive, random: Random): string {
  const { share } = worstStretch(drive);
  const missing = share.filter((s) => s > DEAD).length;
  const dead = missing < share.length ? missing : 0;
  const felt = random.uniform() < UNSURE ? dead + (random.uniform() < 0.5 ? -1 : 1) : dead;
  return ["none", "one", "two"][Math.max(0, felt)] ?? "more";
}

/** The way of driving in which most strokes are lost, of those that last; a warm idle where others are as bad. */
function worstStretch(drive: SimulatedDrive): SimulatedStretch {
  return [drive.hotIdle, drive.cruise, drive.pull, drive.coldIdle, drive.wet].reduce((a, b) =>
    lost(b) > lost(a) ? b : a,
  );
}

/** Share of the misses that fall on cylinders which miss most of the time, where it is worst. */
function regularShare(drive: SimulatedDrive): number {
  const { share } = worstStretch(drive);
  const total = share.reduce((a, b) => a + b, 0);
  const regular = share.filter((s) => s > 0.5).reduce((a, b) => a + b, 0);
  return total > 0 ? regular / total : 0;
}

function rhythm(drive: SimulatedDrive): string | undefined {
  if (feltMost(drive) < FELT) return undefined;
  return regularShare(drive) > 0.5 ? "steady" : "random";
}

/** Heard standing behind the car, at idle. */
function exhaustSound(drive: SimulatedDrive): string {
  const { share } = drive.hotIdle;
  if (lost(drive.hotIdle) < FELT) return "normal";
  return share.some((s) => s > 0.5) ? "regular" : "random";
}

/** Petrol is smelt when a tenth of it leaves unburnt; a hot catalyst is smelt too. */
export function smell(drive: SimulatedDrive, random: Random): readonly string[] {
  const raw = Math.max(
    unburntIn(drive.hotIdle),
    unburntIn(drive.coldIdle),
    unburntIn(drive.cruise),
  );
  const smells: string[] = [];
  if (raw > 0.08 * (0.5 + random.uniform())) smells.push("petrol");
  if (unburntIn(drive.cruise) > 0.15 && random.uniform() < 0.3) smells.push("rotten-egg");
  return smells;
}

function unburntIn({ unburnt, mixture }: SimulatedStretch): number {
  // Too rich leaves fuel over even where it burns.
  const rich = mixture.fuel.map((fuel) => Math.max(0, fuel - 1.3));
  return unburnt.reduce((sum, u, c) => sum + u + (rich[c] ?? 0), 0) / unburnt.length;
}
