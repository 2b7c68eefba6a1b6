// A diagnosis model written out as a Bayesian network for a general-purpose library. Nothing of the
// closed forms of the inference room is used: every assumption becomes a node with a table.
//
//   fault f      absent, or one of its atoms (present, and reaching that set of cylinders)
//   present f    is fault f there?                                        deterministic
//   count f      how many of the faults 0..f are there                    deterministic
//   complaint    one to `most` faults, or one that stands alone: seen to be true
//   link k       seen to be true, with a chance proportional to the multiplier where both are there
//   finding i    the answer that was given, tabulated over who is present
//   union f      the union of the sets of faults 0..f                     deterministic
//   misfire i    the answer that was given, tabulated over the union
//
// Without misfire observations the sets are left out: `present f` is then the fault itself.
import type { DiagnosisModel, Observation } from "../../packages/core/src/model/diagnosis-model.ts";
import {
  combinations,
  type Evidence,
  type Network,
  networkOf,
  type TableNode,
} from "./bayes-oracle.ts";

export interface AsNetwork {
  readonly network: Network;
  /** What was seen: the complaint, the links and every answer. */
  readonly evidence: Evidence;
  readonly present: (fault: number) => Evidence;
  /** Only for a model with misfire observations: that exactly this set misses. */
  readonly misfires: (set: number) => Evidence;
}

const YES_NO = ["yes", "no"];

/** @param most faults together at most; `any` leaves the complaint out: any number of faults, or none */
export function asNetwork(model: DiagnosisModel, most: 1 | 2 | 3 | "any"): AsNetwork {
  const faults = Array.from({ length: model.faults }, (_, f) => f);
  const seen: TableNode[] = [
    ...(most === "any" ? [] : [complaint(model)]),
    ...model.links.map((link, k) => linkNode(link, k)),
    ...model.observations.map((o, i) => findingNode(model, o, i)),
    ...model.misfireObservations.map(({ likelihood }, i): TableNode => {
      const table = sets(model).map((set) => chance(likelihood(Number(set))));
      return { id: `misfire ${i}`, states: YES_NO, parents: [lastUnion(model)], table };
    }),
  ];
  const looksAtSets = model.misfireObservations.length > 0;
  const nodes = [
    ...faults.flatMap((f) =>
      looksAtSets ? [faultNode(model, f), presentNode(model, f)] : [plainNode(model, f)],
    ),
    ...(most === "any" ? [] : faults.map((f) => countNode(model, f, most))),
    ...(looksAtSets ? faults.map((f) => unionNode(model, f)) : []),
    ...seen,
  ];
  return {
    network: networkOf(nodes),
    evidence: Object.fromEntries(seen.map(({ id }) => [id, "yes"])),
    present: (fault) => ({ [`present ${fault}`]: "yes" }),
    misfires: (set) => ({ [lastUnion(model)]: String(set) }),
  };
}

function chance(yes: number): readonly number[] {
  return [yes, 1 - yes];
}

function atomsOf(model: DiagnosisModel, f: number): readonly number[] {
  const start = model.atomStart[f] as number;
  const end = model.atomStart[f + 1] as number;
  return Array.from({ length: end - start }, (_, i) => start + i);
}

function faultStates(model: DiagnosisModel, f: number): readonly string[] {
  return ["absent", ...atomsOf(model, f).map((atom) => `atom ${atom}`)];
}

/** Faults come and go by themselves: p = odds / (1 + odds). */
function faultNode(model: DiagnosisModel, f: number): TableNode {
  const p = (model.odds[f] as number) / (1 + (model.odds[f] as number));
  const row = [1 - p, ...atomsOf(model, f).map((atom) => p * (model.atomChance[atom] as number))];
  return { id: `fault ${f}`, states: faultStates(model, f), parents: [], table: [row] };
}

/** Where nothing looks at the misfiring sets, the atoms of a fault make no difference. */
function plainNode(model: DiagnosisModel, f: number): TableNode {
  const p = (model.odds[f] as number) / (1 + (model.odds[f] as number));
  return { id: `present ${f}`, states: YES_NO, parents: [], table: [chance(p)] };
}

function presentNode(model: DiagnosisModel, f: number): TableNode {
  const table = faultStates(model, f).map((state) => chance(state === "absent" ? 0 : 1));
  return { id: `present ${f}`, states: YES_NO, parents: [`fault ${f}`], table };
}

const COUNTS = ["0", "1", "2", "3", "alone", "too many"];

/** One fault more; a fault that stands alone bears no company. */
function countNode(model: DiagnosisModel, f: number, most: number): TableNode {
  const before = f === 0 ? ["0"] : COUNTS;
  const table = combinations([before, YES_NO]).map(([count = "", isPresent]) => {
    let after = count;
    if (isPresent === "yes") {
      if (model.alone[f]) after = count === "0" ? "alone" : "too many";
      else after = Number(count) < most ? String(Number(count) + 1) : "too many";
    }
    return COUNTS.map((state) => (state === after ? 1 : 0));
  });
  const parents = f === 0 ? [`present ${f}`] : [`count ${f - 1}`, `present ${f}`];
  return { id: `count ${f}`, states: COUNTS, parents, table };
}

function complaint(model: DiagnosisModel): TableNode {
  const table = COUNTS.map((count) => chance(count === "0" || count === "too many" ? 0 : 1));
  return { id: "complaint", states: YES_NO, parents: [`count ${model.faults - 1}`], table };
}

/** Only the ratio of the two chances matters once the node is seen to be true. */
function linkNode({ a, b, times }: DiagnosisModel["links"][number], k: number): TableNode {
  const scale = Math.max(1, times);
  const table = combinations([YES_NO, YES_NO]).map((row) =>
    chance((row.every((state) => state === "yes") ? times : 1) / scale),
  );
  return { id: `link ${k}`, states: YES_NO, parents: [`present ${a}`, `present ${b}`], table };
}

/** The definition of each form, tabulated; `yes` is the answer that was given. */
function findingNode(model: DiagnosisModel, o: Observation, i: number): TableNode {
  const faults = Array.from({ length: model.faults }, (_, f) => f).filter(
    (f) => o.form === "choice" || o.value[f] !== 0,
  );
  const table = combinations(faults.map(() => YES_NO)).map((row) => {
    const values = faults.filter((_, k) => row[k] === "yes").map((f) => o.value[f] as number);
    return chance(answerChance(o, values));
  });
  const parents = faults.map((f) => `present ${f}`);
  return { id: `finding ${i}`, states: YES_NO, parents, table };
}

function answerChance({ form, background }: Observation, values: readonly number[]): number {
  if (form === "choice") {
    const spoken = values.filter((q) => q >= 0);
    if (spoken.length === 0) return background;
    return spoken.reduce((sum, q) => sum + q, 0) / spoken.length;
  }
  const unseen = values.reduce((product, p) => product * (1 - p), 1 - background);
  return form === "seen" ? 1 - unseen : unseen;
}

function sets({ cylinders }: DiagnosisModel): readonly string[] {
  return Array.from({ length: 2 ** cylinders + 1 }, (_, set) => String(set));
}

function lastUnion({ faults }: DiagnosisModel): string {
  return `union ${faults - 1}`;
}

function unionNode(model: DiagnosisModel, f: number): TableNode {
  const all = sets(model);
  const random = all.length - 1;
  const before = f === 0 ? ["0"] : all;
  const table = combinations([before, faultStates(model, f)]).map(([set, state = ""]) => {
    const own = state === "absent" ? 0 : (model.atomSet[Number(state.slice(5))] as number);
    const sofar = Number(set);
    const union = own === random || sofar === random ? random : sofar | own;
    return all.map((_, t) => (t === union ? 1 : 0));
  });
  const parents = f === 0 ? [`fault ${f}`] : [`union ${f - 1}`, `fault ${f}`];
  return { id: `union ${f}`, states: all, parents, table };
}
