// Random small diagnosis models for property tests.
import fc from "fast-check";
import type { DiagnosisModel } from "../../packages/core/src/model/diagnosis-model.ts";

const chance = fc.double({ min: 0.001, max: 0.999, noNaN: true });

interface Sketch {
  readonly cylinders: number;
  readonly odds: readonly number[];
  readonly lastAlone: boolean;
  readonly components: readonly number[];
  readonly atoms: readonly (readonly { readonly set: number; readonly weight: number }[])[];
  readonly links: readonly { readonly a: number; readonly b: number; readonly times: number }[];
  readonly observations: readonly {
    readonly form: "seen" | "not-seen" | "choice";
    readonly background: number;
    readonly value: readonly number[];
  }[];
  readonly tables: readonly (readonly number[])[];
}

function sketch(faults: number, cylinders: number): fc.Arbitrary<Sketch> {
  const sets = 2 ** cylinders + 1;
  const value = fc.oneof(fc.constant(0), fc.constantFrom(0.05, 0.5, 0.9), chance);
  return fc.record({
    cylinders: fc.constant(cylinders),
    odds: fc.array(fc.double({ min: 0.001, max: 2, noNaN: true }), many(faults)),
    lastAlone: fc.boolean(),
    components: fc.array(fc.nat(2), many(faults)),
    atoms: fc.array(
      fc.array(
        fc.record({ set: fc.nat(sets - 1), weight: fc.double({ min: 0.05, max: 1, noNaN: true }) }),
        { minLength: 1, maxLength: 4 },
      ),
      many(faults),
    ),
    links: fc.array(
      fc.record({
        a: fc.nat(faults - 1),
        b: fc.nat(faults - 1),
        times: fc.double({ min: 0.2, max: 6, noNaN: true }),
      }),
      { maxLength: 5 },
    ),
    observations: fc.array(
      fc.record({
        form: fc.constantFrom("seen" as const, "not-seen" as const, "choice" as const),
        background: fc.double({ min: 0.01, max: 0.9, noNaN: true }),
        value: fc.array(value, many(faults)),
      }),
      { maxLength: 6 },
    ),
    tables: fc.array(fc.array(chance, many(sets)), { maxLength: 3 }),
  });
}

function many(length: number): { minLength: number; maxLength: number } {
  return { minLength: length, maxLength: length };
}

/** Models of 1 to 7 faults on 1 to 4 cylinders, with links, silent faults and a fault that stands alone. */
export const smallModel: fc.Arbitrary<DiagnosisModel> = modelsOf([1, 7], [1, 4]);

/** Models with so many faults on so many cylinders, from least to most. */
export function modelsOf(
  faults: readonly [number, number],
  cylinders: readonly [number, number],
): fc.Arbitrary<DiagnosisModel> {
  const within = ([min, max]: readonly [number, number]) => fc.integer({ min, max });
  return fc
    .tuple(within(faults), within(cylinders))
    .chain(([count, size]) => sketch(count, size))
    .map(build);
}

function build(s: Sketch): DiagnosisModel {
  const faults = s.odds.length;
  const alone = new Uint8Array(faults);
  if (s.lastAlone && faults > 1) alone[faults - 1] = 1;
  const starts = [0];
  for (const atoms of s.atoms) starts.push((starts.at(-1) ?? 0) + atoms.length);
  return {
    cylinders: s.cylinders,
    faults,
    odds: Float64Array.from(s.odds),
    alone,
    component: Uint32Array.from(s.components),
    components: 3,
    atomStart: Uint32Array.from(starts),
    atomChance: Float64Array.from(
      s.atoms.flatMap((atoms) => {
        const sum = atoms.reduce((total, atom) => total + atom.weight, 0);
        return atoms.map((atom) => atom.weight / sum);
      }),
    ),
    atomSet: Uint32Array.from(s.atoms.flatMap((atoms) => atoms.map((atom) => atom.set))),
    links: s.links.filter(({ a, b }) => a !== b),
    observations: s.observations.map(({ form, background, value }, answer) => ({
      form,
      background,
      // In a choice a value of 0 stands for a fault that is silent.
      value: Float64Array.from(value, (v) => (form === "choice" && v === 0 ? -1 : v)),
      answer,
    })),
    misfireObservations: s.tables.map((table, i) => ({
      likelihood: (set: number) => table[set] as number,
      answer: s.observations.length + i,
    })),
  };
}
