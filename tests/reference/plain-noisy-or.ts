// Noisy-OR by its definition: independent causes, every subset of them, every finding. Shares no code
// with the inference room nor with the other reference.

export interface NoisyOr {
  readonly prior: readonly number[];
  /** By finding. */
  readonly leak: readonly number[];
  /** [cause][finding]: chance that the cause makes the finding seen. */
  readonly link: readonly (readonly number[])[];
}

export interface Seen {
  /** Numbers of the findings that are there, and of those that are not. */
  readonly present: readonly number[];
  readonly absent: readonly number[];
}

export interface PlainAnswer {
  /** P(findings, and an admitted number of causes). */
  readonly evidence: number;
  /** By cause. */
  readonly posterior: readonly number[];
  readonly best: { readonly causes: readonly number[]; readonly probability: number };
}

/** @param admits how many causes together are considered at all */
export function plainNoisyOr(
  { prior, leak, link }: NoisyOr,
  { present, absent }: Seen,
  admits: (causes: number) => boolean,
): PlainAnswer {
  const sums = prior.map(() => 0);
  let evidence = 0;
  let best = { causes: [] as readonly number[], weight: -1 };
  for (let bits = 0; bits < 2 ** prior.length; bits++) {
    const causes = [...prior.keys()].filter((cause) => (bits >> cause) & 1);
    if (!admits(causes.length)) continue;
    const unseen = (finding: number): number =>
      causes.reduce(
        (product, cause) => product * (1 - (link[cause]?.[finding] ?? 0)),
        1 - (leak[finding] ?? 0),
      );
    let weight = 1;
    prior.forEach((p, cause) => {
      weight *= causes.includes(cause) ? p : 1 - p;
    });
    for (const finding of present) weight *= 1 - unseen(finding);
    for (const finding of absent) weight *= unseen(finding);
    evidence += weight;
    for (const cause of causes) sums[cause] = (sums[cause] ?? 0) + weight;
    if (weight > best.weight) best = { causes, weight };
  }
  return {
    evidence,
    posterior: sums.map((sum) => sum / evidence),
    best: { causes: best.causes, probability: best.weight / evidence },
  };
}
