// What the observations say of one, two or three faults together, relative to the background (a fault
// without a say counts as 1):
//
//   seen      (1 − (1−leak)·Π(1−p)) / leak        not seen   Π(1−p)       choice   mean(q) / background
//
// An observation of which most faults that can have company have a say is wide; of any other its
// speakers alone need to be looked at. What is not seen is a product and joins the odds.
import type { DiagnosisModel, Observation } from "../model/diagnosis-model.ts";

const SILENT = -1;

/** An observation as the sums want it. */
export interface Row {
  readonly isChoice: boolean;
  /** Some who can have company have no say. */
  readonly hasSilent: boolean;
  /** For `seen`: (1−leak)/leak, what is gained when a cause is certain. */
  readonly gain: number;
  /** By fault: p of `seen` (0 where silent); q/background of `choice` (−1 where silent). */
  readonly say: Float64Array;
  /** Faults that can have company and are not silent, ascending. */
  readonly speakers: readonly number[];
}

export interface Evidence {
  /** Rows on which many speak. */
  readonly wide: readonly Row[];
  readonly local: readonly Row[];
  /** By fault: odds, times what was not seen. */
  readonly plain: Float64Array;
}

/** All rows, and what was not seen. */
export function rowsOf(
  model: DiagnosisModel,
): Pick<Evidence, "plain"> & { readonly rows: readonly Row[] } {
  const plain = Float64Array.from(model.odds);
  const rows: Row[] = [];
  for (const observation of model.observations) {
    if (observation.form === "not-seen") {
      const { value } = observation;
      for (let f = 0; f < plain.length; f++) {
        plain[f] = (plain[f] as number) * (1 - (value[f] as number));
      }
    } else rows.push(rowOf(model, observation));
  }
  return { rows, plain };
}

function rowOf({ alone }: DiagnosisModel, { form, background, value }: Observation): Row {
  const isChoice = form === "choice";
  const say = isChoice ? value.map((q) => (q < 0 ? SILENT : q / background)) : value;
  const speakers: number[] = [];
  let hasSilent = false;
  for (let f = 0; f < say.length; f++) {
    if (alone[f]) continue;
    const own = say[f] as number;
    if (isChoice ? own >= 0 : own > 0) speakers.push(f);
    else hasSilent = true;
  }
  return { isChoice, hasSilent, gain: (1 - background) / background, say, speakers };
}

/** What a row says of faults together. */
export function said({ isChoice, gain, say }: Row, faults: readonly number[]): number {
  let none = 1;
  let sum = 0;
  let speakers = 0;
  for (const fault of faults) {
    const own = say[fault] as number;
    if (!isChoice) none *= 1 - own;
    else if (own >= 0) {
      sum += own;
      speakers++;
    }
  }
  if (!isChoice) return 1 + gain * (1 - none);
  return speakers > 0 ? sum / speakers : 1;
}

/** What each observation says of a fault that is present by itself. */
export function likelihoodRow(model: DiagnosisModel, fault: number): readonly number[] {
  return model.observations.map(({ form, background, value }) => {
    const v = value[fault] as number;
    if (form === "seen") return (1 - (1 - background) * (1 - v)) / background;
    if (form === "not-seen") return 1 - v;
    return v < 0 ? 1 : v / background;
  });
}

/** What the misfire observations together say of a fault that is present by itself. */
export function expectedSetLikelihood(model: DiagnosisModel, fault: number): number {
  let sum = 0;
  for (let a = model.atomStart[fault] as number; a < (model.atomStart[fault + 1] as number); a++) {
    const set = model.atomSet[a] as number;
    const likelihood = model.misfireObservations.reduce((p, o) => p * o.likelihood(set), 1);
    sum += (model.atomChance[a] as number) * likelihood;
  }
  return sum;
}
