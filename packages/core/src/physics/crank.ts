// What do missing cylinders leave in the turning of the crankshaft? Gas torque repeats every two turns,
// so its orders (cycles a turn) are 0.5, 1, 1.5 …; a dead cylinder puts back the half orders that the
// even firing of its fellows cancels.
import { radians } from "./cylinder.ts";

/** A flywheel that loses a working stroke. */
export interface Stroke {
  /** Work that is missed, J. */
  readonly workJ: number;
  /** All that turns with the crankshaft. */
  readonly inertiaKgM2: number;
  readonly rpm: number;
}

/**
 * Amplitude of the missing torque at an order, against that of one dead cylinder:
 * F(o) = |Σ exp(−j·o·φ)| over the firing angles φ, degrees, of the dead. Exact when all cylinders pull
 * alike. Companions give 0 at every half order.
 */
export function missingTorque(deadAnglesDeg: readonly number[], order: number): number {
  let re = 0;
  let im = 0;
  for (const angle of deadAnglesDeg) {
    re += Math.cos(order * radians(angle));
    im -= Math.sin(order * radians(angle));
  }
  return Math.hypot(re, im);
}

/** Frequency of an order at an engine speed, Hz. */
export function orderHz(order: number, rpm: number): number {
  return (order * rpm) / 60;
}

/** Order at which an even-firing four-stroke engine fires. */
export function firingOrderOf(cylinders: number): number {
  return cylinders / 2;
}

/** Radians a second of revolutions a minute. */
export function radPerSecond(rpm: number): number {
  return (rpm * 2 * Math.PI) / 60;
}

/** Indicated work of one cycle of one cylinder, J: mean effective pressure times swept volume. */
export function strokeWork(meanPressurePa: number, sweptM3: number): number {
  return meanPressurePa * sweptM3;
}

/** Speed lost by one missed stroke, revolutions a minute: W/(J·ω). First order, so small dips only. */
export function speedDip({ workJ, inertiaKgM2, rpm }: Stroke): number {
  return (workJ / (inertiaKgM2 * radPerSecond(rpm))) * (60 / (2 * Math.PI));
}
