// An engine as plain data with names in place of indices, for people and programs to read.
import type { Engine } from "./engine.ts";
import { mismatchDeg, pairingMismatchDeg, pairingObstacle, sayDegrees } from "./firing-order.ts";
import type { CylinderName, IgnitionKind } from "./profile.ts";

/** One cylinder of a described engine. */
export interface CylinderDescription {
  readonly name: CylinderName;
  /** Crank degrees in 0..720 at which it fires. */
  readonly angleDeg: number;
  readonly companion?: CylinderName;
  /** Counted from 1. */
  readonly bank: number;
  readonly hasLead: boolean;
}

/** Everything worked out about an engine, by name. */
export interface EngineDescription {
  readonly id?: string;
  readonly name?: string;
  readonly isInvented: boolean;
  readonly ignition: IgnitionKind;
  readonly firingOrder: readonly CylinderName[];
  /** In counting order. */
  readonly cylinders: readonly CylinderDescription[];
  /** Companions, in firing order. */
  readonly pairs: readonly (readonly [CylinderName, CylinderName])[];
  readonly groups: readonly (readonly CylinderName[])[];
  readonly banks: readonly (readonly CylinderName[])[];
  readonly neighbours: readonly (readonly CylinderName[])[];
  readonly connectors: readonly {
    readonly name: string;
    readonly feeds: readonly CylinderName[];
  }[];
  /** Largest distance, degrees, of the best pairs from 360° apart; 0 when all are exact. */
  readonly mismatchDeg: number;
  /** Whether two cylinders can share a coil here, and why. */
  readonly explanation: string;
}

/** Describes an engine by the names of its cylinders. */
export function describeEngine(engine: Engine): EngineDescription {
  const { profile, names } = engine;
  const named = (list: readonly number[]): readonly CylinderName[] =>
    list.map((c) => names[c] ?? c);
  return {
    ...(profile.id === undefined ? {} : { id: profile.id }),
    ...(profile.name === undefined ? {} : { name: profile.name }),
    isInvented: profile.invented ?? false,
    ignition: engine.ignition,
    firingOrder: named(engine.order),
    cylinders: names.map((name, c) => describeCylinder(engine, name, c)),
    pairs: pairsOf(engine).map(([a, b]) => [names[a] ?? a, names[b] ?? b] as const),
    groups: engine.groups.map(named),
    banks: engine.banks.map(named),
    neighbours: engine.neighbours.map(named),
    connectors: engine.connectors.map(({ name, cylinders }) => ({ name, feeds: named(cylinders) })),
    mismatchDeg: pairingMismatchDeg(engine.angles),
    explanation: explain(engine),
  };
}

function describeCylinder(engine: Engine, name: CylinderName, c: number): CylinderDescription {
  const companion = engine.companions[c];
  return {
    name,
    angleDeg: engine.angles[c] ?? 0,
    ...(companion === undefined ? {} : { companion: engine.names[companion] ?? companion }),
    bank: (engine.bankOf[c] ?? 0) + 1,
    hasLead: engine.hasLead[c] ?? false,
  };
}

function pairsOf({ order, companions }: Engine): readonly (readonly [number, number])[] {
  return order.flatMap((a, i) => {
    const b = companions[a];
    return b !== undefined && i < order.indexOf(b) ? [[a, b] as const] : [];
  });
}

function explain(engine: Engine): string {
  const { angles, names } = engine;
  const pairs = pairsOf(engine);
  const obstacle = pairingObstacle(angles);
  const said = pairs.map(([a, b]) => `${names[a]}/${names[b]}`).join(", ");
  if (!obstacle) {
    return (
      `The companions are ${said}: they reach top dead centre together and fire 360° apart, so ` +
      "one coil can fire both."
    );
  }
  if (pairs.length === 0) return obstacle;
  const worst = Math.max(...pairs.map(([a, b]) => mismatchDeg(angles[a] ?? 0, angles[b] ?? 0)));
  return `${obstacle} Paired within the tolerance: ${said}, at most ${sayDegrees(worst)} off.`;
}
