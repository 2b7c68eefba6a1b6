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
      ...(isRight ? misreadSteps(parts) : parts.length === 0 ? [] : [PRACTICE.stepsLeftOut]),
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

/** The same read back; nothing counts after a repair, and what cannot be read is left out. */
export function readSteps(parts: readonly string[]): Steps {
  const { done, repair } = partsOf(parts);
  const acts = done.filter(isReadable).map((part): PracticeAct => {
    if (part === PEEK) return { kind: "peek" };
    const [check, at] = read(part);
    return { kind: "check", check, ...at };
  });
  if (repair === undefined || !isReadable(repair)) return { acts };
  const [id, at] = read(repair);
  return { acts, wanted: { repair: id, ...at } };
}

/** What of it was left out, in words. */
function misreadSteps(parts: readonly string[]): readonly string[] {
  const { done, repair, after } = partsOf(parts);
  const wrong = [...done, ...(repair === undefined ? [] : [repair])].filter(
    (part) => !isReadable(part),
  );
  return [
    ...wrong.map(PRACTICE.wrongStep),
    ...(after.length > 0 ? [PRACTICE.afterRepair(after.join("/"))] : []),
  ];
}

interface Parts {
  readonly done: readonly string[];
  readonly repair?: string | undefined;
  readonly after: readonly string[];
}

function partsOf(parts: readonly string[]): Parts {
  const end = parts.findIndex((part) => part.startsWith(REPAIR));
  if (end < 0) return { done: parts, after: [] };
  return { done: parts.slice(0, end), repair: parts[end], after: parts.slice(end + 1) };
}

/** An id, and after one `@` the name of a cylinder. */
function isReadable(part: string): boolean {
  return /^[^@]+(@[^@]+)?$/.test(part);
}

function write(id: string, cylinder: string | number | undefined): string {
  return cylinder === undefined ? id : `${id}@${cylinder}`;
}

/** The library takes a number written as text for the cylinder of that name. */
function read(part: string): readonly [string, { readonly cylinder?: string }] {
  const [id = "", cylinder] = part.split("@");
  return [id, cylinder ? { cylinder } : {}];
}
