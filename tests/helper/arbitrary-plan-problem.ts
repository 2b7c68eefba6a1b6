// Random planning problems, small enough to try every plan.
import fc from "fast-check";
import type {
  PlanProblem,
  PlanRepair,
  PlanTest,
} from "../../packages/core/src/planning/problem.ts";

export interface Shape {
  readonly states: number;
  readonly tests: number;
  readonly repairs: number;
  /** Accesses, trials that cost, looks and partial repairs too (default true). */
  readonly everything?: boolean;
}

const cost = fc.constantFrom(1, 2, 3, 5, 8, 13);
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

export function planProblems(shape: Shape): fc.Arbitrary<PlanProblem> {
  const { states, tests, repairs, everything = true } = shape;
  const accesses = everything ? 2 : 0;
  return fc
    .record({
      weights: fc.array(fc.integer({ min: 1, max: 20 }), { minLength: states, maxLength: states }),
      tests: fc.array(planTests(states, accesses), { maxLength: tests }),
      repairs: fc.array(planRepairs(states, accesses), { minLength: 1, maxLength: repairs }),
      callCost: maybe(fc.integer({ min: 5, max: 40 })),
      trialCost: everything ? maybe(fc.integer({ min: 1, max: 6 })) : fc.constant(undefined),
    })
    .map(({ weights, callCost, trialCost, ...rest }) => ({
      ...rest,
      chance: normal(weights),
      ...(callCost === undefined ? {} : { callCost }),
      ...(trialCost === undefined ? {} : { trialCost }),
      ...(accesses > 0 ? { accessCost: [4, 7] } : {}),
    }));
}

function planTests(states: number, accesses: number): fc.Arbitrary<PlanTest> {
  const column = fc.array(fc.constantFrom(0, 0, 1, 1, 5, 20), { minLength: 3, maxLength: 3 });
  return fc
    .record({
      cost,
      columns: fc.array(column, { minLength: states, maxLength: states }),
      access: access(accesses),
    })
    .map(({ columns, access, ...rest }) => {
      const shares = columns.map((c) => normal(c.some((w) => w > 0) ? c : [1, 0, 0]));
      const outcomes = [0, 1, 2].map((o) => Float64Array.from(shares, (of) => of[o] as number));
      return { ...rest, outcomes, ...access };
    });
}

function planRepairs(states: number, accesses: number): fc.Arbitrary<PlanRepair> {
  const cure = fc.constantFrom(0, 0, 0, 0.5, 0.9, 1, 1);
  const turn = fc.record({
    from: fc.nat({ max: states - 1 }),
    to: fc.nat({ max: states - 1 }),
    chance: fc.constantFrom(0.3, 0.8),
  });
  return fc
    .record({
      cost,
      cures: fc.array(cure, { minLength: states, maxLength: states }),
      lookCost: accesses > 0 ? maybe(cost) : fc.constant(undefined),
      turn: accesses > 0 ? maybe(turn) : fc.constant(undefined),
      access: access(accesses),
    })
    .map(({ cost, cures, lookCost, turn, access }) => {
      const fits = turn !== undefined && turn.from !== turn.to && cures[turn.from] === 0;
      return {
        cost,
        cures: Float64Array.from(cures),
        ...(lookCost === undefined ? {} : { lookCost }),
        ...(fits ? { turns: [turn] } : {}),
        ...access,
      };
    });
}

function access(accesses: number): fc.Arbitrary<{ access?: number[]; opens?: number[] }> {
  if (accesses === 0) return fc.constant({});
  const one = fc.nat({ max: accesses - 1 });
  return fc.oneof(
    { weight: 3, arbitrary: fc.constant({}) },
    { weight: 2, arbitrary: one.map((a) => ({ access: [a] })) },
    { weight: 1, arbitrary: one.map((a) => ({ opens: [a] })) },
  );
}

function normal(weights: readonly number[]): Float64Array {
  const sum = weights.reduce((total, w) => total + w, 0);
  return Float64Array.from(weights, (w) => w / sum);
}
