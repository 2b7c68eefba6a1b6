// When do parts stand in one row of a ranking, and when is a way of failing told by itself?

/** A part of the engine, where it sits, and the chance that it failed in whatever way. */
interface RankedPart {
  readonly part: string;
  readonly cylinders: readonly unknown[];
  readonly probability: number;
}

/** Parts of one kind count as alike when their chances differ by no more than this part of them. */
const ALIKE = 0.1;

/** Ways of failing that are rarer than this are not told one by one. */
export const WAY_TELLING = 0.002;

/** Whether a part differs in nothing but its cylinder from one that is likelier, or as likely. */
export function isAlikePart(likelier: RankedPart, other: RankedPart): boolean {
  return (
    likelier.part === other.part &&
    likelier.cylinders.length === other.cylinders.length &&
    other.probability >= likelier.probability * (1 - ALIKE)
  );
}
