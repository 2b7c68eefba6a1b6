// What does a plug look like after the mixed drive? Colour follows what burnt or did not burn around it.
import type { SimulatedDrive } from "./simulated-drive.ts";
import type { SimulatedEngine } from "./simulated-engine.ts";

/** Rings that pass this much gas pass oil up as well. */
const OILY_M2 = 5e-6;
/** Sparks that stay out this often leave the nose wet. */
const WET_SHARE = 0.7;
const SOOTY_SHARE = 0.12;

/** The look of one plug. Dry and pale or tan without fuel; wet where fuel came and no flame followed. */
export function lookOf(parts: SimulatedEngine, drive: SimulatedDrive, c: number): string {
  const { hotIdle, cruise, coldIdle } = drive;
  if ((parts.cylinders[c]?.ringM2 ?? 0) > OILY_M2) return "wet-oil";
  const fuel = hotIdle.mixture.fuel[c] ?? 1;
  const lambda = hotIdle.mixture.lambda[c] ?? 1;
  // Without fuel nothing wets it and nothing soots it.
  if (fuel < 0.1) return "pale";
  const missed = Math.max(hotIdle.share[c] ?? 0, coldIdle.share[c] ?? 0);
  const dark = ((hotIdle.dark[c] ?? 0) + (cruise.dark[c] ?? 0)) / 2;
  if (fuel > 1.6 && missed > 0.3) return "wet-petrol";
  if (fuel > 1.3) return "dry-black";
  if (dark > WET_SHARE) return "wet-petrol";
  if ((parts.plugs[c]?.shuntOhm ?? Infinity) < 2e6) return "dry-black";
  if (lambda > 1.12 || (cruise.mixture.lambda[c] ?? 1) > 1.12) return "pale";
  return missed > SOOTY_SHARE || (cruise.share[c] ?? 0) > SOOTY_SHARE ? "dry-black" : "tan";
}
