// The case that is open: one document in the form that the command reads.
import {
  type Answer,
  type CandidateEngine,
  type CylinderName,
  candidateEngines,
  type Engine,
  type EngineProfile,
  type Finding,
  InputError,
  profileById,
} from "@half-order/core";
import { computed, signal } from "@preact/signals";
import type { CaseDoc, KeptCase } from "./store.ts";

export const openCase = signal<KeptCase | undefined>(undefined);

export const findings = computed<readonly Finding[]>(() => openCase.value?.doc.findings ?? []);

const engineRef = computed(() => openCase.value?.doc.engine);

export const profile = computed<EngineProfile | undefined>(() => {
  const engine = engineRef.value;
  return typeof engine === "string" ? profileById(engine) : engine;
});

/** The engines that the profile may be; one when its firing order is known. */
export const engines = computed<readonly Engine[]>(() => {
  const known = profile.value;
  if (!known) return [];
  return [...fitting(known)].sort((a, b) => b.weight - a.weight).map(({ engine }) => engine);
});

/** Opens a new case on an engine. */
export function beginCase(engine: CaseDoc["engine"]): void {
  takeCase({ halfOrderCase: 1, engine, findings: [] });
}

/** Opens a case that was read from a file. */
export function takeCase(doc: CaseDoc): void {
  openCase.value = { id: newId(), changed: Date.now(), doc };
}

/** Opens a case that the device kept. */
export function resumeCase(kept: KeptCase): void {
  openCase.value = kept;
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
  change((doc) => ({ ...doc, engine }));
}

function setFindings(next: readonly Finding[]): void {
  change((doc) => ({ ...doc, findings: next }));
}

function change(edit: (doc: CaseDoc) => CaseDoc): void {
  const kept = openCase.value;
  if (kept) openCase.value = { ...kept, changed: Date.now(), doc: edit(kept.doc) };
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
