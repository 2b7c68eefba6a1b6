// A repair from the first screw to the last proof: what to put right with it, what not to buy, how to put it
// back, and when it may be believed.
import { answeredOf } from "../compile/answered.ts";
import { instanceKey } from "../compile/prior.ts";
import { cureOf, placeOfRepair } from "../compile/repair.ts";
import { nameAt } from "../engine/cylinder-name.ts";
import type { CylinderName, EngineProfile } from "../engine/profile.ts";
import { putRight } from "../explain/company.ts";
import type { PutRight } from "../explain/ranking.ts";
import type { Finding, RepairDone } from "../knowledge/answer.ts";
import type { Knowledge } from "../knowledge/knowledge.ts";
import { PROOF_WAITS } from "../knowledge/proof-drive.ts";
import type { RepairRow } from "../knowledge/schema.ts";
import { stepCautions } from "../knowledge/step-caution.ts";
import { type ProofPlan, proofPlan } from "../service/proof.ts";
import { type PutBackLine, putBackAfter } from "../service/put-back.ts";
import { openingsOf } from "./access.ts";
import type { NextRepair } from "./advice.ts";
import { inMinutes, priceOf } from "./at-hand.ts";
import type { SoFar } from "./made.ts";
import { type NextOptions, prospectFor } from "./next.ts";
import { type Prospect, presentIn } from "./outlook.ts";
import { type RepairHere, repairAt, repairsHere } from "./repair.ts";

/** A fault that the repair is for. */
export interface MendedFault {
  readonly fault: string;
  readonly place: string;
  readonly cylinders: readonly CylinderName[];
  readonly name: string;
  readonly probability: number;
  /** Chance that the repair cures it. */
  readonly works: number;
}

/** A part that is tempting and not likely enough. */
export interface NotYet {
  readonly repair: string;
  readonly name: string;
  readonly cures: number;
}

export interface Mending extends NextRepair {
  /** What it would cure, likeliest first. */
  readonly faults: readonly MendedFault[];
  /** What the findings say must be put right with it, so that the new part lives. */
  readonly alsoPutRight: readonly PutRight[];
  /** Dear parts that are not likely to help; do not buy them yet. */
  readonly notYet: readonly NotYet[];
  readonly putBack: readonly PutBackLine[];
  /** How to prove it; left out where the repair cures none of the faults that are likely. */
  readonly proof?: ProofPlan;
}

/** Faults less likely than this are not told. */
const FAULT_TOLD = 0.01;
/** Parts that cure with less than this chance are not to be bought yet, */
const NOT_LIKELY = 0.05;
/** if they are worth this much of the user's time. */
const DEAR_MINUTES = 60;
const NOT_YET_TOLD = 4;

/**
 * Everything about one repair on this engine. Throws an `InputError` with all problems when the profile,
 * a finding or a repair cannot be used.
 */
export function mend(
  profile: EngineProfile,
  findings: readonly Finding[],
  wanted: Pick<RepairDone, "repair" | "cylinder">,
  options: NextOptions = {},
): Mending {
  const { repairs = [], atHand = {}, open = [], units } = options;
  const prospect = prospectFor(profile, findings, options, wanted);
  const { knowledge, outlooks } = prospect;
  const [{ engine }] = outlooks as [Prospect["outlooks"][number]];
  const row = knowledge.repairs.find(({ id }) => id === wanted.repair) as RepairRow;
  const place = placeOfRepair(engine, row, wanted) as RepairHere["place"];
  const here = repairAt(prospect, row, place);
  const openings = openingsOf(engine, knowledge, open);
  const opens = openings
    .of(row.access ?? [], place.cylinders)
    .flatMap((n) => openings.all[n] ?? []);
  const cylinders = place.cylinders.map((c) => engine.names[c] as CylinderName);
  const isWhole = place.kind === "engine" || place.kind === "set";
  const faults = mendedBy(prospect, here);
  const answered = answeredOf(engine, findings, knowledge);
  const proof = proofOf(profile, here, faults, { answered, knowledge });
  return {
    kind: "repair",
    repair: row.id,
    name: nameAt(row.name, cylinders, engine.names.length),
    cylinders: isWhole ? [] : cylinders,
    opens: opens.filter(({ minutes }) => minutes > 0),
    minutes: opens.reduce((sum, { minutes }) => sum + minutes, row.minutes),
    partsPrice: priceOf(row.parts, atHand),
    cures: here.probability,
    cautions: stepCautions(row, atHand.where),
    faults,
    alsoPutRight: putRight({ engine, answered, findings, knowledge }, partsOf(row, knowledge), {
      id: row.id,
      cylinders: place.cylinders,
    }),
    notYet: notYetOf(prospect, repairs, here, (each) =>
      inMinutes(priceOf(each.parts, atHand), atHand),
    ),
    putBack: putBackAfter(profile, row, units, atHand.tools),
    ...(proof ? { proof } : {}),
  };
}

function mendedBy(prospect: Prospect, { row, place }: RepairHere): readonly MendedFault[] {
  const all = prospect.outlooks[0]?.engine.names ?? [];
  return [...presentIn(prospect, prospect.chance, instanceKey).values()]
    .flatMap(({ instance, probability }) => {
      const works = cureOf(row, place, instance);
      if (works === 0 || probability < FAULT_TOLD) return [];
      const names = instance.place.cylinders.map((c) => all[c] as CylinderName);
      return [
        {
          fault: instance.fault.id,
          place: instance.place.id,
          cylinders: names,
          name: nameAt(instance.fault.name, names, all.length),
          probability,
          works,
        },
      ];
    })
    .sort((a, b) => b.probability - a.probability);
}

/** Parts whose faults the repair mends. */
function partsOf({ mends }: RepairRow, { faults }: Knowledge): ReadonlySet<string> {
  const ids = new Set(mends.map(({ fault }) => fault));
  return new Set(faults.filter(({ id }) => ids.has(id)).map(({ part }) => part.name));
}

function notYetOf(
  prospect: Prospect,
  done: readonly RepairDone[],
  { row: chosen }: RepairHere,
  worth: (row: RepairRow) => number,
): readonly NotYet[] {
  const names = prospect.outlooks[0]?.engine.names ?? [];
  return repairsHere(prospect, done)
    .filter(
      ({ row, probability }) =>
        row.id !== chosen.id && probability < NOT_LIKELY && worth(row) >= DEAR_MINUTES,
    )
    .sort((a, b) => b.probability - a.probability)
    .slice(0, NOT_YET_TOLD)
    .map(({ row, place, probability }) => ({
      repair: row.id,
      name: nameAt(
        row.name,
        place.cylinders.map((c) => names[c] as CylinderName),
        names.length,
      ),
      cures: probability,
    }));
}

/** Beliefs beyond these are never proven nor refuted by drives. */
const [LEAST_BELIEF, MOST_BELIEF] = [0.02, 0.98];

/** For the likeliest fault that it mends: the one that would still show. */
function proofOf(
  profile: EngineProfile,
  { probability }: RepairHere,
  [first]: readonly MendedFault[],
  { answered, knowledge }: Pick<SoFar, "answered" | "knowledge">,
): ProofPlan | undefined {
  const row = knowledge.faults.find(({ id }) => id === first?.fault);
  if (!row) return undefined;
  const belief = Math.min(MOST_BELIEF, Math.max(LEAST_BELIEF, probability));
  const waitsFor = PROOF_WAITS.filter(({ told }) =>
    answered.some(({ row: { id }, options }) =>
      told.some(({ finding, is }) => finding === id && is.some((each) => options.includes(each))),
    ),
  ).map(({ regime }) => regime);
  return proofPlan(profile, row, belief, { cylinders: first?.cylinders ?? [], waitsFor });
}
