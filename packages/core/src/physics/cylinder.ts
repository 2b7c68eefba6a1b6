// Where is the piston, how much room is above it, and how hot and dense is what it has squeezed?
//
//   crank at θ after top dead centre, crank radius a = stroke/2, rod L (any engine textbook):
//   x(θ) = a(1 − cos θ) + L − √(L² − a² sin² θ)

/** One cylinder and its crank drive. */
export interface CylinderGeometry {
  readonly boreM: number;
  readonly strokeM: number;
  /** Connecting rod between the centres of its eyes. */
  readonly rodM: number;
  readonly compressionRatio: number;
}

/** Pressure and temperature of a charge. */
export interface GasState {
  readonly pressurePa: number;
  readonly temperatureK: number;
}

/** Exponent of compression that allows for heat lost to the walls; textbooks give 1.25 to 1.36. */
export const POLYTROPIC_EXPONENT = 1.3;

const BOTTOM_DEG = 180;

/** Radians of an angle in degrees. */
export function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

/** Area of the piston, m². */
export function pistonArea({ boreM }: CylinderGeometry): number {
  return (Math.PI / 4) * boreM ** 2;
}

/** Volume that the piston sweeps, m³. */
export function sweptVolume(geometry: CylinderGeometry): number {
  return pistonArea(geometry) * geometry.strokeM;
}

/** Volume left above the piston at top dead centre, m³. */
export function clearanceVolume(geometry: CylinderGeometry): number {
  return sweptVolume(geometry) / (geometry.compressionRatio - 1);
}

/** How far the piston is below top dead centre, m, at an angle in degrees from there. */
export function pistonTravel({ strokeM, rodM }: CylinderGeometry, angleDeg: number): number {
  const a = strokeM / 2;
  const θ = radians(angleDeg);
  return a * (1 - Math.cos(θ)) + rodM - Math.sqrt(rodM ** 2 - (a * Math.sin(θ)) ** 2);
}

/** Travel a radian of crank, m: the first derivative of the travel. */
export function travelSlope({ strokeM, rodM }: CylinderGeometry, angleDeg: number): number {
  const a = strokeM / 2;
  const sin = Math.sin(radians(angleDeg));
  const cos = Math.cos(radians(angleDeg));
  return a * sin + (a ** 2 * sin * cos) / Math.sqrt(rodM ** 2 - (a * sin) ** 2);
}

/** Change of that slope a radian, m: the second derivative of the travel. */
export function travelCurvature({ strokeM, rodM }: CylinderGeometry, angleDeg: number): number {
  const a = strokeM / 2;
  const sin = Math.sin(radians(angleDeg));
  const cos = Math.cos(radians(angleDeg));
  const s = Math.sqrt(rodM ** 2 - (a * sin) ** 2);
  return a * cos + (a ** 2 * (cos ** 2 - sin ** 2)) / s + (a ** 4 * sin ** 2 * cos ** 2) / s ** 3;
}

/** Volume above the piston, m³, at an angle in degrees from top dead centre. */
export function cylinderVolume(geometry: CylinderGeometry, angleDeg: number): number {
  return clearanceVolume(geometry) + pistonArea(geometry) * pistonTravel(geometry, angleDeg);
}

/**
 * Compression ratio from the moment the inlet valve shuts, degrees after bottom dead centre (40 to 70
 * is usual, from memory). Starting at bottom dead centre overstates the pressure.
 */
export function effectiveCompressionRatio(
  geometry: CylinderGeometry,
  inletClosesDegAfterBottom: number,
): number {
  const closed = cylinderVolume(geometry, BOTTOM_DEG - inletClosesDegAfterBottom);
  return closed / clearanceVolume(geometry);
}

/** A charge squeezed into 1/`ratio` of its volume: p·Vⁿ and T·Vⁿ⁻¹ stay. */
export function compress(
  charge: GasState,
  ratio: number,
  exponent: number = POLYTROPIC_EXPONENT,
): GasState {
  return {
    pressurePa: charge.pressurePa * ratio ** exponent,
    temperatureK: charge.temperatureK * ratio ** (exponent - 1),
  };
}

/** The state at an angle in degrees from top dead centre of a charge that was closed in at another. */
export function chargeAt(
  geometry: CylinderGeometry,
  charge: GasState & { readonly closedDeg?: number },
  angleDeg: number,
  exponent: number = POLYTROPIC_EXPONENT,
): GasState {
  const closed = cylinderVolume(geometry, charge.closedDeg ?? BOTTOM_DEG);
  return compress(charge, closed / cylinderVolume(geometry, angleDeg), exponent);
}
