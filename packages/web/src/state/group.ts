// The ranking as a short list: what can fail in one part stands in one row, and so do parts that differ in
// nothing but their cylinder. A pure sum-up of what the library says.
import {
  type CylinderName,
  isAlikePart,
  type RankedFault,
  type Ranking,
  WAY_TELLING,
} from "@half-order/core";

/** A part, or several alike, with the faults that it may have. */
export interface PartGroup {
  readonly key: string;
  /** Name of the part, such as "spark plug". */
  readonly part: string;
  /** One list for each of the like parts, the likeliest first. */
  readonly places: readonly (readonly CylinderName[])[];
  /** 0..1, that the part failed in whatever way; of like parts the likeliest. */
  readonly probability: number;
  /** Faults of the part, or of all the like parts, likeliest first. */
  readonly faults: readonly RankedFault[];
}

/** All parts, likeliest first. */
export function partGroups({ ranking, components }: Ranking): readonly PartGroup[] {
  const byComponent = new Map<string, RankedFault[]>();
  for (const fault of ranking) {
    const known = byComponent.get(fault.component);
    if (known) known.push(fault);
    else byComponent.set(fault.component, [fault]);
  }
  const groups: PartGroup[] = [];
  for (const { component, part, cylinders, probability } of components) {
    const faults = (byComponent.get(component) ?? []).filter(
      (fault, i) => i === 0 || fault.probability > WAY_TELLING,
    );
    const at = groups.findIndex(({ places: [own = []], ...group }) =>
      isAlikePart({ ...group, cylinders: own }, { part, cylinders, probability }),
    );
    const like = groups[at];
    if (!like) {
      groups.push({ key: component, part, places: [cylinders], probability, faults });
      continue;
    }
    groups[at] = {
      ...like,
      places: [...like.places, cylinders],
      faults: [...like.faults, ...faults].sort((a, b) => b.probability - a.probability),
    };
  }
  return groups;
}
