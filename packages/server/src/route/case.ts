// The case in the body of a request, ready to be reasoned about.
import { InputError } from "@half-order/core";
import { type Case, type CaseDocument, caseProblems, resolveCase } from "@half-order/core/wire";

/** Throws an `InputError` with every problem of the case. */
export function caseOf(document: CaseDocument): Case {
  const reading = resolveCase(document);
  if ("problems" in reading) throw new InputError(caseProblems(document, reading.problems));
  return reading.case;
}
