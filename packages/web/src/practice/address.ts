// How does a search stand in the address? Engine, seed, then each step: `check.plugs-out@2`, `peek`, and at the
// end the repair. So a reload loses nothing, and a case can be handed on.
import type { RepairDone } from "@half-order/core";
import type { PracticeAct } from "@half-order/core/instrument";

/** What was done so far, and the repair that ended it. */
export interface Steps {
  readonly acts: readonly PracticeAct[];
  readonly wanted?: RepairDone;
}

const PEEK = "peek";
const REPAIR = "repair.";

/** The parts of an address after the seed. */
export function writeSteps({ acts, wanted }: Steps): readonly string[] {
  return [
    ...acts.map((act) => (act.kind === "peek" ? PEEK : write(act.check, act.cylinder))),
    ...(wanted ? [write(wanted.repair, wanted.cylinder)] : []),
  ];
}

/** The same read back; nothing counts after a repair. */
export function readSteps(parts: readonly string[]): Steps {
  const end = parts.findIndex((part) => part.startsWith(REPAIR));
  const acts = (end < 0 ? parts : parts.slice(0, end)).map((part): PracticeAct => {
    if (part === PEEK) return { kind: "peek" };
    const [check, at] = read(part);
    return { kind: "check", check, ...at };
  });
  if (end < 0) return { acts };
  const [repair, at] = read(parts[end] ?? "");
  return { acts, wanted: { repair, ...at } };
}

function write(id: string, cylinder: string | number | undefined): string {
  return cylinder === undefined ? id : `${id}@${cylinder}`;
}

/** The library takes a number written as text for the cylinder of that name. */
function read(part: string): readonly [string, { readonly cylinder?: string }] {
  const [id = "", cylinder] = part.split("@");
  return [id, cylinder ? { cylinder } : {}];
}
