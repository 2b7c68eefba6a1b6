// Every piece of prose in the knowledge, with its address.
import { KNOWLEDGE } from "../../packages/core/src/index.ts";
import { serviceProse } from "./service-text.ts";

export interface Prose {
  readonly at: string;
  readonly text: string;
}

/** What people read: names, explanations, questions, answers, steps, cautions. */
export function* prose(): Generator<Prose> {
  for (const fault of [...KNOWLEDGE.faults, KNOWLEDGE.somethingElse]) {
    yield { at: `${fault.id}/name`, text: fault.name };
    yield { at: `${fault.id}/about`, text: fault.about };
    yield { at: `${fault.id}/part`, text: fault.part.name };
    yield { at: `${fault.id}/mend`, text: fault.mend };
  }
  for (const finding of KNOWLEDGE.findings.values()) {
    yield { at: `${finding.id}/ask`, text: finding.ask };
    if (finding.help) yield { at: `${finding.id}/help`, text: finding.help };
    for (const [option, { say, more }] of Object.entries(finding.options)) {
      yield { at: `${finding.id}/options/${option}/say`, text: say };
      if (more) yield { at: `${finding.id}/options/${option}/more`, text: more };
    }
  }
  for (const check of KNOWLEDGE.checks) {
    yield { at: `${check.id}/name`, text: check.name };
    for (const [i, text] of check.steps.entries()) yield { at: `${check.id}/steps/${i}`, text };
  }
  for (const { id, name } of KNOWLEDGE.repairs) yield { at: `${id}/name`, text: name };
  for (const { id, say } of KNOWLEDGE.access) yield { at: `${id}/say`, text: say };
  for (const caution of KNOWLEDGE.cautions) {
    yield { at: `caution ${caution.id}`, text: caution.say };
  }
  for (const { finding, option, say } of KNOWLEDGE.company) {
    yield { at: `company ${finding}/${option}`, text: say };
  }
  yield* serviceProse();
}

/** A text as sentences, without their full stops. */
export function sentences(text: string): readonly string[] {
  return text
    .split(/[.!?:;](?:\s+|$)/)
    .map((sentence) => sentence.trim())
    .filter(Boolean);
}

export function words(sentence: string): readonly string[] {
  return sentence.split(/\s+/).filter((word) => /\w/.test(word));
}
