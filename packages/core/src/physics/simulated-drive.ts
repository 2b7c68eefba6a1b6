// What does each cylinder do over the mixed drive? Cycle by cycle: is there a spark, a mixture that burns,
// a charge that is dense enough?
import type { Random } from "../units/random.ts";
import {
  mixtureIn,
  type SimulatedMixture,
  sealedShare,
  sparkGas,
  trimmed,
} from "./simulated-charge.ts";
import type { SimulatedControl, SimulatedEngine } from "./simulated-engine.ts";
import {
  SIMULATED_REGIME_NAMES,
  SIMULATED_REGIMES,
  type SimulatedRegime,
  type SimulatedRegimeName,
} from "./simulated-regime.ts";
import { sparkNeeds, sparksIn } from "./simulated-spark.ts";

/** One regime of the drive. Shares are of the cylinder's cycles, 0..1. */
export interface SimulatedStretch {
  readonly cycles: number;
  /** By cylinder: misses, counted. */
  readonly misses: readonly number[];
  /** By cycle: who missed in it. */
  readonly missed: readonly (readonly number[])[];
  /** By cylinder: share of cycles that missed. */
  readonly share: readonly number[];
  /** By cylinder: share of cycles without a spark. */
  readonly dark: readonly number[];
  /** By cylinder: share of a usual dose that leaves unburnt. */
  readonly unburnt: readonly number[];
  /** Share of cycles in which no coil was told to fire, or none could. */
  readonly blackout: number;
  readonly mixture: SimulatedMixture;
}

export type SimulatedDrive = Readonly<Record<SimulatedRegimeName, SimulatedStretch>>;

/** A healthy engine drops a stroke now and then at idle (from memory: one in some hundreds). */
const STRAY_IDLE = 0.002;
const STRAY = 0.0003;
const TRIM_STEPS = 6;
const RICH_LIMIT = 0.55;
const LIMIT_SPREAD = 0.04;
/** Breaks come in runs of so many cycles: a contact opens for a moment, not for one spark. */
const RUN = 8;
/** Stoichiometric quench distance at one bar and room temperature, m (from memory: about 2 mm). */
const QUENCH_M_BAR = 2e-3;

/** Runs the whole drive. */
export function drive(parts: SimulatedEngine, random: Random): SimulatedDrive {
  const stretches = SIMULATED_REGIME_NAMES.map(
    (name) => [name, stretch(parts, SIMULATED_REGIMES[name], random)] as const,
  );
  return Object.fromEntries(stretches) as SimulatedDrive;
}

/** Runs one regime, where the mixture is trimmed after the trim has found its place. */
function stretch(
  parts: SimulatedEngine,
  regime: SimulatedRegime,
  random: Random,
): SimulatedStretch {
  let mixture = mixtureIn(parts, regime, learntTrim(parts, regime));
  for (let i = 0; regime.isTrimmed && i < TRIM_STEPS; i++) {
    const { share } = run(parts, { ...regime, cycles: 24 }, mixture, random);
    mixture = mixtureIn(parts, regime, trimmed(mixture, share));
  }
  return run(parts, regime, mixture, random);
}

/**
 * What the control unit adds by habit: the trim of the stretch in which it learnt, as if every stroke burnt, since
 * units stop learning while they see misses (common practice). 0 where it has nothing to go by.
 */
function learntTrim(parts: SimulatedEngine, { learntIn }: SimulatedRegime): number {
  if (!learntIn) return 0;
  const regime = SIMULATED_REGIMES[learntIn];
  let mixture = mixtureIn(parts, regime, 0);
  for (let i = 0; i < TRIM_STEPS; i++) {
    mixture = mixtureIn(parts, regime, trimmed(mixture, []));
  }
  return mixture.trim;
}

function run(
  parts: SimulatedEngine,
  regime: SimulatedRegime,
  mixture: SimulatedMixture,
  random: Random,
): SimulatedStretch {
  const n = parts.engine.names.length;
  const needs = sparkNeeds(parts, regime);
  const burns = charges(parts, regime, mixture);
  const misses = new Array<number>(n).fill(0);
  const darkCount = new Array<number>(n).fill(0);
  const missed: number[][] = [];
  let blackouts = 0;
  let off: readonly boolean[] = [];
  let isDropped = false;
  for (let cycle = 0; cycle < regime.cycles; cycle++) {
    if (cycle % RUN === 0) {
      off = coilsOff(parts, regime, random);
      isDropped = random.uniform() < parts.crankOffHot * regime.warmth;
    }
    const sparks = sparksIn(parts, needs, (coil) => isDropped || off[coil] === true, random);
    const who: number[] = [];
    sparks.forEach((isLit, c) => {
      if (!isLit) darkCount[c] = (darkCount[c] ?? 0) + 1;
      if (!isLit || !burns(c, random)) who.push(c);
    });
    for (const c of who) misses[c] = (misses[c] ?? 0) + 1;
    missed.push(who);
    if (isDropped || off.every(Boolean)) blackouts++;
  }
  const share = misses.map((count) => count / regime.cycles);
  return {
    cycles: regime.cycles,
    misses,
    missed,
    share,
    dark: darkCount.map((count) => count / regime.cycles),
    unburnt: share.map((s, c) => s * Math.min(2, mixture.fuel[c] ?? 0) * (isDropped ? 0.5 : 1)),
    blackout: blackouts / regime.cycles,
    mixture,
  };
}

/** Share of cycles in which a contact is open. */
export function offShare(
  { still, shaken }: SimulatedControl,
  { shaking }: SimulatedRegime,
): number {
  return still + shaken * shaking;
}

/** Share of cycles in which a coil gives nothing. */
export function silentShare(
  { coils }: SimulatedEngine,
  { warmth }: SimulatedRegime,
  coil: number,
): number {
  const { offCold = 0, offHot = 0 } = coils[coil] ?? {};
  return offCold + (offHot - offCold) * warmth;
}

/** By coil: no trigger, no feed or no output in this run of cycles. */
function coilsOff(
  parts: SimulatedEngine,
  regime: SimulatedRegime,
  random: Random,
): readonly boolean[] {
  const isOff = (control: SimulatedControl): boolean =>
    random.uniform() < offShare(control, regime);
  const isUnfed = isOff(parts.supply);
  const feeds = parts.feeds.map(isOff);
  return parts.engine.groups.map((group, g) => {
    const connector = parts.engine.connectors.findIndex(({ cylinders }) =>
      cylinders.includes(group[0] ?? 0),
    );
    const dead = random.uniform() < silentShare(parts, regime, g);
    const untriggered = isOff(parts.controls[g] ?? { still: 0, shaken: 0 });
    return isUnfed || dead || untriggered || feeds[connector] === true;
  });
}

/** Whether a lit charge burns, by cylinder, drawn anew each cycle. */
function charges(
  parts: SimulatedEngine,
  regime: SimulatedRegime,
  mixture: SimulatedMixture,
): (cylinder: number, random: Random) => boolean {
  const sealed = parts.cylinders.map((_, c) => sealedShare(parts, c, regime));
  // A thin or cold charge needs more of its compression.
  const least = (regime.intakePa < 60e3 ? 0.55 : 0.4) + 0.12 * (1 - regime.warmth);
  const stray = regime.rpm < 1100 ? STRAY_IDLE : STRAY;
  return (c, random) => {
    if (random.uniform() < stray) return false;
    const lambda = (mixture.lambda[c] ?? 1) * (1 + regime.lambdaSpread * random.normal());
    const lean = regime.leanLimit * (1 + LIMIT_SPREAD * random.normal());
    if (!(lambda < lean && lambda > RICH_LIMIT)) return false;
    if ((sealed[c] ?? 1) < least * (1 + 0.1 * random.normal())) return false;
    const gas = sparkGas(regime, sealed[c] ?? 1);
    const quench =
      ((QUENCH_M_BAR * 1e5) / gas.pressurePa) *
      Math.max(1, lambda) ** 2 *
      (1.3 - 0.3 * regime.warmth);
    return (parts.plugs[c]?.gapM ?? 0) > quench * (1 + 0.12 * random.normal());
  };
}
