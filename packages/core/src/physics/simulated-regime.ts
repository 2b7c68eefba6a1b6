// In which ways is a car driven before it comes to a workshop, and what does each do to charge, damp and
// shaking? A mixed drive of nine stretches. Speeds and pressures are those of an ordinary petrol engine
// (idle as in `IDLING_SIX`); stretches and lean limits are from memory.

/** One stretch of the mixed drive. */
export interface SimulatedRegime {
  readonly rpm: number;
  readonly intakePa: number;
  /** Charge at the bottom of the compression stroke. */
  readonly chargeK: number;
  /** Cycles looked at; also the length of the stretch in the drive. */
  readonly cycles: number;
  /** Mixture the control unit aims at, air over what burning needs. */
  readonly lambda: number;
  /** Spread of the mixture between cycles. */
  readonly lambdaSpread: number;
  /** Leaner than this and the flame dies; residual gas at idle narrows it. */
  readonly leanLimit: number;
  /** Trim from the oxygen sensor works. */
  readonly isTrimmed: boolean;
  /** The stretch in which a warm engine's control unit learnt the trim that it uses here without looking. */
  readonly learntIn?: "hotIdle" | "cruise";
  /** 0 cold, 1 hot. */
  readonly warmth: number;
  /** Water on and around the high-voltage parts, 0 dry, 1 wet. */
  readonly damp: number;
  /** Nose of the plug, °C; from 450 up soot burns off. */
  readonly noseC: number;
  /** Seconds that the hot engine stood just before; a rail under pressure drips meanwhile. */
  readonly soakS?: number;
  /** How hard parts and plugs are shaken, 0..1. */
  readonly shaking: number;
  /** Voltage at the battery. */
  readonly supplyV: number;
}

const IDLE = { cycles: 300, lambdaSpread: 0.035, leanLimit: 1.22, shaking: 0.04, damp: 0 };
const MOVING = { cycles: 300, lambdaSpread: 0.025, chargeK: 325, warmth: 1, supplyV: 14 };

const CLIMB = {
  rpm: 1900,
  intakePa: 70e3,
  lambda: 1,
  leanLimit: 1.4,
  isTrimmed: true,
  noseC: 620,
  shaking: 0.05,
};

export const SIMULATED_REGIMES = {
  coldStart: {
    ...IDLE,
    rpm: 500,
    intakePa: 70e3,
    chargeK: 285,
    cycles: 40,
    noseC: 60,
    lambda: 0.8,
    lambdaSpread: 0.09,
    isTrimmed: false,
    warmth: 0,
    supplyV: 10.5,
  },
  coldIdle: {
    ...IDLE,
    rpm: 1000,
    intakePa: 42e3,
    chargeK: 290,
    lambda: 0.9,
    lambdaSpread: 0.06,
    noseC: 250,
    isTrimmed: false,
    warmth: 0.15,
    supplyV: 13.8,
  },
  hotIdle: {
    ...IDLE,
    rpm: 750,
    intakePa: 35e3,
    chargeK: 330,
    lambda: 1,
    isTrimmed: true,
    noseC: 400,
    warmth: 1,
    supplyV: 13.8,
  },
  /** The first ten seconds after a short stop with a hot engine. */
  hotRestart: {
    ...IDLE,
    rpm: 850,
    intakePa: 38e3,
    chargeK: 345,
    cycles: 70,
    lambda: 0.97,
    isTrimmed: false,
    learntIn: "hotIdle",
    noseC: 350,
    soakS: 300,
    warmth: 1,
    supplyV: 13.5,
  },
  cruise: {
    ...MOVING,
    rpm: 2300,
    intakePa: 50e3,
    lambda: 1,
    leanLimit: 1.38,
    isTrimmed: true,
    noseC: 560,
    damp: 0,
    shaking: 0.05,
  },
  pull: {
    ...MOVING,
    rpm: 1900,
    intakePa: 97e3,
    lambda: 0.92,
    leanLimit: 1.45,
    isTrimmed: false,
    learntIn: "cruise",
    noseC: 720,
    damp: 0,
    shaking: 0.12,
  },
  /** A moderate climb, dry. */
  climb: { ...MOVING, ...CLIMB, damp: 0 },
  /** The same climb in rain. */
  wet: { ...MOVING, ...CLIMB, damp: 1 },
  /** A bad road at light throttle. */
  bumps: {
    ...MOVING,
    rpm: 2000,
    intakePa: 50e3,
    lambda: 1,
    leanLimit: 1.38,
    isTrimmed: true,
    noseC: 540,
    damp: 0,
    shaking: 1,
  },
} as const satisfies Record<string, SimulatedRegime>;

export type SimulatedRegimeName = keyof typeof SIMULATED_REGIMES;

export const SIMULATED_REGIME_NAMES = Object.keys(
  SIMULATED_REGIMES,
) as readonly SimulatedRegimeName[];
