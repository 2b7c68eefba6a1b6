// How does a search stand in the address? Engine, seed, then each step: `check.plugs-out@2`, `peek`, and at the
// end the repair. So a reload loses nothing, and a case can be handed on.
import type { RepairDone } from "@half-order/core";
import type { PracticeAct } from "@half-order/core/instrument";
import { PRACTICE } from "../text/en-practice.ts";

/** What was done so far, and the repair that ended it. */
export interface Steps {
  readonly acts: readonly PracticeAct[];
  readonly wanted?: RepairDone;
}

/** What an address says; what it says wrongly is left out, and named in words. */
export interface Opened {
  readonly engine?: string;
  readonly seed?: number;
  readonly steps: Steps;
  readonly misread: readonly string[];
}

/** Reads `engine / seed / steps`. Steps are of one fault of one engine: without either they are left out. */
export function readAddress(
  [id, written, ...parts]: readonly string[],
  isKnown: (engine: string) => boolean,
): Opened {
  const hasEngine = id === undefined || isKnown(id);
  const hasSeed = written === undefined || SEED.test(written);
  const isRight = hasEngine && hasSeed;
  return {
    ...(id !== undefined && hasEngine ? { engine: id } : {}),
    ...(written !== undefined && hasSeed ? { seed: Number(written) } : {}),
    steps: isRight ? readSteps(parts) : { acts: [] },
    misread: [
      ...(hasEngine ? [] : [PRACTICE.wrongEngine(id)]),
      ...(hasSeed ? [] : [PRACTICE.wrongSeed(written)]),
      ...(isRight || parts.length === 0 ? [] : [PRACTICE.stepsLeftOut]),
    ],
  };
}

const SEED = /^\d{1,9}$/;
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
