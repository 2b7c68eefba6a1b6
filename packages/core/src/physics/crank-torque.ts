// The torque that each cylinder puts on the crankshaft at each degree of its cycle: squeezed and burnt
// gas on the piston, and the piston's own mass. Textbook single-zone cycle: polytropic compression and
// expansion, all heat at top dead centre, constant pressure while the valves are open.
import {
  type CylinderGeometry,
  cylinderVolume,
  POLYTROPIC_EXPONENT,
  pistonArea,
  sweptVolume,
  travelCurvature,
  travelSlope,
} from "./cylinder.ts";

/** How an engine runs, all cylinders alike. */
export interface Running {
  readonly geometry: CylinderGeometry;
  readonly rpm: number;
  readonly intakePa: number;
  /** Exhaust and crankcase; one atmosphere unless given. */
  readonly exhaustPa?: number;
  /** Indicated mean effective pressure of a cylinder that fires, pumping left out. */
  readonly meanPressurePa: number;
  /** Piston and its share of the rod, kg; 0.55 unless given (0.5–0.6 from memory). */
  readonly reciprocatingKg?: number;
  /** All that turns, kg·m². */
  readonly inertiaKgM2: number;
}

/**
 * An inline six at idle to try things on: 84 × 90 mm, rod 150 mm, ratio 10.5 (a published design page of a
 * three-litre six); the inertia is assumed within 0.12–0.30 kg·m² (from memory).
 */
export const IDLING_SIX: Running = {
  geometry: { boreM: 0.084, strokeM: 0.09, rodM: 0.15, compressionRatio: 10.5 },
  rpm: 750,
  intakePa: 35_000,
  meanPressurePa: 150_000,
  inertiaKgM2: 0.2,
};

const ATMOSPHERE_PA = 101_325;
const RECIPROCATING_KG = 0.55;

/**
 * Pressure in a cylinder, Pa, at an angle after its firing top dead centre, degrees in −360..360.
 * `strength` 0 is a miss, 1 a full stroke.
 */
export function cylinderPressure(running: Running, angleDeg: number, strength = 1): number {
  const { geometry, intakePa, exhaustPa = ATMOSPHERE_PA } = running;
  if (angleDeg < -180) return intakePa;
  if (angleDeg >= 180) return exhaustPa;
  const ratio = cylinderVolume(geometry, 180) / cylinderVolume(geometry, angleDeg);
  const squeezed = intakePa * ratio ** POLYTROPIC_EXPONENT;
  if (angleDeg < 0) return squeezed;
  return squeezed + strength * firingRise(running) * ratio ** POLYTROPIC_EXPONENT;
}

/** Torque of one cylinder, N·m, gas and inertia, at an angle as above. */
export function cylinderTorque(running: Running, angleDeg: number, strength = 1): number {
  return gasTorque(running, angleDeg, strength) + inertiaTorque(running, angleDeg);
}

/** Torque of the gas alone, N·m; the crankcase pushes back with the exhaust's pressure. */
export function gasTorque(running: Running, angleDeg: number, strength = 1): number {
  const excess =
    cylinderPressure(running, angleDeg, strength) - (running.exhaustPa ?? ATMOSPHERE_PA);
  return excess * pistonArea(running.geometry) * travelSlope(running.geometry, angleDeg);
}

/** Torque that the moving piston takes and gives back at constant speed, N·m: −m·ω²·x′·x″. */
export function inertiaTorque(running: Running, angleDeg: number): number {
  const { geometry, rpm, reciprocatingKg = RECIPROCATING_KG } = running;
  const ω = (rpm * 2 * Math.PI) / 60;
  return (
    -reciprocatingKg *
    ω ** 2 *
    travelSlope(geometry, angleDeg) *
    travelCurvature(geometry, angleDeg)
  );
}

/**
 * What burning adds to the pressure, referred to bottom dead centre, Pa, so that the extra work of the
 * expansion, ∫ rise·(V₁/V)ⁿ dV, is the mean effective pressure times the swept volume.
 */
function firingRise({ geometry, meanPressurePa }: Running): number {
  const n = POLYTROPIC_EXPONENT;
  const bottom = cylinderVolume(geometry, 180);
  const workOfOnePascal = (bottom / (n - 1)) * (geometry.compressionRatio ** (n - 1) - 1);
  return (meanPressurePa * sweptVolume(geometry)) / workOfOnePascal;
}
