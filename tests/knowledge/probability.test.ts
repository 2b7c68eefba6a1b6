// Is everything that is called a chance one?
import { KNOWLEDGE } from "../../packages/core/src/index.ts";
import { holds, offRange } from "../helper/rule.ts";

holds({
  name: "probabilities lie in 0..1, multipliers above 0",
  why: "A slip of the decimal point changes a ranking without any error.",
  *check() {
    for (const fault of [...KNOWLEDGE.faults, KNOWLEDGE.somethingElse]) {
      yield { at: `${fault.id}/shows`, breach: offRange(fault.shows) };
      for (const [to, chance] of Object.entries(fault.reach)) {
        yield { at: `${fault.id}/reach/${to}`, breach: offRange(chance) };
      }
      for (const { finding, gives } of fault.signs) {
        for (const [option, chance] of Object.entries(gives)) {
          yield { at: `${fault.id}/signs/${finding}/${option}`, breach: offRange(chance) };
        }
      }
      for (const { finding, times } of fault.risks) {
        for (const [option, factor] of Object.entries(times)) {
          yield { at: `${fault.id}/risks/${finding}/${option}`, breach: offFactor(factor) };
        }
      }
      for (const { fault: worn, times } of fault.wears ?? []) {
        yield { at: `${fault.id}/wears/${worn}`, breach: offFactor(times) };
      }
    }
    for (const finding of KNOWLEDGE.findings.values()) {
      for (const [option, { chance }] of Object.entries(finding.options)) {
        yield { at: `${finding.id}/options/${option}`, breach: offRange(chance) };
      }
      for (const [option, left] of Object.entries(finding.fades?.left ?? {})) {
        yield { at: `${finding.id}/fades/${option}`, breach: offRange(left) };
      }
    }
    for (const { id, breaks = 0 } of KNOWLEDGE.checks) {
      yield { at: `${id}/breaks`, breach: breaks <= 0.1 ? offRange(breaks) : "breaks too often" };
    }
  },
  exceptions: {},
});

function offFactor(factor = 0): string | undefined {
  return factor > 0 && factor <= 30 ? undefined : `${factor} is not in 0..30`;
}
