// The case that is open: one document in the form that the command reads, and the steps back and forth
// through what was entered.
import {
  type Answer,
  type AtHand,
  type CandidateEngine,
  type CylinderName,
  candidateEngines,
  type Engine,
  type EngineProfile,
  type Finding,
  InputError,
  profileById,
  type RepairDone,
} from "@half-order/core";
import { batch, computed, signal } from "@preact/signals";
import { type CaseDoc, eachDoc, type KeptCase } from "./store.ts";

export const openCase = signal<KeptCase | undefined>(undefined);

const NO_FINDINGS: readonly Finding[] = [];
const NO_REPAIRS: readonly RepairDone[] = [];

export const findings = computed(() => openCase.value?.doc.findings ?? NO_FINDINGS);
export const repairs = computed(() => openCase.value?.doc.repairs ?? NO_REPAIRS);
/** What is at hand for this case; nothing is limited while nobody has said. */
export const atHand = computed<AtHand | undefined>(() => openCase.value?.doc.atHand);

/** True once the engine is believed to be mended. */
export const isClosed = computed(() => openCase.value?.doc.closed !== undefined);

/** The device's own id of it. */
export const caseId = computed(() => openCase.value?.id);

const engineRef = computed(() => openCase.value?.doc.engine);

export const profile = computed<EngineProfile | undefined>(() => {
  const engine = engineRef.value;
  return typeof engine === "string" ? profileById(engine) : engine;
});

/** The engines that the profile may be; one when its firing order is known. */
export const engines = computed<readonly Engine[]>(() => {
  const known = profile.value;
  return known ? enginesOf(known) : [];
});

/** The engines that a profile may be, the most common first; none where it is not sound. */
export function enginesOf(known: EngineProfile): readonly Engine[] {
  return [...fitting(known)].sort((a, b) => b.weight - a.weight).map(({ engine }) => engine);
}

/** Opens a new case on an engine; the open one stays where it is just as a new one would be. */
export function beginCase(engine: CaseDoc["engine"], hand?: AtHand): void {
  const doc: CaseDoc = {
    halfOrderCase: 1,
    engine,
    findings: [],
    ...(hand ? { atHand: hand } : {}),
  };
  if (JSON.stringify(doc) !== JSON.stringify(openCase.value?.doc)) takeCase(doc);
}

/** Opens a case that was read from a file. */
export function takeCase(doc: CaseDoc): void {
  openCase.value = newCase(doc);
}

/** Opens a case that the device kept. */
export function resumeCase(kept: KeptCase): void {
  openCase.value = kept;
}

/** Takes in what was written elsewhere since `before`; what was changed here meanwhile stays. Rejects when what
 * joins them cannot be fetched. */
export async function joinCase(before: KeptCase, stored: KeptCase): Promise<void> {
  if (stored.doc === before.doc) return;
  // Fetched when two tabs have met.
  const { mergeDocs } = await import("./merge.ts");
  const kept = openCase.value;
  if (!kept || kept.id !== stored.id) return;
  // The steps back and forth stay those of this page, and none takes back what somebody else has entered.
  const joined = eachDoc(kept, (doc) => mergeDocs(before.doc, doc, stored.doc).doc);
  const { past, future } = joined;
  openCase.value = kept.doc === before.doc ? { ...stored, past, future } : joined;
}

/** A document with an id of its own, not written yet. */
export function newCase(doc: CaseDoc): KeptCase {
  return { id: newId(), changed: Date.now(), version: 0, doc };
}

export function closeCase(): void {
  openCase.value = undefined;
}

// Steps back and forth; they are kept with the case.
export const canUndo = computed(() => hasSteps("past"));
export const canRedo = computed(() => hasSteps("future"));
const MOST_STEPS = 200;

function hasSteps(way: Way): boolean {
  return (openCase.value?.[way]?.length ?? 0) > 0;
}

/** Takes the last entry back. */
export function undo(): void {
  step("past", "future");
}

/** Enters again what was taken back last. */
export function redo(): void {
  step("future", "past");
}

type Way = "past" | "future";

function step(from: Way, to: Way): void {
  const kept = openCase.value;
  const doc = kept?.[from]?.at(-1);
  if (!kept || !doc) return;
  openCase.value = {
    ...kept,
    changed: laterThan(kept),
    doc,
    [from]: kept[from]?.slice(0, -1),
    [to]: [...(kept[to] ?? []), kept.doc],
  };
}

/** The answer given to a finding, of a cylinder where it asks for one. */
export function answerOf(finding: string, cylinder?: CylinderName): Answer | undefined {
  return findings.value.find((f) => isSame(f, finding, cylinder))?.answer;
}

/** All answers to a finding; several where it asks of each cylinder. */
export function answersOf(finding: string): readonly Finding[] {
  return findings.value.filter((f) => f.finding === finding);
}

/** Writes an answer, in the place of an earlier one to the same question. */
export function giveAnswer(finding: string, answer: Answer, cylinder?: CylinderName): void {
  const given: Finding = {
    finding,
    answer,
    ...(cylinder === undefined ? {} : { cylinder }),
    when: new Date().toISOString(),
  };
  const index = findings.value.findIndex((f) => isSame(f, finding, cylinder));
  setFindings(
    index < 0
      ? [...findings.value, given]
      : findings.value.map((f, i) => (i === index ? given : f)),
  );
}

/** Takes an answer back: nothing is known of it any more. */
export function withdrawAnswer(finding: string, cylinder?: CylinderName): void {
  setFindings(findings.value.filter((f) => !isSame(f, finding, cylinder)));
}

/** Says more of the engine, e.g. its firing order, and keeps all answers. */
export function changeEngine(engine: CaseDoc["engine"]): void {
  changeCase((doc) => ({ ...doc, engine }));
}

/** Names the case; an empty name takes the name away. */
export function nameCase(title: string): void {
  changeCase((doc) => named(doc, title));
}

/** A document under another name; an empty name takes the name away. */
export function named({ title: _, ...doc }: CaseDoc, title: string): CaseDoc {
  return title.trim() === "" ? doc : { ...doc, title: title.trim() };
}

/** Notes something mended, after all that was mended before. */
export function addRepair(repair: Omit<RepairDone, "when">): void {
  setRepairs([...repairs.value, { ...repair, when: new Date().toISOString() }]);
}

/** Says what came of a repair, by its place in `repairs`. */
export function setRepairResult(index: number, result: RepairDone["result"]): void {
  setRepairs(
    repairs.value.map((repair, i) => {
      if (i !== index) return repair;
      const { result: _, ...rest } = repair;
      return result === undefined ? rest : { ...rest, result };
    }),
  );
}

/** Takes a repair out, by its place in `repairs`. */
export function removeRepair(index: number): void {
  setRepairs(repairs.value.filter((_, i) => i !== index));
}

/** Says what is at hand; `undefined`: nothing is limited. */
export function setAtHand(hand: AtHand | undefined): void {
  changeCase(({ atHand: _, ...doc }) => (hand ? { ...doc, atHand: hand } : doc));
}

/** The engine is believed to be mended: the moment is kept. */
export function closeAsMended(): void {
  changeCase((doc) => ({ ...doc, closed: new Date().toISOString() }));
}

/** It was not mended after all: the repair that seemed to cure it did so at first. */
export function reopen(): void {
  const last = repairs.value.findLastIndex(({ result }) => result === "cured");
  changeCase(({ closed: _, repairs: done, ...doc }) => ({
    ...doc,
    ...(done && { repairs: done.map((each, i) => (i === last ? cameBack(each) : each)) }),
  }));
}

function cameBack(repair: RepairDone): RepairDone {
  return { ...repair, result: "came-back" };
}

function setRepairs(next: readonly RepairDone[]): void {
  changeCase((doc) => ({ ...doc, repairs: next }));
}

function setFindings(next: readonly Finding[]): void {
  changeCase((doc) => ({ ...doc, findings: next }));
}

/** Changes the document as one step that can be taken back; every other change goes through here. */
export function changeCase(edit: (doc: CaseDoc) => CaseDoc): void {
  const kept = openCase.value;
  if (!kept) return;
  openCase.value = {
    ...kept,
    changed: laterThan(kept),
    doc: edit(kept.doc),
    past: [...(kept.past ?? []), kept.doc].slice(-MOST_STEPS),
    future: [],
  };
}

/** Now, but never the moment of the change before: of two writings the later one is told by it. */
function laterThan({ changed }: KeptCase): number {
  return Math.max(Date.now(), changed + 1);
}

/** Makes all that is changed within it one step back and forth. */
export function asOneStep(change: () => void): void {
  const before = openCase.value;
  batch(() => {
    change();
    const kept = openCase.value;
    if (!before || !kept || kept === before) return;
    openCase.value = { ...kept, past: [...(before.past ?? []), before.doc].slice(-MOST_STEPS) };
  });
}

function isSame(given: Finding, finding: string, cylinder?: CylinderName): boolean {
  return given.finding === finding && given.cylinder === cylinder;
}

/** An id for the device's own shelf. Pages without a secure address have no random UUIDs. */
function newId(): string {
  return `${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 8)}`;
}

/** No engine where the profile is not sound; the ranking says why. */
function fitting(known: EngineProfile): readonly CandidateEngine[] {
  try {
    return candidateEngines(known);
  } catch (error) {
    if (error instanceof InputError) return [];
    throw error;
  }
}
