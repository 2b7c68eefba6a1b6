// Is this situation one that was met before, by another way?
import type { PlanState } from "./problem.ts";

/** Probabilities that differ by less than about 1e-12 are one. */
const STEPS = 2 ** 40;

/**
 * Two numbers that are the same for the same situation, and, but for chances of one in 10^20, only
 * then: 53 bits to look up and 32 to confirm.
 */
export interface BeliefKey {
  readonly find: number;
  readonly confirm: number;
}

export function keyOf(state: PlanState): BeliefKey {
  let a = 0x9e3779b9;
  let b = 0x85ebca6b;
  let c = state.untried ? 1 : 2;
  const add = (x: number, y: number): void => {
    a = Math.imul(a ^ x, 0x21f0aaad);
    a ^= a >>> 15;
    b = Math.imul(b ^ y, 0x735a2d97) + a;
    b ^= b >>> 13;
    c = Math.imul(c + x, 0x2c1b3c6d) ^ b;
  };
  const { chance, tested, repaired, open } = state;
  for (let s = 0; s < chance.length; s++) {
    const p = chance[s] as number;
    if (p === 0) continue;
    const steps = Math.round(p * STEPS);
    // The lowest 32 bits, and what is above them beside the number of the state.
    if (steps > 0) add(steps | 0, s * 1024 + Math.floor(steps / 2 ** 32));
  }
  for (let i = 0; i < tested.length; i++) if (tested[i]) add(i, 1);
  for (let i = 0; i < repaired.length; i++) if (repaired[i]) add(i, 2);
  for (let i = 0; i < open.length; i++) if (open[i]) add(i, 3);
  return { find: (a >>> 0) * 2 ** 21 + (b >>> 11), confirm: c };
}
